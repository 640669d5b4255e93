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
    expect(jobs).toEqual(['Prep', 'Box moves', 'Carts to confirm', 'Trucks', 'Flying', 'Return']);
    const light = () => page.evaluate('document.documentElement.dataset.light');
    expect(await light()).toBe('dark');
    await page.getByRole('button', { name: 'For daylight' }).click();
    expect(await light()).toBe('day');
    await page.getByRole('button', { name: 'For the dark' }).click();
    await page.getByRole('link', { name: 'The whole show' }).click();
    await page.getByRole('link', { name: 'To the floor' }).waitFor();
    expect(await light()).toBe('day');
    // The desk is as the device is, until somebody says otherwise; on paper it is always day.
    for (const [colorScheme, shown] of [
      ['dark', 'dark'],
      ['light', 'day'],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      await page.locator(`html[data-light="${shown}"]`).waitFor();
    }
    await page.goto(test.address + floor);
  });

  itInBrowser('everything that is pressed is at least 56 px high, and nothing is wider than a narrow phone', async () => {
    await page.setViewportSize({ width: 320, height: 640 });
    for (const path of [
      floor,
      `${floor}/moves`,
      `${floor}/carts`,
      `${floor}/trucks/T1`,
      `${floor}/prep`,
      `${floor}/moves/cannot`,
      `${floor}/return`,
      `${floor}/fault`,
    ]) {
      await page.goto(test.address + path);
      await page.locator('.fl-foot .big, .fl-body .job, .fl-body .read input').first().waitFor();
      const pressed = page.locator('.fl button, .fl a');
      for (const one of await pressed.all()) expect((await one.boundingBox())?.height ?? 56).toBeGreaterThanOrEqual(56);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
    }
    await page.setViewportSize({ width: 390, height: 844 });
  });

  const planId = async (): Promise<string> => {
    const system = await test.as('system');
    return (await system.graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { id } } }')).data.showPage.draft.id;
  };
  const plan = async () => {
    const system = await test.as('system');
    return (await system.graphql('query($id: ID!) { plan(id: $id) { carts } }', { id: await planId() })).data.plan;
  };

  itInBrowser('confirms a cart by typing in any order, and stops at a wrong box, a lot and a label of somebody else', async () => {
    const { carts } = await plan();
    const load = carts.loads.find((each: any) => each.boxes.length === 4);
    const other = carts.loads.find((each: any) => each.id !== load.id);
    const serials: string[] = load.boxes.map((box: any) => box.serial);
    const field = page.getByLabel('Scan or type a box');
    const read = async (code: string) => {
      await field.fill(code);
      await page.keyboard.press('Enter');
    };
    const says = (role: 'status' | 'alert', text: string | RegExp) => page.getByRole(role).getByText(text).waitFor();
    await page.goto(`${test.address}${floor}/carts`);
    await page.getByLabel('Scan or type a cart, or a box on it').fill(load.cart.toLowerCase().replace('k', 'k-00'));
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: `${load.cart} · ${load.id}` }).waitFor();

    await read(serials[2]!.toLowerCase().replace('-', ''));
    await says('status', `${serials[2]} is right: slot 3.`);
    await read(other.boxes[0].serial);
    await says('alert', `Stop: ${other.boxes[0].serial} belongs in ${other.cart}, slot 1 (${other.id}).`);
    await read('4006381333931');
    await says('alert', 'Stop: nothing on file is called 4006381333931.');
    const { data } = await (await test.as('warehouse')).graphql('{ items(kind: "pin", first: 1) { edges { node { id count } } } }');
    await read(data.items.edges[0].node.id);
    await says('alert', new RegExp(`is a lot of ${data.items.edges[0].node.count} pins .*, not a box`));
    await read(carts.leftOut[0].serial);
    await says('alert', /must not fly/);

    for (const serial of [serials[0]!, serials[3]!, serials[1]!]) await read(serial);
    await page.getByText('All 4 are there.').waitFor();
    await page.getByRole('button', { name: /^As I read it/ }).waitFor();
    await page.getByRole('button', { name: /^As planned/ }).click();
    await says('status', `${load.cart} is confirmed.`);
    await allSent();
    await page.getByRole('link', { name: `Next cart: ${other.cart}` }).waitFor();
    const system = await test.as('system');
    const { data: progress } = await system.graphql('query($id: ID!) { plan(id: $id) { cartChecks { load } } }', { id: await planId() });
    expect(progress.plan.cartChecks).toEqual([{ load: load.id }]);
  });

  itInBrowser('a reader that types is heard without the focus, and its Enter presses nothing', async () => {
    const { carts } = await plan();
    const load = carts.loads.find((each: any) => each.boxes.length === 4 && each !== carts.loads[0]);
    await page.goto(`${test.address}${floor}/carts/${encodeURIComponent(load.id)}`);
    await page.getByText('4 boxes to read').waitFor();
    await page.getByRole('link', { name: 'Back' }).focus();
    for (const { serial } of load.boxes) {
      await page.evaluate(
        `(() => { for (const key of [...${JSON.stringify(serial)}, 'Enter']) document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })); })()`,
      );
      await page
        .getByRole('status')
        .getByText(new RegExp(`${serial} is right|is confirmed`))
        .waitFor();
    }
    await page.getByRole('status').getByText(`${load.cart} is confirmed.`).waitFor();
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

  itInBrowser('ticks a truck row by row, takes the last back, and each row of the list is high enough for a glove', async () => {
    await page.goto(`${test.address}${floor}/trucks`);
    await page.getByRole('link', { name: /^T1/ }).click();
    const first = page.getByRole('button', { name: 'Row 1 is in' });
    await first.waitFor();
    await first.dblclick({ delay: 20 });
    await page.getByRole('button', { name: 'Row 2 is in' }).waitFor();
    await page.getByText('Row 1 is in: noted').waitFor();
    await allSent();
    await page.getByText('All rows').click();
    const rows = page.locator('.pieces label');
    for (const row of await rows.all()) expect((await row.boundingBox())?.height).toBeGreaterThanOrEqual(56);
    await rows.nth(2).click();
    await page.getByText('Row 3 is in: noted').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Row 1 is in: noted').waitFor();
    await allSent();
    const system = await test.as('system');
    const { data } = await system.graphql('query($id: ID!) { plan(id: $id) { ticks } }', { id: await planId() });
    expect(data.plan.ticks.filter((each: string) => each.startsWith('row:'))).toEqual(['row:T1:1']);
  });

  itInBrowser('what is done without a network is kept, said, and arrives in order', async () => {
    await page.goto(`${test.address}${floor}/moves`);
    await page.getByRole('button', { name: 'Done' }).waitFor();
    await allSent();
    const system = await test.as('system');
    const workList = async () => (await system.graphql('query($id: ID!) { workList(planId: $id) }', { id: await planId() })).data.workList;
    // What was read last is shown first.
    const all = (await workList()).moves.length;
    await isLeft(all);
    await page.context().setOffline(true);
    for (let moves = 1; moves <= 3; moves++) {
      await page.waitForTimeout(750);
      await page.getByRole('button', { name: 'Done' }).click();
      await isLeft(all - moves);
      await page.getByRole('button', { name: `not sent yet: ${moves}` }).waitFor();
    }
    await page.waitForTimeout(750);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'not sent yet: 4' }).click();
    expect(await page.locator('.outbox ol li').count()).toBe(4);
    await page.context().setOffline(false);
    await allSent();
    await isLeft(all - 2);
    const after = await workList();
    expect(after.status).toBe('as planned');
    expect(after.moves).toHaveLength(all - 2);
  });

  itInBrowser('reads by the camera with the detector of the browser where it has one, each code once while it stays in view', async () => {
    const { carts } = await plan();
    const load = carts.loads.at(-1);
    const path = `${test.address}${floor}/carts/${encodeURIComponent(load.id)}`;
    const camera = page.getByRole('button', { name: 'Use the camera' });
    await page.context().grantPermissions(['camera'], { origin: test.address });
    await page.goto(path);
    await camera.waitFor();
    await page.evaluate(`{
      const codes = ${JSON.stringify(load.boxes.map((box: any) => box.serial))};
      let looks = 0;
      globalThis.BarcodeDetector = class {
        static getSupportedFormats() { return Promise.resolve(['qr_code', 'code_128', 'data_matrix']); }
        detect() { return Promise.resolve([{ rawValue: codes[Math.min(codes.length - 1, Math.floor(looks++ / 4))] }]); }
      };
    }`);
    await camera.click();
    await page.getByRole('status').getByText(`${load.cart} is confirmed.`).waitFor();
  });

  itInBrowser('takes a box of the same model into the plan, and says what the new draft wants of the cart', async () => {
    const system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "old-mill") { ... on PlanMade { plan { id carts } } } }',
    );
    const { id, carts } = made.data.makePackPlan.plan;
    const list = (await system.graphql('query($id: ID!) { workList(planId: $id) }', { id })).data.workList;
    const flying = new Set(carts.loads.flatMap((each: any) => each.boxes.map((box: any) => box.serial)));
    const load = carts.loads.find((each: any) =>
      list.floor.carts.some((cart: any) => cart.cart === each.cart && each.boxes.every((box: any) => cart.boxes.includes(box.serial))),
    );
    const models = (await system.graphql('{ items(kind: "box", first: 100) { edges { node { id model state } } } }')).data.items.edges;
    const spare = models
      .map((each: any) => each.node)
      .find((each: any) => !flying.has(each.id) && each.state === 'in service' && each.model === load.boxes[0].model);
    const [first, ...rest] = load.boxes.map((box: any) => box.serial);
    await page.goto(`${test.address}/floor/harbour-lights/old-mill/carts/${encodeURIComponent(load.id)}`);
    const field = page.getByLabel('Scan or type a box');
    for (const serial of [...rest, spare.id]) {
      await field.fill(serial);
      await page.keyboard.press('Enter');
      await page.getByText(new RegExp(`^(○|◐) ${serial}`)).waitFor();
    }
    await page.getByRole('button', { name: `Take ${spare.id} into the plan for ${first}` }).click();
    await page.getByText(new RegExp(`The new draft (has ${spare.id} in|does not want ${spare.id})`)).waitFor({ timeout: 120_000 });
    const stands = (
      await system.graphql('query($id: ID!) { item(id: $id) { summary { id } history { edges { node { what sentence } } } } }', {
        id: spare.id,
      })
    ).data;
    expect(stands.item.history.edges[0].node).toMatchObject({ what: 'stacked', sentence: expect.stringContaining(load.cart) });
  });
});
