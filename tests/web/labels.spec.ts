import { PNG } from 'pngjs';
import type { Browser, Page } from 'playwright-core';
import { labelStocks } from '#drawings';
import { browserPath, itInBrowser, openBrowser, picture, signInOn } from '../support/browser.js';
import { blurred, readCodes } from '../support/read-codes.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

/** Dots per inch of the picture that is read back; a page has 96 of its units an inch. */
const dpi = 200;

describe('labels, printed and read back', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (!browserPath) return;
    browser = await openBrowser();
    page = await (await browser.newContext({ viewport: { width: 1440, height: 1000 }, deviceScaleFactor: dpi / 96 })).newPage();
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  /** Every page of the labels in sight, as it would be printed. */
  const pictures = async (): Promise<Buffer[]> => {
    const sheets = page.locator('svg.labels');
    await sheets.first().waitFor();
    const rest = page.getByRole('button', { name: /^Show all/ });
    if (await rest.isVisible()) await rest.click();
    const made: Buffer[] = [];
    for (let index = 0; index < (await sheets.count()); index++) made.push(await sheets.nth(index).screenshot());
    return made;
  };
  const show = async (path: string, stock: string) => {
    await page.goto(`${test.address}/labels?${path}`);
    await page.getByLabel('Paper').selectOption(stock);
    await page
      .getByRole('status')
      .getByText(/labels on/)
      .waitFor();
  };

  itInBrowser.each(labelStocks.map((each) => each.id))(
    'every label of the carts is read on %s, square and bars, two faces each',
    async (stock) => {
      await show('kind=cart', stock);
      const carts: { id: string }[] = (
        await (await test.as('warehouse')).graphql('{ items(kind: "cart", first: 200) { edges { node { id } } } }')
      ).data.items.edges.map((edge: { node: { id: string } }) => edge.node);
      const read = (await Promise.all((await pictures()).map((each) => readCodes(each, ['QRCode', 'Code128'])))).flat();
      const twice = (texts: string[]) => [...texts, ...texts].sort();
      expect(
        read
          .filter((each) => each.format === 'QRCode')
          .map((each) => each.text)
          .sort(),
      ).toEqual(twice(carts.map(({ id }) => `${test.address}/register/${encodeURIComponent(id)}`)));
      expect(
        read
          .filter((each) => each.format === 'Code128')
          .map((each) => each.text)
          .sort(),
      ).toEqual(twice(carts.map(({ id }) => id)));
    },
  );

  itInBrowser('slots, trunks, trucks, points and the codes of a lanyard are read back, and open their page of the floor', async () => {
    const system = await test.as('system');
    const made = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { planId } } }';
    const planId = (await system.graphql(made)).data.makePackPlan.planId;
    const { carts, truckHead } = (await system.graphql('query($id: ID!) { plan(id: $id) { carts truckHead } }', { id: planId })).data.plan;
    expect(truckHead).toBeDefined();
    const floor = `${test.address}/floor/harbour-lights/quayside`;
    const show = async (of: string) => {
      await page.goto(`${test.address}/labels/harbour-lights/quayside?of=${of}`);
      await page
        .getByRole('status')
        .getByText(/^[1-9]\d* labels on/)
        .waitFor();
      await page.getByLabel('Paper').selectOption('a4-105x74');
      const said = Number(/^\d+/.exec(await page.getByRole('status').innerText())?.[0]);
      const read = (await Promise.all((await pictures()).map((each) => readCodes(each, ['QRCode', 'Code128'])))).flat();
      const texts = (format: string) => read.filter((each) => each.format === format).map((each) => each.text);
      expect([of, texts('QRCode').length, texts('Code128').length]).toEqual([of, said, said]);
      return { square: texts('QRCode'), bars: texts('Code128') };
    };
    const slots = await show('slots');
    const wanted = carts.loads.flatMap((load: any) => load.boxes.map(({ slot }: any) => `${load.cart ?? load.id}/${slot}`));
    expect([...slots.bars].sort()).toEqual(wanted.sort());
    expect(new Set(slots.square)).toEqual(new Set(carts.loads.map(({ id }: any) => `${floor}/carts/${encodeURIComponent(id)}`)));
    for (const [of, room] of [
      ['trunks', 'prep/trunks'],
      ['trucks', 'trucks'],
      ['points', 'fly'],
    ] as const)
      for (const text of (await show(of)).square) expect(text.startsWith(`${floor}/${room}/`)).toBe(true);
    const lanyard = await show('lanyard');
    expect([lanyard.square, lanyard.bars].map((texts) => [...texts].sort())).toEqual(
      Array.from({ length: 2 }, () => ['FLOOR DONE', 'FLOOR FAULT', 'FLOOR UNDO']),
    );
    await picture(page, 'labels-lanyard');
  });

  itInBrowser('blurred by half a module, they are read all the same', async () => {
    await show('kind=hoist', 'a4-105x74');
    const [sheet] = await pictures();
    const all = await readCodes(sheet!, ['QRCode', 'Code128']);
    expect(all.length).toBeGreaterThan(8);
    // The bars are the finer code: modules of half a millimetre at this size.
    const soft = await readCodes(blurred(PNG.sync.read(sheet!), (0.5 * 0.5 * dpi) / 25.4), ['QRCode', 'Code128']);
    expect(soft.map((each) => each.text).sort()).toEqual(all.map((each) => each.text).sort());
  });

  itInBrowser('bars turned by up to 20 degrees are read', async () => {
    await show('kind=hoist', 'roll-100x50');
    const label = page.locator('svg.labels').first();
    const straight = await readCodes(await label.screenshot(), ['Code128']);
    expect(straight).toHaveLength(1);
    for (const degrees of [-20, -10, 10, 20]) {
      await page.evaluate(`document.querySelector('svg.labels').style.setProperty('rotate', '${degrees}deg')`);
      expect({ degrees, read: await readCodes(await label.screenshot(), ['Code128']) }).toEqual({ degrees, read: straight });
    }
  });

  itInBrowser('with a prefix the bars are the key of the item, said beside the field where it is none', async () => {
    await show('kind=grid', 'a4-105x74');
    await page.getByLabel(/GS1 company prefix/).fill('12');
    await page.getByRole('alert').getByText('Wanted: a GS1 company prefix of 4 to 12 digits, or nothing.').waitFor();
    await page.getByLabel(/GS1 company prefix/).fill('0614141');
    const texts = (await readCodes((await pictures())[0]!, ['Code128'])).map((each) => each.text);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text).toMatch(/^(\(8004\)|8004)0614141./);
  });
});
