import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

/** Pages of a PDF, by its page objects. */
const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;

/** Elements of a sheet that reach beyond it. */
const tooWide = `[...document.querySelectorAll('.sheetpage')].flatMap((sheet) => {
  const edge = sheet.getBoundingClientRect().right + 1;
  return [...sheet.querySelectorAll('*')].filter((each) => !each.closest('svg') && each.getBoundingClientRect().right > edge).map((each) => each.outerHTML.slice(0, 80));
})`;

describe('the first minute in a browser', () => {
  let test: TestApp;
  let browser: Browser;
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ web: true });
    browser = await openBrowser();
    const system = await test.as('system');
    for (const show of ['quayside', 'old-mill', 'fenland'])
      await system.graphql(
        'mutation($show: ID!) { makePackPlan(tourId: "harbour-lights", showId: $show) { ... on PlanMade { plan { id } } } }',
        { show },
      );
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  const open = async (role: 'warehouse' | 'system' | 'safety', width = 1440): Promise<{ page: Page; faults: string[] }> => {
    const page = await openPage(browser, { width, height: 900 });
    page.setDefaultTimeout(15_000);
    const faults: string[] = [];
    page.on('pageerror', (fault) => faults.push(fault.message));
    await signInOn(page, test.address, `${role}@cartwright.example`, passwordOf(role));
    return { page, faults };
  };

  itInBrowser('signs in, sees what needs attention, opens the show and prints the cart cards within three clicks', async () => {
    const { page, faults } = await open('warehouse');
    await page.getByText('Dunlin is 1 box short').first().waitFor();
    await page.getByRole('link', { name: 'Open Quayside, night one' }).first().click();
    const [sheets] = await Promise.all([page.context().waitForEvent('page'), page.getByRole('link', { name: 'Print cart cards' }).click()]);
    await sheets.waitForSelector('.sheetpage');
    for (let tries = 0; tries < 50 && (await sheets.evaluate('window.printsAsked')) === 0; tries++) await sheets.waitForTimeout(100);
    expect(await sheets.evaluate('window.printsAsked')).toBe(1);
    expect(await sheets.locator('.sheetpage').count()).toBe(15);
    expect(await sheets.locator('.sheetpage').first().innerText()).toMatch(/Main left[\s\S]*K\d\d[\s\S]*P-\d{3}/);
    expect(pagesOf(await sheets.pdf({ format: 'A4' }))).toBe(15);
    expect(pagesOf(await sheets.pdf({ format: 'Letter' }))).toBe(15);
    for (const what of ['hangs', 'hardware', 'trucks', 'due', 'moves']) {
      await sheets.goto(`${test.address}/print/harbour-lights/quayside/${what}`);
      await sheets.waitForSelector('.sheetpage');
      // Three hangs with loads, caution and signature on one sheet each.
      for (const format of ['A4', 'Letter'])
        if (what === 'hangs') expect({ format, pages: pagesOf(await sheets.pdf({ format })) }).toEqual({ format, pages: 3 });
      expect({ what, tooWide: await sheets.evaluate(tooWide) }).toEqual({ what, tooWide: [] });
    }
    expect(faults).toEqual([]);
  });

  itInBrowser('prints every sheet of the list alone, by its name, and says what hangs with nothing barred on a sheet', async () => {
    const { page, faults } = await open('system');
    const base = `${test.address}/tours/harbour-lights/shows/quayside/print`;
    await page.goto(base);
    await page.getByRole('link', { name: 'Print all sheets' }).waitFor();
    const links = await page.evaluate<string[]>(`[...document.querySelectorAll('main a[href*="/print/"]')].map((each) => each.href)`);
    const sheets: Record<string, { whole: number; alone: number[] }> = {};
    for (const href of links) {
      const { pathname, searchParams } = new URL(href);
      await page.goto(href, { waitUntil: 'domcontentloaded' });
      await page.locator('.sheetpage').first().waitFor();
      const each = (sheets[pathname.split('/').at(-1) ?? ''] ??= { whole: 0, alone: [] });
      const count = await page.locator('.sheetpage').count();
      if (searchParams.has('only')) each.alone.push(count);
      else each.whole = count;
    }
    const { all, ...groups } = sheets;
    expect(Object.keys(groups)).toEqual(
      expect.arrayContaining(['hangs', 'points', 'picks', 'running', 'carts', 'hardware', 'trucks', 'due']),
    );
    expect(groups.carts).toEqual({ whole: 15, alone: Array<number>(15).fill(1) });
    for (const [name, { whole, alone }] of Object.entries(groups))
      if (alone.length > 0) expect({ name, whole }).toEqual({ name, whole: alone.reduce((sum, each) => sum + each, 0) });
    expect(all?.whole).toBe(Object.values(groups).reduce((sum, { whole }) => sum + whole, 0));

    await page.goto(`${test.address}/print/harbour-lights/quayside/hangs-with`);
    await page.locator('.sheetpage').waitFor();
    const said = await page.locator('.sheetpage').innerText();
    for (const words of [
      'What hangs with it',
      'Harbour Lights',
      'Quayside',
      'Nothing of these hangs is barred',
      'Main left',
      'Centre',
      'Nobody stands below',
    ])
      expect(said).toContain(words);
    expect(pagesOf(await page.pdf({ format: 'Letter' }))).toBe(1);
    expect(faults).toEqual([]);
  });

  itInBrowser('shows the five results on one sheet without running out of a phone', async () => {
    for (const width of [390, 1440]) {
      const { page, faults } = await open('system', width);
      await page.goto(`${test.address}/tours/harbour-lights/shows/quayside`);
      for (const title of ['Main left, 24 boxes', 'Carts, top box first', 'Hardware', 'Trucks'])
        await page.getByRole('heading', { name: title, exact: true }).waitFor();
      for (const path of [
        '/',
        '/tours',
        '/tours/harbour-lights',
        '/register',
        '/register/H-07',
        '/dates',
        '/import',
        '/tours/harbour-lights/shows/quayside',
        '/tours/harbour-lights/shows/quayside/moves',
        '/floor/harbour-lights/quayside',
        '/floor/harbour-lights/quayside/carts',
        '/tours/harbour-lights/shows/quayside/trucks/T1',
        '/tours/harbour-lights/shows/quayside/hangs',
      ]) {
        await page.goto(test.address + path);
        await page.locator('h1').waitFor();
        await page.waitForTimeout(300);
        expect({ path, over: await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth') }).toEqual({
          path,
          over: 0,
        });
      }
      expect(faults).toEqual([]);
      await page.context().close();
    }
  });

  itInBrowser('reads a cart by keyboard and says which slot is wrong and what belongs there', async () => {
    const { page } = await open('warehouse', 390);
    await page.goto(`${test.address}/tours/harbour-lights/shows/quayside/carts`);
    await page.getByLabel('Scan or type a cart, or a box on it').fill('k3');
    await page.keyboard.press('Enter');
    const field = page.getByLabel('Scan or type a box');
    const read = async (code: string) => {
      await field.fill(code);
      await page.keyboard.press('Enter');
    };
    for (const serial of ['P-012', 'P-011', 'P-013']) await read(serial);
    await page.getByRole('alert').getByText('Slot 3: P-010 belongs there.').waitFor();
    for (const serial of ['P-010', 'P-009']) await read(serial);
    await page.getByText('K03 is confirmed.').waitFor();
  });

  itInBrowser('pastes a hang from a spreadsheet, sees a wrong splay in its row, and releases the plan', async () => {
    const { page } = await open('system');
    await page.goto(`${test.address}/tours/harbour-lights/shows/old-mill/hangs`);
    const centre = page.getByRole('region', { name: 'Centre' });
    await centre.getByText('Paste rows from a spreadsheet').click();
    await centre.getByLabel(/Position, model, splay/).fill('position\tmodel\tsplay\n1\tPlover\t0.5\n2\tPlover\t7.3\n3\tPlover\t2');
    await centre.getByRole('button', { name: 'Use these 3 boxes' }).click();
    await centre.getByText('wrong splay: wanted one of').waitFor();
    await centre.getByLabel('Splay of position 2').fill('1');
    await page.getByRole('button', { name: 'Save the hangs' }).click();
    await page.getByText('This draft is stale').waitFor();
    await page.getByRole('button', { name: 'Plan again' }).click();
    await page.getByRole('heading', { name: 'Centre, 3 boxes' }).waitFor();
    await page.getByRole('button', { name: 'Release as revision A' }).click();
    await page.getByText('Revision A').waitFor();
  });
});
