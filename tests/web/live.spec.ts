import type { Browser, Page } from 'playwright-core';
import { itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { demoPeople } from '../../apps/api/src/features/transfer/demo.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('what others do is seen without reloading', () => {
  let test: TestApp;
  let browser: Browser;
  let page: Page;
  let system: Agent;
  let truck: { planId: string; id: string };
  beforeAll(async () => {
    if (!process.env.CHROMIUM) return;
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    truck = { planId: made.data.makePackPlan.plan.id, id: made.data.makePackPlan.plan.plan.truck.trucks[0].id };
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 844 });
    await signInOn(page, test.address, demoPeople.find((each) => each.role === 'warehouse')!.email, passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });
  const tick = (row: number, done = true) =>
    system.graphql('mutation($id: ID!, $what: String!, $done: Boolean!) { tick(planId: $id, what: $what, done: $done) { ticks } }', {
      id: truck.planId,
      what: `row:${truck.id}:${row}`,
      done,
    });

  itInBrowser('a row that somebody else ticks is ticked here', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/quayside/trucks/${truck.id}`);
    const box = page.getByLabel('Row 1 loaded');
    await box.waitFor();
    expect(await box.isChecked()).toBe(false);
    expect((await tick(1)).errors).toBeUndefined();
    await page.locator('input[aria-label="Row 1 loaded"]:checked').waitFor();
    expect((await tick(1, false)).errors).toBeUndefined();
    await page.locator('input[aria-label="Row 1 loaded"]:not(:checked)').waitFor();
  });

  itInBrowser('five tabs of one browser share one stream, also after the tab that held it is closed', async () => {
    const more = await Promise.all(Array.from({ length: 4 }, () => page.context().newPage()));
    const events: Page[] = [];
    for (const each of more) {
      each.on('request', (request) => new URL(request.url()).pathname === '/api/events' && events.push(each));
      await each.goto(`${test.address}/tours/harbour-lights/shows/quayside/trucks/${truck.id}`);
      await each.getByLabel('Row 2 loaded').waitFor();
    }
    expect(events).toEqual([]);
    await tick(2);
    for (const each of more) await each.locator('input[aria-label="Row 2 loaded"]:checked').waitFor();
    await page.goto('about:blank');
    await tick(3);
    for (const each of more) await each.locator('input[aria-label="Row 3 loaded"]:checked').waitFor();
    expect(events.length).toBe(1);
    for (const each of more) await each.close();
  });
});
