import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('what was read last', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 844 });
    page.setDefaultTimeout(30_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });
  const kept = () =>
    page.evaluate<string[]>(`new Promise((done) => {
      const asked = indexedDB.open('cartwright-last-read');
      asked.onsuccess = () => {
        const keys = asked.result.transaction('read').objectStore('read').getAllKeys();
        keys.onsuccess = () => { asked.result.close(); done(keys.result); };
      };
    })`);

  itInBrowser('is readable after reloading while the house cannot be reached, and forgotten at sign-out', async () => {
    await page.goto(`${test.address}/tours`);
    await page.getByText('Harbour Lights').first().waitFor();
    while ((await kept()).length === 0) await page.waitForTimeout(100);
    // What was read is written a moment after it was read.
    await page.waitForTimeout(1_500);
    await page.route(/\/(graphql|api)/, (route) => route.abort('connectionrefused'));
    await page.reload();
    await page.getByText('Harbour Lights').first().waitFor();
    await page.unroute(/\/(graphql|api)/);
    await page.reload();
    await page.getByText('Harbour Lights').first().waitFor();
    await page.getByRole('button', { name: /, (warehouse|system tech|safety officer)/ }).click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByLabel('Email').waitFor();
    expect((await kept()).filter((key) => !key.endsWith('nobody'))).toEqual([]);
  });
});
