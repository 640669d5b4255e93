import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

describe('prep on a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  let system: Agent;
  let plan: { id: string; carts: any; hardware: any };
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made =
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id carts hardware } } } }';
    plan = (await system.graphql(made)).data.makePackPlan.plan;
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
  const recordOf = async (item: string) =>
    (
      await system.graphql('query($id: ID!) { prepSheet(planId: $id) { records { item kind agrees data } } }', { id: plan.id })
    ).data.prepSheet.records.find((each: any) => each.item === item);
  const first = () => plan.carts.loads.find((each: any) => each.boxes.length === 4 && each.cart !== null);

  itInBrowser('a box passes its bench test and its cart shows it; another is out of service with what', async () => {
    const load = first();
    const [good, bad] = load.boxes.map((box: any) => box.serial);
    await page.goto(test.address + floor);
    await page.getByRole('link', { name: /^Prep/ }).click();
    await page.getByRole('link', { name: /^Bench test/ }).waitFor();
    await picture(page, 'prep');
    await page.getByRole('link', { name: /^Bench test/ }).click();
    await read(good);
    await page.getByRole('button', { name: 'All good: passed' }).click();
    await page.getByRole('status').getByText(`${good} passed.`).waitFor();
    await page.waitForTimeout(750);
    await read(bad);
    await page.getByRole('button', { name: /^Links/ }).click();
    await page.getByLabel('What it is, in a few words').fill('rear link will not seat');
    await picture(page, 'prep-bench');
    await page.getByRole('button', { name: 'Out of service now' }).click();
    await page.getByRole('alert').getByText(`${bad} is out of service`).waitFor();
    await allSent();
    const { data } = await system.graphql('query($id: ID!) { item(id: $id) { summary { state } } }', { id: bad });
    expect(data.item.summary.state).toBe('quarantined');
    await page.goto(`${test.address}${floor}/carts/${encodeURIComponent(load.id)}`);
    await page.getByRole('listitem').filter({ hasText: good }).getByText('○ tested').waitFor();
    await page.getByRole('listitem').filter({ hasText: bad }).getByText('■ failed its test').waitFor();
    await picture(page, 'prep-cart');
  });

  itInBrowser('splays are read back, and one that reads otherwise says so', async () => {
    const load = first();
    const set = load.boxes.filter((box: any) => box.splaySet === 'in the cart');
    await page.goto(`${test.address}${floor}/prep/splays/${encodeURIComponent(load.id)}`);
    const field = (box: any) => page.getByLabel(`${box.serial} reads, degrees`);
    for (const box of set) await field(box).fill(String(box.splayDeg));
    await field(set[0]).fill(String(set[0].splayDeg + 1));
    await page.getByText('not as planned').first().waitFor();
    await picture(page, 'prep-splays');
    await page.getByRole('button', { name: 'Note it: not as planned' }).click();
    await allSent();
    expect(await recordOf(load.cart)).toMatchObject({ kind: 'splays', agrees: false });
    await field(set[0]).fill(`${set[0].splayDeg}`.replace('.', ','));
    await page.waitForTimeout(750);
    await page.getByRole('button', { name: 'They read as planned' }).click();
    await page.getByRole('link', { name: /^Next cart/ }).waitFor();
    await allSent();
    expect(await recordOf(load.cart)).toMatchObject({
      kind: 'splays',
      agrees: true,
      data: { splays: set.map((box: any) => box.splayDeg) },
    });
  });

  itInBrowser('a trunk is counted batch by batch; one piece short is said', async () => {
    const held = plan.hardware.lines.flatMap((line: any) =>
      line.takenFrom.filter((each: any) => each.trunk !== null && each.count > 0).map((each: any) => ({ ...each, item: line.item })),
    );
    const { trunk } = held[0];
    const lines = held.filter((each: any) => each.trunk === trunk);
    await page.goto(`${test.address}${floor}/prep/trunks`);
    await page.getByRole('link', { name: new RegExp(`^${trunk}`) }).click();
    const field = (line: any) => page.getByLabel(`${line.item}, ${line.lot}: pieces`);
    for (const line of lines) await field(line).fill(String(line.count));
    await field(lines[0]).fill(String(lines[0].count - 1));
    await page.getByText(`1 short of ${lines[0].count}`).waitFor();
    await picture(page, 'prep-trunk');
    await page.getByRole('button', { name: 'Note it: 1 not right' }).click();
    await page.getByText(`${trunk} is not right`).waitFor();
    await page.waitForTimeout(750);
    await field(lines[0]).fill(String(lines[0].count));
    await page.getByRole('button', { name: 'Complete' }).click();
    await page.getByText(`${trunk} is complete.`).waitFor();
    await allSent();
    expect(await recordOf(trunk)).toMatchObject({ kind: 'trunk', agrees: true });
  });

  itInBrowser('lists what is picked, place by place, and what leaves the building', async () => {
    await page.goto(`${test.address}${floor}/prep/pick`);
    await page.getByText(/^Ferry Lane: \d+$/).waitFor();
    await picture(page, 'prep-pick');
    await page.goto(`${test.address}${floor}/prep/leaves`);
    const carts = plan.carts.loads.filter((each: any) => each.cart !== null).length;
    await page.getByRole('listitem').filter({ hasText: 'Cart of four' }).getByText(String(carts), { exact: true }).waitFor();
    await picture(page, 'prep-leaves');
  });
});
