import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

describe('a truck by two loaders, each with a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let system: Agent;
  let plan: { id: string; truck: any };
  let one: Page;
  let other: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made =
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id truck(truck: "T1") } } } }';
    plan = (await system.graphql(made)).data.makePackPlan.plan;
    if (!browserPath) return;
    browser = await openBrowser();
    [one, other] = (await Promise.all(
      (['warehouse', 'system'] as const).map(async (role) => {
        const page = await openPage(browser!, { width: 390, height: 844 });
        page.setDefaultTimeout(20_000);
        await signInOn(page, test.address, `${role}@cartwright.example`, passwordOf(role));
        return page;
      }),
    )) as [Page, Page];
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const ticks = async (): Promise<string[]> =>
    (await system.graphql('query($id: ID!) { plan(id: $id) { ticks } }', { id: plan.id })).data.plan.ticks;
  const allSent = (page: Page) => page.getByRole('button', { name: 'all sent' }).waitFor();

  itInBrowser('what one ticks the other sees, and neither ticks the same row', async () => {
    for (const page of [one, other]) {
      await page.goto(`${test.address}${floor}/trucks/T1`);
      await page.getByRole('button', { name: 'Row 1 is in' }).waitFor();
    }
    await one.getByRole('button', { name: 'Row 1 is in' }).click();
    await other.getByRole('button', { name: 'Row 2 is in' }).click();
    await one.getByRole('button', { name: 'Row 3 is in' }).waitFor();
    await picture(one, 'truck-load');
    await Promise.all([allSent(one), allSent(other)]);
    expect((await ticks()).sort()).toEqual(['row:T1:1', 'row:T1:2']);
  });

  itInBrowser('says what is on each axle after the row, by the levers of the truck', async () => {
    const rows = plan.truck.rows.slice(0, 3).flatMap((row: any) => row.pieces);
    const massKg = plan.truck.placements
      .filter((each: any) => rows.includes(each.id))
      .reduce((sum: number, each: any) => sum + each.massKg, 0);
    const gross = (row: number) => plan.truck.afterRows[row - 1].find((each: any) => each.axle === 'gross').loadKg;
    const all = plan.truck.placements.reduce((sum: number, each: any) => sum + each.massKg, 0);
    // Whatever the axles carry together grows by what was put in, and by nothing else.
    expect(gross(plan.truck.rows.length) - gross(3)).toBeCloseTo(all - massKg, 6);
    const nearest = plan.truck.afterRows[2]
      .filter((each: any) => each.limitKg !== null)
      .sort((a: any, b: any) => b.loadKg / b.limitKg - a.loadKg / a.limitKg)[0];
    const digits = (kg: number) => String(Math.round(kg)).split('').join('\\D?');
    await one.getByText(new RegExp(`After this row: .*${digits(nearest.loadKg)} kg of ${digits(nearest.limitKg)} kg`)).waitFor();
  });

  itInBrowser('unloads from the door and loads for home, with ticks of their own', async () => {
    const last = plan.truck.rows.length;
    await one.goto(`${test.address}${floor}/trucks`);
    await one.getByRole('link', { name: 'Unload', exact: true }).click();
    await one.getByRole('link', { name: /^T1/ }).click();
    await one.getByRole('button', { name: `Row ${last} is off` }).waitFor();
    await picture(one, 'truck-unload');
    await one.getByRole('button', { name: `Row ${last} is off` }).click();
    await one.getByText(`Row ${last} is off: noted`).waitFor();
    await one.goto(`${test.address}${floor}/trucks/T1?way=load-out`);
    const first = one.getByRole('button', { name: /^Row \d+ is in$/ });
    await first.click();
    await one.getByText(/Row \d+ is in: noted/).waitFor();
    await allSent(one);
    expect(
      (await ticks())
        .filter((each) => !each.startsWith('row:'))
        .map((each) => each.split(':')[0])
        .sort(),
    ).toEqual(['load-out', 'unload']);
  });

  itInBrowser('what stays behind leads to a new draft around what is in', async () => {
    const row = plan.truck.rows[2];
    const piece: string = row.pieces.at(-1);
    await one.goto(`${test.address}${floor}/trucks/T1`);
    await one.getByRole('link', { name: /^Loaded differently/ }).click();
    await one.getByRole('heading', { name: 'What is different?' }).waitFor();
    await picture(one, 'truck-differently');
    await one.getByRole('button', { name: `${piece} stays behind` }).click();
    await one.getByLabel('Why').fill('a castor is broken');
    await one.getByRole('button', { name: `Plan without ${piece}` }).click();
    await one.getByText('A draft was made around what is in').waitFor({ timeout: 60_000 });
    await picture(one, 'truck-draft');
    const { draft } = (
      await system.graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { id truck(truck: "T1") truckHead ticks } } }')
    ).data.showPage;
    expect(draft.id).not.toBe(plan.id);
    expect(draft.truckHead.leftOver).toMatchObject([
      { id: piece, fact: { code: 'stays-behind', reason: 'a castor is broken', by: 'Wren Castellan' } },
    ]);
    const placeOf = (truck: any, id: string) => {
      const { xMm, yMm, zMm } = truck.placements.find((each: any) => each.id === id);
      return { xMm, yMm, zMm };
    };
    for (const id of plan.truck.rows.slice(0, 2).flatMap((each: any) => each.pieces))
      expect(placeOf(draft.truck, id)).toEqual(placeOf(plan.truck, id));
    expect(draft.ticks).toEqual(expect.arrayContaining(['row:T1:1', 'row:T1:2']));
  });
});
