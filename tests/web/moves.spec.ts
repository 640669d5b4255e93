import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

describe('box moves that go otherwise, on a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  let system: Agent;
  let planId: string;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { planId } } }';
    planId = (await system.graphql(made)).data.makePackPlan.planId;
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

  const workList = async () => (await system.graphql('query($id: ID!) { workList(planId: $id) }', { id: planId })).data.workList;
  const allSent = () => page.getByRole('button', { name: 'all sent' }).waitFor();

  itInBrowser('codes of a lanyard say done, undo and fault; another code notes nothing', async () => {
    const before = await workList();
    await page.goto(`${test.address}${floor}/moves`);
    await page.getByRole('heading', { level: 1, name: `Box moves: ${before.moves.length} left` }).waitFor();
    const reads = async (code: string) => {
      await page.evaluate('document.activeElement.blur()');
      // All at once, as a reader types: a slow machine makes no fingers of it.
      const keys = JSON.stringify([...code, 'Enter']);
      await page.evaluate(
        `for (const key of ${keys}) document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))`,
      );
    };
    await reads('FLOOR DONE');
    await page.getByRole('heading', { level: 1, name: `Box moves: ${before.moves.length - 1} left` }).waitFor();
    // What bounces within 700 ms is not another move.
    await page.waitForTimeout(800);
    await reads('K1-01');
    await page.getByText('K1-01 is none of the codes done, undo and fault: nothing was noted.').waitFor();
    await picture(page, 'moves-code');
    await reads('floor undo');
    await page.getByRole('heading', { level: 1, name: `Box moves: ${before.moves.length} left` }).waitFor();
    await allSent();
    expect((await workList()).moves).toEqual(before.moves);
    await reads('FLOOR FAULT');
    await page.waitForURL(/\/fault$/);
  });

  itInBrowser('a cart that stands otherwise is read, and the rest is the shortest list from there', async () => {
    const before = await workList();
    const [next] = before.moves;
    const cart: string = next.to === 'floor' ? next.from : next.to;
    const stands: string[] = before.floor.carts.find((each: any) => each.cart === cart).boxes;
    const turned = [...stands].reverse();
    await page.goto(`${test.address}${floor}/moves`);
    await page.getByRole('button', { name: 'Done' }).waitFor();
    await picture(page, 'moves');
    await page.getByRole('link', { name: 'Did it differently' }).click();
    await page.getByRole('heading', { level: 1, name: `${cart} as it stands` }).waitFor();
    for (const serial of turned) {
      await page.getByRole('textbox').first().fill(serial);
      await page.keyboard.press('Enter');
      await page.getByRole('listitem').getByText(serial, { exact: true }).waitFor();
    }
    await picture(page, 'moves-differently');
    await page.getByRole('button', { name: /^That is all|^It is empty/ }).click();
    await page.getByText('This is the shortest list from the floor as it now stands.').waitFor();
    await allSent();
    const after = await workList();
    expect(after.floor.carts.find((each: any) => each.cart === cart).boxes).toEqual(turned);
    expect(after.status).toBe('anew');
    await page.getByRole('heading', { level: 1, name: `Box moves: ${after.moves.length} left` }).waitFor();
  });

  itInBrowser('a move that cannot be done asks why: a faulty box is out of service at once, and the list says so', async () => {
    const [{ box }] = (await workList()).moves;
    await page.getByRole('link', { name: 'Cannot do it' }).click();
    await page.getByRole('heading', { name: 'Why not?' }).waitFor();
    await picture(page, 'moves-cannot');
    await page.getByRole('link', { name: `${box} is faulty` }).click();
    await page.getByRole('button', { name: /^Rigging/ }).click();
    await page.getByLabel('What is wrong with it?').fill('link bent');
    await page.getByRole('button', { name: 'Out of service now' }).click();
    await page.getByText(`From now on ${box} may not fly.`).waitFor();
    await allSent();
    await page.goto(`${test.address}${floor}/moves`);
    const flies = (await system.graphql('query($id: ID!) { plan(id: $id) { carts } }', { id: planId })).data.plan.carts.loads.some(
      (load: any) => load.boxes.some((each: any) => each.serial === box),
    );
    // A box that the plan flies stops the list; one that only stands in the way is moved all the same.
    if (flies) await page.getByText(`${box} of`).first().waitFor();
    expect((await workList()).status).toBe(flies ? 'cannot' : 'anew');
  });

  itInBrowser('of double taps 50 to 600 ms apart none marks a second move', async () => {
    await page.goto(`${test.address}/floor/harbour-lights/fenland`);
    const made = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "old-mill") { ... on PlanMade { planId } } }';
    planId = (await system.graphql(made)).data.makePackPlan.planId;
    await page.goto(`${test.address}/floor/harbour-lights/old-mill/moves`);
    const done = page.getByRole('button', { name: 'Done' });
    await done.waitFor();
    const left = async () => Number(/(\d+) left/.exec(await page.getByRole('heading', { level: 1 }).innerText())?.[1]);
    // Pressed in the page itself, so that the gap is what the page saw: on a busy machine it is longer than was asked for.
    const pressTwice = (gapMs: number) =>
      page.evaluate<number>(`(async () => {
        const press = () => [...document.querySelectorAll('button')].find((each) => each.textContent === 'Done')?.click();
        const from = performance.now();
        press();
        await new Promise((resolve) => setTimeout(resolve, ${gapMs}));
        press();
        return performance.now() - from;
      })()`);
    const tried: number[] = [];
    for (const gapMs of [50, 300, 600]) {
      await page.waitForTimeout(750);
      const before = await left();
      if (before < 2) break;
      const seenMs = await pressTwice(gapMs);
      if (seenMs > 690) break;
      tried.push(gapMs);
      await page.getByRole('heading', { level: 1, name: `Box moves: ${before - 1} left` }).waitFor();
      await allSent();
      expect(await left()).toBe(before - 1);
    }
    expect(tried).toContain(50);
  });
});
