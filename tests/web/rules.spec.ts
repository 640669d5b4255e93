import type { Browser } from 'playwright-core';
import { demoPeople } from '../../apps/api/src/features/transfer/demo.js';
import { itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('examination rules on screen', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (process.env.CHROMIUM) browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  itInBrowser('are changed with a reason, and what they were before is opened', async () => {
    const page = await openPage(browser!, { width: 1440, height: 1000 });
    await signInOn(page, test.address, demoPeople.find((each) => each.role === 'safety')!.email, passwordOf('safety'));
    await page.goto(`${test.address}/rules`);
    const rule = page.getByRole('listitem').filter({ hasText: /hoist: every 12 months/ });
    await rule.getByText(/^Change the rule of/).click();
    const form = rule.locator('form');
    await form.getByLabel('Intervals').fill('6 months');
    await form.getByRole('button', { name: 'Change the rule' }).click();
    await form
      .getByText(/wanted why it holds otherwise/)
      .first()
      .waitFor();
    await form.getByLabel('Why it holds otherwise').fill('heavy use');
    await form.getByRole('button', { name: 'Change the rule' }).click();
    const changed = page.getByRole('listitem').filter({ hasText: /hoist: every 6 months/ });
    await changed.first().waitFor();
    await changed.first().getByText('What it was before').click();
    await changed
      .first()
      .getByText(/heavy use/)
      .click();
    await changed.first().getByText('The edition before, whole').waitFor();
    expect(await changed.first().innerText()).toMatch(/Before: GB \(United Kingdom\): hoist: every 12 months/);
    const shots = process.env.CARTWRIGHT_PICTURES;
    if (!shots) return;
    await changed
      .first()
      .getByText(/^Change the rule of/)
      .click();
    for (const scheme of ['light', 'dark'] as const)
      for (const width of [1440, 390]) {
        await page.emulateMedia({ colorScheme: scheme });
        await page.setViewportSize({ width, height: 900 });
        await page.screenshot({ path: `${shots}/rules-${scheme}-${width}.png`, fullPage: true });
      }
  });
});
