import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('the register on the screen', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (!browserPath) return;
    browser = await openBrowser();
    page = await (await browser.newContext({ viewport: { width: 1440, height: 1000 } })).newPage();
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const serials = () => page.locator('table').first().locator('tbody td.mono').allInnerTexts();
  const asked = () => Object.fromEntries(new URL(page.url()).searchParams);

  itInBrowser('keeps filter and order in the address, and a filter by its name on the device', async () => {
    await page.goto(`${test.address}/register`);
    await page.getByRole('search').getByLabel('Kind').selectOption('hoist');
    await page.getByRole('button', { name: 'Model' }).click();
    await page.getByRole('button', { name: 'Serial', exact: false }).first().click();
    await page.getByRole('button', { name: 'Serial', exact: false }).first().click();
    await page.waitForURL(/sort=-serial/);
    expect(asked()).toEqual({ kind: 'hoist', sort: '-serial' });
    await page.getByRole('columnheader', { name: 'Serial' }).and(page.locator('[aria-sort=descending]')).waitFor();
    await page.locator('tbody tr').filter({ hasText: 'P-' }).first().waitFor({ state: 'detached' });
    const shown = await serials();
    expect(shown).toEqual([...shown].sort().reverse());
    await page.getByText('Saved filters').click();
    await page.getByLabel('Name for what is shown now').fill('Hoists, last first');
    await page.getByRole('button', { name: 'Save the filter' }).click();
    await page.goto(`${test.address}/register`);
    await page.getByText('Saved filters (1)').click();
    await page.getByRole('button', { name: 'Hoists, last first', exact: true }).click();
    await page.waitForURL(/sort=-serial/);
    expect(asked()).toEqual({ kind: 'hoist', sort: '-serial' });
  });

  itInBrowser('changes what is selected in one save, and says which item is refused', async () => {
    await page.goto(`${test.address}/register?kind=box&search=P-04`);
    await page.getByLabel('Select P-046').check();
    await page.getByLabel('Select P-047').check();
    await page.getByText('2 items selected').waitFor();
    await page.getByText('Change the selected').click();
    await page.getByLabel('Column').selectOption('state');
    await page.getByLabel('New value').selectOption('in service');
    await page.getByRole('button', { name: 'Change 2 items' }).click();
    await page.getByText('Nothing is changed: 1 item is refused.').waitFor();
    await page.getByRole('button', { name: 'Take it off the selection' }).click();
    await page.getByText('1 item selected').waitFor();
    await page.getByLabel('Column').selectOption('depot');
    await page.getByLabel('New value').fill('North yard');
    await page.getByRole('button', { name: 'Change 1 item' }).click();
    await page.getByText('1 item is changed').waitFor();
    await page.getByRole('cell', { name: 'North yard' }).first().waitFor();
    const labels = await page.getByRole('link', { name: 'Labels for the selected' }).getAttribute('href');
    expect(labels).toBe('/labels?serial=P-046');
  });
});
