import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp, testDay } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';
/** The smallest PNG that there is: one pixel. */
const pixel = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');

describe('a return on a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  let system: Agent;
  let plan: { id: string; carts: any; hardware: any };
  let now = new Date(`${testDay}T09:00:00Z`);
  beforeAll(async () => {
    test = await startTestApp({ web: true, clock: { now: () => now } });
    system = await test.as('system');
    const made =
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id carts hardware show { to } } } } }';
    const answer = (await system.graphql(made)).data.makePackPlan;
    plan = answer.plan;
    // After the last note of the last day.
    now = new Date(`${answer.plan.show.to}T23:30:00Z`);
    system = await test.as('system');
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

  const allSent = () => page.getByRole('button', { name: 'all sent' }).waitFor();
  const read = async (code: string) => {
    await page.getByRole('textbox').first().fill(code);
    await page.keyboard.press('Enter');
  };
  const item = async (id: string) =>
    (await system.graphql('query($id: ID!) { item(id: $id) { item summary { state count } } }', { id })).data.item;
  const loads = () => plan.carts.loads.filter((each: any) => each.cart !== null && each.boxes.every((box: any) => box.serial !== null));

  itInBrowser('scans a cart in as it stands, and the floor follows', async () => {
    await page.goto(test.address + floor);
    await page.getByRole('link', { name: /^Return/ }).click();
    await page.getByRole('heading', { level: 1, name: /^Return: 0 of \d+ back/ }).waitFor();
    await picture(page, 'return');
    const [load] = loads();
    await read(load.cart);
    await page.getByRole('heading', { level: 1, name: `${load.cart} comes back` }).waitFor();
    const turned = load.boxes.map((box: any) => box.serial).reverse();
    for (const serial of turned) {
      await read(serial);
      await page.getByText(serial, { exact: true }).waitFor();
    }
    await read(plan.hardware.lines.flatMap((each: any) => each.takenFrom)[0].lot);
    await page.getByRole('alert').getByText('is no box').waitFor();
    await picture(page, 'return-cart');
    await page.getByRole('button', { name: `That is all: ${turned.length} boxes` }).click();
    await page.getByText(`${load.cart} is back`).waitFor();
    await allSent();
    expect((await item(load.cart)).item.stack).toEqual(turned);
    await page.getByRole('link', { name: /^Next cart/ }).waitFor();
  });

  itInBrowser('what rides on no cart is back as soon as it is read; what is not back is told with its last place and person', async () => {
    await page.goto(`${test.address}${floor}/return`);
    await page.getByText('What rides on no cart').waitFor();
    const hoist = (await system.graphql('query($id: ID!) { returnSheet(planId: $id) { id kind } }', { id: plan.id })).data.returnSheet.find(
      (each: any) => each.kind === 'hoist',
    ).id;
    await read(hoist.toLowerCase());
    await page.getByRole('status').getByText(`${hoist} is back.`).waitFor();
    await allSent();
    const [, second] = loads();
    await (await test.as('warehouse')).graphql(
      'mutation($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { item } }',
      {
        cart: second.cart,
        serials: second.boxes.map((box: any) => box.serial),
      },
    );
    await page.getByRole('link', { name: /^Not back yet/ }).click();
    const line = page.locator('li').filter({ has: page.getByText(second.boxes[0].serial, { exact: true }) });
    await line.getByText(`Last: with ${second.cart}, Wren Castellan`).waitFor();
    expect(await page.locator('li').filter({ hasText: hoist }).count()).toBe(0);
    await picture(page, 'return-missing');
  });

  itInBrowser('a fault says its kind first: rigging is out of service at once, with a picture; looks flies meanwhile', async () => {
    const [load] = loads();
    const [first, second] = load.boxes.map((box: any) => box.serial);
    await page.goto(`${test.address}${floor}/fault/${first}`);
    await page.getByRole('button', { name: /^Rigging/ }).waitFor();
    await picture(page, 'fault-kinds');
    await page.getByRole('button', { name: /^Rigging/ }).click();
    expect(await page.getByRole('button', { name: 'Out of service now' }).isDisabled()).toBe(true);
    await page.getByLabel('What is wrong with it?').fill('rear link bent');
    await page.getByRole('button', { name: 'Out of service now' }).click();
    await page.getByRole('alert').getByText(`From now on ${first} may not fly.`).waitFor();
    await allSent();
    await page.setInputFiles('input[type="file"]', { name: 'link.png', mimeType: 'image/png', buffer: pixel });
    await page.getByText(`The picture is kept with ${first}.`).waitFor();
    await picture(page, 'fault-rigging');
    expect((await item(first)).summary.state).toBe('quarantined');
    const [{ what }] = await test.dataSource.query('SELECT what FROM incident WHERE item_id = $1 ORDER BY id DESC LIMIT 1', [first]);
    expect(what).toBe('rear link bent');

    await page.goto(`${test.address}${floor}/fault`);
    await read(second);
    await page.getByRole('button', { name: /^Looks/ }).click();
    await page.getByLabel('What is wrong with it?').fill('grille dented');
    await page.getByRole('button', { name: 'Only note it' }).click();
    await page.getByText(`${second} flies meanwhile`).waitFor();
    await allSent();
    expect((await item(second)).summary.state).toBe('in service');
    const open = (await system.graphql('query($id: ID!) { openFaults(planId: $id) { item kind what } }', { id: plan.id })).data.openFaults;
    expect(open).toEqual([{ item: second, kind: 'looks', what: 'grille dented' }]);
  });

  itInBrowser('a count corrects the batch as well', async () => {
    const line = plan.hardware.lines.find((each: any) => each.takenFrom.length > 0 && each.key.includes('pin'));
    const [{ lot }] = [...line.takenFrom].sort((a: any, b: any) => b.count - a.count);
    const before = (await item(lot)).summary.count;
    await page.goto(`${test.address}${floor}/return/count`);
    const sent = Number(await page.getByLabel(`, ${line.key}: Sent`).getAttribute('placeholder'));
    await page.getByLabel(`, ${line.key}: Back`).fill(String(sent - 3));
    await page.getByLabel(`, ${line.key}: Of those unfit`).fill('1');
    await page.getByText('4 gone or unfit.').waitFor();
    await picture(page, 'return-count');
    await page.getByRole('button', { name: /^Record 1 of/ }).click();
    await page.getByText('Counted. Plans that use').waitFor();
    await allSent();
    expect((await item(lot)).summary.count).toBe(before - 4);
    const parts = await test.dataSource.query('SELECT state, count FROM item WHERE id LIKE $1 ORDER BY state', [`${lot}/%`]);
    expect(parts).toEqual([
      { state: 'quarantined', count: 1 },
      { state: 'retired', count: 3 },
    ]);
  });

  itInBrowser('a show that was played is not made stale by what came back', async () => {
    const changed = async (show: string) =>
      (await system.graphql(`{ showPage(tourId: "harbour-lights", showId: "${show}") { draft { changed { sentence } } } }`)).data.showPage
        .draft.changed;
    expect(await changed('quayside')).toEqual([]);
    now = new Date(`${testDay}T09:00:00Z`);
    system = await test.as('system');
    // On a day before, the same would be said.
    expect(await changed('quayside')).not.toEqual([]);
  });
});
