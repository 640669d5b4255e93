import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const show = '/tours/harbour-lights/shows/quayside';

describe('work on the floor in a browser', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    const system = await test.as('system');
    await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }');
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

  const left = () => page.locator('table.ticks tbody tr').count();
  const fewerThan = async (count: number) => {
    for (let tries = 0; tries < 200 && (await left()) >= count; tries++) await page.waitForTimeout(100);
    expect(await left()).toBeLessThan(count);
  };

  itInBrowser('says why a box, and a cart, stands where the plan puts it', async () => {
    await page.goto(`${test.address}${show}`);
    await page
      .getByRole('button', { name: /^Why P-\d+ stands in slot 1$/ })
      .first()
      .click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText(/^(Without P-\d+ the|Several would serve|No other box)/).waitFor();
    await dialog.getByRole('button', { name: 'Close' }).click();
    await dialog.waitFor({ state: 'detached' });
    await page
      .getByRole('button', { name: /^Why K\d+ carries it$/ })
      .first()
      .click();
    await dialog.getByText(/^(Without K\d+ the|Several would serve|No other cart)/).waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  });

  itInBrowser(
    'does a move of the list, then finds a cart otherwise, takes the floor as it is and works down the list from there',
    async () => {
      await page.goto(`${test.address}${show}/moves`);
      await page.locator('table.ticks').waitFor();
      const all = await left();
      await page
        .getByRole('button', { name: /^Done:/ })
        .first()
        .click();
      await fewerThan(all);
      await page.getByText('A cart stands otherwise than shown here').click();
      const boxes = page.getByLabel('Its boxes, top first');
      const [top, second, ...rest] = (await boxes.inputValue()).split(' ');
      await boxes.fill([second, top, ...rest].join(' '));
      await page.getByRole('button', { name: 'Take the floor as it now is' }).click();
      await page.getByText('Somebody did it differently.').waitFor();
      for (let guard = 0; guard < 60 && (await left()) > 0; guard++) {
        const before = await left();
        await page
          .getByRole('button', { name: /^Done:/ })
          .first()
          .click();
        await fewerThan(before);
      }
      await page.getByText('Every cart stands as it is wanted.').waitFor();
    },
  );

  itInBrowser('swaps a failed box: quarantined, another in its place, the difference in words', async () => {
    await page.goto(`${test.address}${show}`);
    await page.getByText('A box has failed').click();
    await page.getByLabel('Its serial').fill('P-011');
    await page.getByLabel('What is wrong with it').fill('Driver open');
    await page.getByRole('button', { name: 'Quarantine it and find another' }).click();
    await page.getByText(/P-011/).first().waitFor();
    await page.getByRole('status').first().waitFor();
    await page.goto(`${test.address}/register/P-011`);
    await page.getByText('quarantined: Driver open').waitFor();
  });
});
