import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const truckPage = '/tours/harbour-lights/shows/quayside/trucks/T1';

describe('what is done without a network', () => {
  let test: TestApp;
  let system: Agent;
  let planId: string;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    planId = made.data.makePackPlan.plan.id;
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a test") { __typename } }', { id: planId });
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

  const tickEvents = async (): Promise<string[]> =>
    (await test.dataSource.query(`SELECT sentence FROM event WHERE what IN ('ticked', 'unticked') ORDER BY id`)).map(
      (each: { sentence: string }) => each.sentence.replace(/ of .*/, ''),
    );

  itInBrowser('is kept through closing, shown as not sent, and sent once and in order when the network is back', async () => {
    await page.goto(test.address + truckPage);
    await page.getByLabel('Row 1 loaded').waitFor();
    await page.context().setOffline(true);
    for (const row of [3, 1, 2, 4]) await page.getByLabel(`Row ${row} loaded`).check();
    await page.getByLabel('Row 1 loaded').uncheck();
    await page.getByText('5 not sent yet').waitFor();
    expect(await tickEvents()).toEqual([]);
    const next = await page.context().newPage();
    await page.close();
    page = next;
    page.setDefaultTimeout(30_000);
    await page.context().setOffline(false);
    await page.goto(test.address + truckPage);
    await page.locator('input[aria-label="Row 4 loaded"]:checked').waitFor();
    await page.getByText('not sent yet').waitFor({ state: 'detached' });
    expect(await tickEvents()).toEqual(['Ticked T1 row 3', 'Ticked T1 row 1', 'Ticked T1 row 2', 'Ticked T1 row 4', 'Took back T1 row 1']);
    const ticks = await test.dataSource.query(
      `SELECT kind || ':' || subject || ':' || place AS what FROM tick WHERE plan_id = $1 ORDER BY 1`,
      [planId],
    );
    expect(ticks.map((each: { what: string }) => each.what)).toEqual(['row:T1:2', 'row:T1:3', 'row:T1:4']);
  });

  itInBrowser('an answer that is lost on the way changes nothing: it is sent again and counts once', async () => {
    const before = (await tickEvents()).length;
    let lost = 0;
    await page.route('**/graphql', async (route) => {
      if (lost === 0 && route.request().postData()?.includes('"operationName":"Tick"')) {
        lost++;
        await route.fetch();
        return route.abort('connectionreset');
      }
      return route.continue();
    });
    await page.getByLabel('Row 5 loaded').check();
    await page.getByText('not sent yet').waitFor({ state: 'detached' });
    expect(lost).toBe(1);
    expect((await tickEvents()).slice(before)).toEqual(['Ticked T1 row 5']);
    await page.unroute('**/graphql');
  });

  itInBrowser('is kept for whoever did it when somebody else signs in on the device', async () => {
    await page.goto(test.address + truckPage);
    await page.getByLabel('Row 1 loaded').waitFor();
    await page.context().setOffline(true);
    await page.getByLabel('Row 1 loaded').check();
    await page.getByText('1 not sent yet').waitFor();
    // The session ends while the device is away.
    await test.dataSource.query('DELETE FROM session');
    await page.context().setOffline(false);
    await page.getByLabel('Email').waitFor();
    await signInOn(page, test.address, 'safety@cartwright.example', passwordOf('safety'));
    await page.getByText(/1 action of .* waits on this device/).waitFor();
    const left = page.waitForEvent('load');
    await page.getByRole('button', { name: /, (warehouse|system tech|safety officer)/ }).click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await left;
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
    await page.getByText('waits on this device').waitFor({ state: 'detached' });
    await page.getByText('not sent yet').waitFor({ state: 'detached' });
    expect((await tickEvents()).at(-1)).toBe('Ticked T1 row 1');
  });

  itInBrowser('what the house does not take is shown with its reason until it has been seen', async () => {
    const [{ hang }] = await test.dataSource.query(`SELECT plan #>> '{picks,hangs,0,hang}' AS hang FROM pack_plan WHERE id = $1`, [planId]);
    await page.goto(`${test.address}/tours/harbour-lights/shows/quayside/hangs/${hang}/running`);
    const step = page.locator('ol.steps input').first();
    await step.waitFor();
    await page.context().setOffline(true);
    await step.check();
    await page.getByText('1 not sent yet').waitFor();
    // Meanwhile another revision took the place of this one.
    await test.dataSource.query(`UPDATE pack_plan SET state = 'superseded' WHERE id = $1`, [planId]);
    await page.context().setOffline(false);
    await page.getByText('not taken').waitFor();
    expect(await page.locator('.outbox .faults').innerText()).toMatch(/done:[\s\S]*Wanted the plan in force/);
    await page.reload();
    await page.getByRole('button', { name: 'I have seen it' }).click();
    await page.getByText('not taken').waitFor({ state: 'detached' });
  });
});
