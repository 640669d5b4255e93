import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { writeFilm } from '../support/camera-film.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

/** A browser without a detector of its own: what reads is the decoder that comes along. */
describe('carts confirmed by the camera of a phone', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-film-'));
  let test: TestApp;
  let loads: { id: string; cart: string; boxes: { serial: string }[] }[];
  let presses = 0;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    const system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id carts } } } }',
    );
    loads = made.data.makePackPlan.plan.carts.loads.filter((each: { boxes: object[] }) => each.boxes.length === 4);
  });
  afterAll(async () => {
    await test.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The phone sees these codes one after another, each for a second. */
  const seeing = async (
    codes: readonly string[],
    load: { id: string },
    watch: (page: Awaited<ReturnType<typeof openPage>>) => Promise<void>,
  ) => {
    const film = join(folder, `${presses}-${codes.length}.y4m`);
    writeFilm(film, codes, 12);
    const browser = await openBrowser(film);
    try {
      const page = await openPage(browser, { width: 390, height: 844 });
      page.setDefaultTimeout(60_000);
      await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
      await page.goto(`${test.address}${floor}/carts/${encodeURIComponent(load.id)}`);
      expect(await page.evaluate("'BarcodeDetector' in globalThis")).toBe(false);
      await page.getByRole('button', { name: 'Use the camera' }).click();
      presses++;
      await watch(page);
    } finally {
      await browser.close();
    }
  };
  const label = (id: string) => `${test.address}/register/${encodeURIComponent(id)}`;

  itInBrowser('a right cart is read from its labels and confirmed, in one press and nothing typed', async () => {
    const [load] = loads;
    await seeing([load!.cart, ...load!.boxes.map((each) => each.serial)].map(label), load!, async (page) => {
      await page
        .getByText(/All 4 are there|is confirmed/)
        .first()
        .waitFor();
      const asPlanned = page.getByRole('button', { name: /^As planned/ });
      // The film may have begun in its middle: then the order is asked.
      if (await asPlanned.isVisible()) await asPlanned.click();
      await page.getByRole('status').getByText(`${load!.cart} is confirmed.`).waitFor();
      await page.getByRole('button', { name: 'all sent' }).waitFor();
    });
    const checks = await (await test.as('system')).graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { id } } }');
    const { data } = await (await test.as('system')).graphql('query($id: ID!) { plan(id: $id) { cartChecks { load } } }', {
      id: checks.data.showPage.draft.id,
    });
    expect(data.plan.cartChecks).toEqual([{ load: load!.id }]);
  });

  itInBrowser('a box of another cart is stopped, with where it belongs', async () => {
    const [, load, other] = loads;
    await seeing([label(load!.boxes[0]!.serial), label(other!.boxes[0]!.serial)], load!, async (page) => {
      await page
        .getByRole('alert')
        .getByText(`Stop: ${other!.boxes[0]!.serial} belongs in ${other!.cart}, slot 1 (${other!.id}).`)
        .waitFor();
    });
  });
});
