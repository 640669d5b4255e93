import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { itemCells, sendRows } from '../support/register-edits.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('what waits for the safety officer, in a browser on a phone', () => {
  let test: TestApp;
  let warehouse: Agent;
  let browser: Browser;
  const phone = { width: 390, height: 900 };
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ web: true });
    warehouse = await test.as('warehouse');
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  const signedIn = async (role: 'warehouse' | 'safety'): Promise<Page> => {
    const page = await openPage(browser, phone);
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, `${role}@cartwright.example`, passwordOf(role));
    return page;
  };
  const isWithin = (page: Page) => page.evaluate('document.documentElement.scrollWidth <= window.innerWidth');
  const countOf = async (id: string) =>
    (await warehouse.graphql('query($id: ID!) { item(id: $id) { item } }', { id })).data.item.item.count;

  itInBrowser('a form says what waits and for whom, and so does the page of the item', async () => {
    const page = await signedIn('warehouse');
    await page.goto(`${test.address}/register/SH-1`);
    await page.getByText('Change what is on file').click();
    await page.getByRole('textbox', { name: 'count' }).fill('60');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('status').getByText('Saved, but for what waits for the safety officer:').waitFor();
    await page.getByText('Proposed by Wren Castellan.').waitFor();
    expect(await countOf('SH-1')).toBe(16);
    expect(await isWithin(page)).toBe(true);
    await page.close();
  });

  itInBrowser('the safety officer finds it on Today, sees old and new, and accepts one with a reason', async () => {
    await sendRows(warehouse, 'items/hoist', [{ ...(await itemCells(warehouse, 'H-08')), 'declared on': '2027-02-20' }]);
    const page = await signedIn('safety');
    await page.getByText('Waiting for you: 2 proposals').waitFor();
    await page.getByRole('link', { name: 'Look at what waits' }).click();
    await page.getByRole('heading', { name: 'Waiting for you' }).waitFor();
    await page.getByText('count: 16 → 60').waitFor();
    expect(await isWithin(page)).toBe(true);
    await page.getByRole('checkbox', { name: 'SH-1' }).check();
    const accept = page.getByRole('button', { name: 'Accept the 1 ticked' });
    expect(await accept.isDisabled()).toBe(true);
    await page.getByLabel('Why: kept with what it decides, under your name').fill('counted with the warehouse');
    await accept.click();
    await page.getByText('1 answered.').waitFor();
    expect(await countOf('SH-1')).toBe(60);
    await page.getByLabel('Why: kept with what it decides, under your name').fill('no paper was shown');
    await page.getByRole('button', { name: 'Decline it' }).click();
    await page.getByText('Nothing waits.').waitFor();
    await page.close();
  });

  itInBrowser('the safety officer changes a rating at once, and is asked why', async () => {
    const page = await signedIn('safety');
    await page.goto(`${test.address}/register`);
    await page.getByText('Catalogue models').click();
    const row = page.getByRole('row').filter({ hasText: 'Chain hoist 2.5 t' }).first();
    await row.getByText('Show').click();
    await row.getByLabel('rated load', { exact: true }).fill('3000 kg');
    await row.getByRole('button', { name: 'Save the model' }).click();
    await row.getByText('it is kept with the edition').first().waitFor();
    await row.getByLabel('Why more is let pass than before, where it is').fill('new plate from the maker');
    await row.getByRole('button', { name: 'Save the model' }).click();
    await row.getByText('Saved.').waitFor();
    await page.close();
  });
});
