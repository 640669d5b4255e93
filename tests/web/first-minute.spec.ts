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
