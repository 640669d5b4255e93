import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const truckPage = '/tours/harbour-lights/shows/quayside/trucks/T1';
const page390 = { width: 390, height: 800 };

describe('the trucks in a browser', () => {
  let test: TestApp;
  let system: Agent;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }',
    );
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a test") { __typename } }', {
      id: made.data.makePackPlan.plan.id,
    });
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, page390);
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const plans = async () =>
    (await system.graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { released { ticks plan } draft { ticks plan } } }'))
      .data.showPage;
  const places = (plan: any, row: number) => {
    const truck = plan.truck.trucks.find((each: any) => each.id === 'T1');
    const { pieces } = truck.rows.find((each: any) => each.number === row);
    return truck.placements
      .filter((each: any) => pieces.includes(each.id))
      .map(({ id, xMm, yMm, zMm, turned }: any) => ({ id, xMm, yMm, zMm, turned }));
  };

  itInBrowser('ticks a row on the phone: the target is a thumb wide, nothing runs off the screen, the tick is on file', async () => {
    await page.goto(test.address + truckPage);
    const tick = page.getByLabel('Row 2 loaded');
    await tick.waitFor();
    const target = (await tick.locator('..').boundingBox())!;
    expect(Math.min(target.width, target.height)).toBeGreaterThanOrEqual(56);
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(page390.width);
    await tick.locator('..').click({ position: { x: 5, y: 5 } });
    await page.getByText(/^.* 1 of \d+ rows loaded/).waitFor();
    await page.getByText('not sent yet').waitFor({ state: 'detached' });
    expect((await plans()).released.ticks).toEqual(['row:T1:2']);
    await tick.click();
    await page.getByText(/^.* 0 of \d+ rows loaded/).waitFor();
  });

  itInBrowser(
    'keeps a row where it stands, with a group wanted at the door: that row stays exactly, the rest is planned around it',
    async () => {
      await page.goto(test.address + truckPage);
      const first = (await plans()).released.plan;
      const before = places(first, 1);
      const group = first.truck.trucks.find((each: any) => each.id === 'T1').rows[0].label.includes('Other cases')
        ? 'Cable'
        : 'Other cases';
      await page.getByRole('button', { name: 'Keep row 1 here' }).click();
      await page.getByRole('button', { name: 'Let row 1 go' }).waitFor();
      await page.getByText('You see the draft.').waitFor();
      await page.getByText('A group at the door or at the nose').click();
      await page.getByLabel('Group').selectOption(group);
      await page.getByRole('button', { name: 'At the door' }).click();
      await page.getByText(`${group}: wanted at the door.`).waitFor();
      const { draft, released } = await plans();
      expect(
        places(
          draft.plan,
          draft.plan.truck.trucks.find((each: any) => each.id === 'T1').rows.find((row: any) => row.pieces.includes(before[0].id)).number,
        ),
      ).toEqual(expect.arrayContaining(before));
      expect(draft.plan.truck.trucks[0].placements).not.toEqual(released.plan.truck.trucks[0].placements);
      expect(places(released.plan, 1)).toEqual(before);
      expect(draft.plan.truck.leftOver).toEqual([]);
    },
  );

  itInBrowser('shows what two exchanged rows do before anybody accepts it', async () => {
    await page.goto(test.address + truckPage);
    await page.getByText('Two rows change places').click();
    await page.getByLabel('One row').selectOption('1');
    const last = String((await plans()).released.plan.truck.trucks.find((each: any) => each.id === 'T1').rows.length);
    await page.getByLabel('the other row').selectOption(last);
    await page.getByRole('rowheader', { name: 'drive axle' }).first().waitFor();
    await page
      .getByText(/stands in its way to the door but comes off later/)
      .first()
      .waitFor();
    // Either a reason is wanted first, or they cannot change places at all.
    const exchange = page.getByRole('button', { name: `Exchange rows 1 and ${last}` });
    if ((await exchange.count()) === 0) expect(await page.getByText('These rows cannot change places.').count()).toBe(1);
    else expect(await exchange.isDisabled()).toBe(true);
  });

  itInBrowser('turns the load by keys and buttons', async () => {
    await page.goto(test.address + truckPage);
    await page.getByRole('button', { name: 'Turn the load in three dimensions' }).click();
    const space = page.getByRole('application');
    await space.locator('canvas').waitFor();
    await page.waitForTimeout(500);
    const seen = await space.screenshot();
    await space.focus();
    await page.keyboard.press('ArrowLeft');
    await page.waitForTimeout(300);
    expect((await space.screenshot()).equals(seen)).toBe(false);
    await page.keyboard.press('ArrowRight');
    await page.waitForTimeout(300);
    expect((await space.screenshot()).equals(seen)).toBe(true);
    await page.getByRole('button', { name: 'From above' }).click();
    await page.waitForTimeout(300);
    expect((await space.screenshot()).equals(seen)).toBe(false);
  });

  itInBrowser('says so where a browser cannot draw in three dimensions, and shows the drawings all the same', async () => {
    const plain = await page.context().newPage();
    await plain.addInitScript('HTMLCanvasElement.prototype.getContext = () => null;');
    await plain.goto(test.address + truckPage);
    await plain.getByRole('button', { name: 'Turn the load in three dimensions' }).click();
    await plain.getByText('This browser cannot draw in three dimensions.').waitFor();
    expect(await plain.getByRole('img', { name: /Truck T1 from/ }).count()).toBe(2);
    await plain.close();
  });

  itInBrowser('prints a sheet for each truck with rows, bars, axles after each stop, the load-out and the caution', async () => {
    await page.goto(test.address + truckPage);
    const [sheet] = await Promise.all([
      page.context().waitForEvent('page'),
      page.getByRole('link', { name: 'Print the truck sheets' }).click(),
    ]);
    await sheet.getByRole('heading', { name: 'Truck T2' }).waitFor();
    for (let tries = 0; tries < 50 && (await sheet.evaluate<number>('window.printsAsked')) === 0; tries++) await sheet.waitForTimeout(100);
    expect(await sheet.evaluate<number>('window.printsAsked')).toBe(1);
    const text = await sheet.locator('.sheetpage').first().innerText();
    for (const words of [
      'Load from the nose',
      'Bar at',
      'Free across',
      'Axles, full and as it is unloaded',
      'what goes in first',
      'A weighbridge decides',
    ])
      expect(text).toContain(words);
    expect(text).toMatch(/Main left, 2nd cart.* off/);
    for (const format of ['A4', 'Letter'] as const) expect((await sheet.pdf({ format })).subarray(0, 5).toString()).toBe('%PDF-');
    await sheet.close();
  });
});
