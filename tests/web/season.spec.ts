import type { Browser, Page } from 'playwright-core';
import { addDays, addPeriod } from '#kernel';
import { itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp, testDay } from '../support/test-app.js';

const tourCount = 40;
const groups = 10;
const hoistsOfGroup = 4;

/** Forty tours from one depot: ten groups of hoists, each on four tours one after the other, last examined in the half year before. */
async function fillTours({ dataSource }: TestApp): Promise<void> {
  await dataSource.query(
    `INSERT INTO item SELECT (jsonb_populate_record(item, jsonb_build_object('id', 'SE-' || lpad(number::text, 2, '0'), 'place', 100000 + number, 'due_known', false, 'rest', rest || '{"intervals": ["P6M"]}'))).*
     FROM item, generate_series(1, $1) number WHERE item.id = 'H-01'`,
    [groups * hoistsOfGroup],
  );
  await dataSource.query(
    `INSERT INTO examination (item_id, data, recorded_by, recorded_at)
     SELECT id, jsonb_build_object('on', to_char($1::date - 30 - 3 * (row_number() OVER (ORDER BY id))::int, 'YYYY-MM-DD'), 'outcome', 'pass', 'examiner', 'Rosa Tamm (invented)', 'report', 'S-' || id), 'Ines Aldous', now()
     FROM item WHERE id LIKE 'SE-%'`,
    [testDay],
  );
  for (let tour = 0; tour < tourCount; tour++) {
    const from = addDays(testDay, 10 + (tour % groups) * 3 + Math.floor(tour / groups) * 80);
    const given = [`season-${tour + 1}`, `Season tour ${tour + 1}`, from, addDays(from, 20)];
    await dataSource.query(
      `INSERT INTO tour (id, name, prep_from, return_to, version, data) SELECT $1, $2, $3::date, $4::date, 1, data || jsonb_build_object('id', $1::text, 'name', $2::text, 'shows', '[]'::jsonb)
       FROM tour WHERE id = 'harbour-lights'`,
      given,
    );
    await dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT gen_random_uuid(), id, 'tour', $1, $2, daterange($3, $4, '[]')
       FROM item WHERE id LIKE 'SE-%' AND (right(id, 2)::int - 1) / ${hoistsOfGroup} = $5`,
      [...given, tour % groups],
    );
  }
}

interface Entry {
  readonly uid: string;
  readonly start: string;
  readonly sequence: number;
}

/** Entries of a calendar by RFC 5545, lines unfolded. */
const entriesOf = (calendar: string): Entry[] =>
  calendar
    .replace(/\r\n[ \t]/g, '')
    .split('BEGIN:VEVENT')
    .slice(1)
    .map((each) => ({
      uid: /^UID:(.*)\r$/m.exec(each)?.[1] ?? '',
      start: /^DTSTART[^:]*:(.*)\r$/m.exec(each)?.[1] ?? '',
      sequence: Number(/^SEQUENCE:(.*)\r$/m.exec(each)?.[1] ?? 0),
    }));

describe('a season of forty tours', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    await fillTours(test);
    if (process.env.CHROMIUM) browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const shots = process.env.CARTWRIGHT_PICTURES;
  async function look(page: Page, name: string): Promise<void> {
    if (!shots) return;
    await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.screenshot({ path: `${shots}/${name}-390.png`, fullPage: true });
    await page.setViewportSize({ width: 1440, height: 1000 });
  }
  /** Of the wide things of a page those that do not scroll by themselves. */
  const runsOut = (page: Page) => page.locator('html').evaluate((root) => root.scrollWidth > root.clientWidth);

  itInBrowser('is planned on screen, its lists printed, a result entered, and the calendar follows a visit that moves', async () => {
    const page = await openPage(browser!, { width: 1440, height: 1000 });
    await signInOn(page, test.address, 'safety@cartwright.example', passwordOf('safety'));
    await page.goto(`${test.address}/visits`);
    await page.getByLabel('From', { exact: true }).fill(testDay);
    await page.getByLabel('To', { exact: true }).fill(addDays(testDay, 360));
    const offered = Array.from({ length: 22 }, (_, week) => addDays(testDay, week * 16));
    await page.getByLabel(/^Days, as/).fill(offered.join(' '));
    await page.getByRole('button', { name: 'Add days' }).click();
    await page.getByText(/Proved: no choice/).waitFor();
    await page.getByText(/Plans that are still drafts are not counted/).waitFor();
    await look(page, 'season');
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await runsOut(page)).toBe(false);
    await page.setViewportSize({ width: 1440, height: 1000 });
    await page.getByRole('button', { name: 'Agree these visits' }).click();
    await page.getByText('○ agreed').first().waitFor();
    const agreed: { id: string; day: string; items: number }[] = await test.dataSource.query(
      `SELECT id, on_day::text AS day, jsonb_array_length(list) AS items FROM visit WHERE state = 'agreed' ORDER BY on_day`,
    );
    expect(agreed.length).toBeGreaterThan(1);
    await page.getByRole('button', { name: 'Make an address' }).click();
    const address = (await page.getByText(/examinations\.ics$/).textContent()) ?? '';
    const calendar = async () => entriesOf(await (await fetch(`${test.address}${address.slice(address.indexOf('/api/'))}`)).text());
    const before = await calendar();
    const compact = (day: string) => day.replaceAll('-', '');
    for (const { day } of agreed) expect(before.map((each) => each.start)).toContain(compact(day));

    for (const [index, { id, items }] of agreed.entries()) {
      await page.goto(`${test.address}/visits/${id}`);
      await page.getByRole('button', { name: 'Print the list' }).waitFor();
      expect(await page.getByLabel(/^Outcome of/).count()).toBe(items);
      const pdf = await page.pdf({ format: 'A4', landscape: true, ...(shots ? { path: `${shots}/season-list-${index + 1}.pdf` } : {}) });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      if (index === 0) await look(page, 'season-list');
    }

    // The list of a visit that is today: results are entered line by line.
    const [first, last] = [agreed[0]!, agreed.at(-1)!];
    await test.dataSource.query(`UPDATE visit SET on_day = $2 WHERE id = $1`, [first.id, testDay]);
    await page.goto(`${test.address}/visits/${first.id}`);
    await page.getByLabel('Examiner', { exact: true }).fill('Rosa Tamm (invented)');
    const count = Math.min(2, first.items);
    for (let line = 0; line < count; line++) {
      await page
        .getByLabel(/^Outcome of/)
        .nth(line)
        .selectOption('pass');
      await page
        .getByLabel(/^Report number of/)
        .nth(line)
        .fill(`RT-${line}`);
    }
    await page.getByRole('button', { name: `Record ${count} result` }).click();
    await page.getByText('○ passed').first().waitFor();
    expect(await page.getByRole('cell', { name: /^6 months/ }).count()).toBe(first.items);
    // Every group is examined each half year; the list follows the day on which the visit is now.
    expect(await page.getByRole('cell', { name: addPeriod(testDay, { months: 6, days: 0 }), exact: true }).count()).toBe(first.items);

    // The last visit is put on the day after: the same entry, later, with a higher number.
    const [row] = await test.dataSource.query('SELECT version FROM visit WHERE id = $1', [last.id]);
    const moved = addDays(last.day, 1);
    const safety = await test.as('safety');
    const answer = await safety.graphql(
      'mutation($id: ID!, $day: String!, $version: Int!) { moveVisit(id: $id, onDay: $day, expectedVersion: $version) }',
      { id: last.id, day: moved, version: row.version },
    );
    expect(answer.errors).toBeUndefined();
    const was = before.find((each) => each.start === compact(last.day))!;
    const now = (await calendar()).find((each) => each.uid === was.uid)!;
    expect(now.start).toBe(compact(moved));
    expect(now.sequence).toBeGreaterThan(was.sequence);
    await page.goto(`${test.address}/visits`);
    await page.getByLabel('From', { exact: true }).fill(testDay);
    await page.getByLabel('To', { exact: true }).fill(addDays(testDay, 360));
    await page.getByRole('link', { name: moved }).waitFor();
    const held = page.getByRole('row').filter({ has: page.getByRole('link', { name: testDay }), hasText: 'results are entered' });
    expect(await held.getByRole('button', { name: 'Nobody comes' }).count()).toBe(0);
    await held.waitFor();
    await look(page, 'season-moved');
  });
});
