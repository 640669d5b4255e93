import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('counts at return in a browser', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 800 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  itInBrowser('counts two lines on the phone, keeps what is typed over a reload, corrects one, and shows what was learned', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/quayside/counts`);
    await page.getByLabel('front link pin, Link pin 12: Sent').fill('132');
    await page.getByLabel('front link pin, Link pin 12: Back').fill('120');
    await page.reload();
    expect(await page.getByLabel('front link pin, Link pin 12: Back').inputValue()).toBe('120');
    await page.getByText('12 gone or unfit.').waitFor();
    await page.getByLabel('lock pin, Lock pin 8: all back').click();
    await page.getByRole('button', { name: 'Record 2 of 19 lines' }).click();
    await page.getByText('○ Counted.').waitFor();
    await page
      .getByText(/15 in 9.?720/)
      .first()
      .waitFor();
    const record = page.locator('li.record').filter({ hasText: 'Link pin 12' });
    await record.getByText('This count was wrong').click();
    await record.getByLabel('Back').fill('131');
    await record.getByLabel('What was wrong').fill('Eleven lay in the cable trunk');
    await record.getByRole('button', { name: 'Record the right count' }).click();
    await page.getByText(/in the place of no\. \d+: Eleven lay in the cable trunk/).waitFor();
    await page
      .getByText(/4 in 9.?720/)
      .first()
      .waitFor();
  });

  itInBrowser('has targets that a glove can hit', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/old-mill/counts`);
    await page.getByLabel('front link pin, Link pin 12: Back').waitFor();
    const heights = await page.evaluate<number[]>(
      `Array.from(document.querySelectorAll('.counts .trio input, .counts button'), (each) => each.getBoundingClientRect().height)`,
    );
    expect(heights.length).toBeGreaterThan(30);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(56);
  });
});
