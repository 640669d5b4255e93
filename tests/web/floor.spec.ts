import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

describe('the floor on a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    const system = await test.as('system');
    await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }');
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 844 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const left = async () => Number(/(\d+) left/.exec(await page.getByRole('heading', { level: 1 }).innerText())?.[1]);
  const isLeft = (count: number) => page.getByRole('heading', { level: 1, name: `Box moves: ${count} left` }).waitFor();
  const allSent = () => page.getByRole('button', { name: 'all sent' }).waitFor();

  itInBrowser('says what to do now, in order, dark by default, with a light of its own', async () => {
    await page.getByRole('link', { name: 'its floor' }).first().click();
    await page.getByRole('heading', { name: 'What to do now' }).waitFor();
    await page.getByRole('link', { name: /^Flying/ }).waitFor();
    const jobs = await page.locator('a.job b').allInnerTexts();
    expect(jobs).toEqual(['Box moves', 'Carts to confirm', 'Trucks', 'Flying', 'Return']);
    const light = () => page.evaluate('document.documentElement.dataset.light');
    expect(await light()).toBe('dark');
    await page.getByRole('button', { name: 'For daylight' }).click();
    expect(await light()).toBe('day');
    await page.getByRole('button', { name: 'For the dark' }).click();
    await page.getByRole('link', { name: 'The whole show' }).click();
    await page.getByRole('link', { name: 'To the floor' }).waitFor();
    expect(await light()).toBe('day');
    await page.goto(test.address + floor);
  });

  itInBrowser('everything that is pressed is at least 56 px high, and nothing is wider than a narrow phone', async () => {
    await page.setViewportSize({ width: 320, height: 640 });
    for (const path of [floor, `${floor}/moves`]) {
      await page.goto(test.address + path);
      await page.locator('.fl-foot .big').waitFor();
      const pressed = page.locator('.fl button, .fl a');
      for (const one of await pressed.all()) expect((await one.boundingBox())?.height ?? 56).toBeGreaterThanOrEqual(56);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    }
    await page.setViewportSize({ width: 390, height: 844 });
  });

  itInBrowser('does one box move, not two by a bouncing finger, and takes it back', async () => {
    await page.goto(`${test.address}${floor}/moves`);
    const done = page.getByRole('button', { name: 'Done' });
    await done.waitFor();
    const [all, first] = [await left(), await page.locator('.answer').innerText()];
    const at = await done.boundingBox();
    await done.dblclick({ delay: 20 });
    await isLeft(all - 1);
    expect((await done.boundingBox())?.y).toBe(at?.y);
    await allSent();
    await page.getByRole('button', { name: 'Undo' }).click();
    await isLeft(all);
    await allSent();
    expect(await page.locator('.answer').innerText()).toBe(first);
    await page.getByText('Nothing to take back').waitFor();
  });
});
