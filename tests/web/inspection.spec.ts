import type { Browser, Page } from 'playwright-core';
import type { PackPlan } from '#pack-plan';
import { recordFields } from '#trade';
import { english } from '#words';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

/** Pages of a PDF, by its page objects. */
const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;

const whole = {
  ...{ on: '2027-02-01', outcome: 'pass', nextLatestOn: '2028-02-01', examiner: 'B. Ropemaker', report: 'R-77', defectBy: '2027-09-01' },
  particulars: {
    ...{ employer: 'Ferry Lane Hire, 1 Ferry Lane', premises: 'the depot', manufactured: '2021', previousOn: '2026-02-01' },
    ...{ workingLoadLimit: '2,500 kg', firstAfterInstallation: false, basis: 'within 12 months', statement: 'fit for use as marked' },
    ...{ tests: 'none', examinerAddress: '2 Ferry Lane', qualifications: 'engineer surveyor', capacity: 'competent person' },
    ...{ employedBy: 'self-employed', authenticatedBy: 'B. Ropemaker, 2 Ferry Lane', reportOn: '2027-02-02' },
    defects: [
      { part: 'chain bag', what: 'seam worn', dangerousBy: '2027-09-01', repair: 'sew it again' },
      { part: 'hook latch', what: 'spring weak', repair: 'new spring', remediedOn: '2027-02-02' },
    ],
  },
};

describe('what an inspector is given', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let safety: Agent;
  let plan: PackPlan;
  let hoist: string;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    safety = await test.as('safety');
    const system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    const { id } = made.data.makePackPlan.plan;
    plan = made.data.makePackPlan.plan.plan;
    hoist = plan.picks.hangs[0]?.picks[0]?.hoistSerial ?? '';
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename } }', { id });
    const report = Buffer.from('%PDF-1.4 an invented report');
    const kept = await safety.fetch(`/api/reports/${hoist}?name=R-77.pdf`, {
      method: 'POST',
      headers: { 'content-type': 'application/pdf', 'x-cartwright': '1' },
      body: report as never,
    });
    const { errors } = await safety.graphql('mutation($id: ID!, $e: AnyJson!) { recordExamination(itemId: $id, examination: $e) { id } }', {
      id: hoist,
      e: { ...whole, reportFile: ((await kept.json()) as { id: string }).id },
    });
    expect(errors).toBeUndefined();
    if (browserPath) browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const open = async (width: number): Promise<Page> => {
    const page = await openPage(browser!, { width, height: 900 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'safety@cartwright.example', passwordOf('safety'));
    return page;
  };
  /** Text that is cut off or runs out of its page. */
  const cut = (page: Page) =>
    page.locator('.sheetpage td, .sheetpage p, .sheetpage h1, .sheetpage h2').evaluateAll((all) =>
      all
        .filter((each: any) => {
          const right = each.closest('.sheetpage').getBoundingClientRect().right;
          return each.getBoundingClientRect().right > right + 1 || each.scrollWidth > each.clientWidth + 1;
        })
        .map((each: any) => each.textContent.slice(0, 60)),
    );

  itInBrowser('the file of the first show names every serial in the air, its last report with the hash, and who released', async () => {
    const page = await open(1100);
    await page.goto(`${test.address}/print/harbour-lights/quayside/inspection`);
    await page.getByRole('heading', { name: 'Inspection file' }).waitFor();
    const text = await page.locator('.sheetpage').innerText();
    for (const hang of plan.picks.hangs) {
      expect(text).toContain(`In the air: ${hang.name}`);
      for (const serial of [hang.gridSerial, ...hang.picks.map((each) => each.hoistSerial), ...hang.boxes.map((each) => each.serial)])
        expect(text).toContain(serial);
    }
    for (const words of [
      ...['Revision A was released by Sol Achterberg', 'R-77', 'B. Ropemaker'],
      ...['chain bag: seam worn', '■ open', 'hook latch: spring weak', '2027-02-02, R-77', 'not signed', 'Lifting plan'],
      ...['Rules it was held against', 'LOLER 1998 reg. 9(3)(a)(ii)', 'Head of the log', 'They do not replace the examination'],
    ])
      expect(text).toContain(words);
    expect(text).toMatch(/R-77\.pdf [0-9a-f]{64}/);
    await page.emulateMedia({ media: 'print' });
    expect(await cut(page)).toEqual([]);
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      expect(pagesOf(pdf)).toBeGreaterThan(3);
    }
  });

  itInBrowser('the report of one examination has every field of the list, on the screen and on paper', async () => {
    for (const width of [390, 1440]) {
      const page = await open(width);
      await page.goto(`${test.address}/register/${hoist}`);
      await page.getByText('examined, passed, report R-77').waitFor();
      await page.getByRole('link', { name: 'Every field of it' }).first().click();
      await page.getByRole('heading', { name: 'Report of an examination' }).waitFor();
      const text = await page.locator('.sheetpage').innerText();
      for (const field of recordFields) expect(text).toContain(english.recordField(field));
      for (const value of ['Ferry Lane Hire, 1 Ferry Lane', 'fit for use as marked', 'engineer surveyor', 'chain bag', 'by 2027-09-01'])
        expect(text).toContain(value);
    }
    const page = await open(1100);
    const record = await safety.graphql('query($id: ID!) { item(id: $id) { records(first: 1) { edges { node { id } } } } }', { id: hoist });
    await page.goto(`${test.address}/print/records/${hoist}/${record.data.item.records.edges[0].node.id}`);
    await page.getByRole('heading', { name: 'Report of an examination' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await cut(page)).toEqual([]);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pagesOf(pdf)).toBeLessThanOrEqual(2);
  });

  itInBrowser('an extract of the register holds the kinds that were chosen, on paper and as CSV', async () => {
    const page = await open(1440);
    await page.goto(`${test.address}/register-extract?kind=hoist&kind=grid`);
    await page.getByText(/items: hoist, grid, all depots/).waitFor();
    const printed = await page.locator('.sheetpage tbody .mono').allInnerTexts();
    const csv = await (await safety.fetch('/api/csv/extract?kind=hoist&kind=grid')).text();
    const rows = csv.trim().split('\r\n').slice(1);
    expect(rows.map((each) => each.split(',')[0])).toEqual(printed);
    const onFile: { id: string }[] = await test.dataSource.query(`SELECT id FROM item WHERE kind IN ('hoist', 'grid') ORDER BY id`);
    expect([...printed].sort()).toEqual(onFile.map((each) => each.id).sort());
    expect(rows.find((each) => each.startsWith(`${hoist},`))).toMatch(
      /2027-02-01,pass,R-77,B\. Ropemaker,2028-02-01,R-77\.pdf,[0-9a-f]{64}/,
    );
  });

  itInBrowser('the due list prints what was chosen, named on every page', async () => {
    const page = await open(390);
    await page.goto(`${test.address}/dates`);
    await page.getByLabel('Kind').selectOption('hoist');
    await page.getByLabel('Tour').selectOption('harbour-lights');
    await page.getByText('Kit is booked for a tour').waitFor();
    await page.getByText(hoist, { exact: true }).waitFor();
    expect(new URL(page.url()).search).toBe('?kind=hoist&tour=harbour-lights');
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    await page.goto(`${test.address}/print/dates${new URL(page.url()).search}`);
    await page.getByText(/kind hoist .* printed/).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.sheetpage tbody .mono').allInnerTexts()).toContain(hoist);
    expect(pagesOf(await page.pdf({ format: 'A4' }))).toBe(1);
  });
});
