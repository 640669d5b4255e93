import { readFileSync } from 'node:fs';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

/** The success criteria of WCAG 2.2, levels A and AA, as far as an engine can tell them. */
const criteria = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const pathsIn = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/<Route path="([^"]+)"/g)].map((found) => found[1] ?? '');

/** Every address of the app by its own lists: whoever adds a screen adds it here. */
const floor = '/floor/:tourId/:showId';
const screens = [
  ...pathsIn('apps/web/src/app/app.tsx').map((path) => path.replace(/\/\*$/, '')),
  ...pathsIn('apps/web/src/features/floor/floor.tsx').map((path) => `${floor}/${path}`),
].filter((path) => !path.endsWith('*'));
const looks = [
  { width: 390, light: 'day' },
  { width: 1440, light: 'dark' },
] as const;

/** Run in the page: waits until it says something and reads nothing more, opens what can be opened, then asks the engine. */
const whenRead = (light: string): string => `(async () => {
  const stands = () => /^(?![^]*Reading \\.\\.\\.)[^]*\\S/.test(document.body.innerText);
  await new Promise((done, late) => {
    const look = () => { if (stands()) { watch.disconnect(); done(); } };
    const watch = new MutationObserver(look);
    watch.observe(document.body, { childList: true, subtree: true, characterData: true });
    setTimeout(() => late(new Error('it is read for ten seconds')), 10000);
    look();
  });
  document.documentElement.dataset.light = '${light}';
  for (const part of document.querySelectorAll('details')) part.open = true;
  if (!('axe' in window)) (0, () => {${axe.source}})();
  return axe.run(${JSON.stringify({ runOnly: { type: 'tag', values: criteria }, resultTypes: ['violations'] })});
})()`;

describe('every screen is open to everybody', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  /** One of each that addresses name. */
  let ids: Record<string, string>;
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ web: true });
    ids = await fill(test);
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  const addressOf = (screen: string): string =>
    screen.replaceAll(/:(\w+)/g, (_, name: string) => {
      const of = screen.startsWith('/print/kit-of-others') ? 'lentId' : name;
      if (ids[of] === undefined) throw new Error(`${screen}: this spec knows no ${of} to open it with`);
      return encodeURIComponent(ids[of]);
    });

  /** What the engine finds on the page once it is read, with everything that can be opened open: rule and where, nothing else. */
  const faults = async (page: Page, light: string): Promise<string[]> => {
    const { violations } = await page.evaluate<AxeResults>(whenRead(light));
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${String(target)}: ${(failureSummary ?? '').split('\n')[1]?.trim() ?? ''}`),
    );
  };

  const lookAtAll = async ({ width, light }: (typeof looks)[number]): Promise<Record<string, string[]>> => {
    // So high that no bar at the foot of the window lies over anything.
    const page = await openPage(browser!, { width, height: 4000 });
    page.setDefaultTimeout(15_000);
    const found: Record<string, string[]> = {};
    const look = async (name: string) => {
      const seen = await faults(page, light).catch((fault: Error) => [fault.message.split('\n')[0] ?? '']);
      const text = await page.innerText('body');
      if (/There is no such page|did not work/.test(text)) seen.push('nothing was opened');
      if (seen.length > 0) found[`${name}, ${width} px, ${light}`] = seen;
      await picture(page, `screen${name.replaceAll(/[^a-zA-Z]+/g, '-')}-${width}`);
    };
    await page.goto(test.address);
    await page.getByRole('button', { name: 'Sign in' }).waitFor();
    await look('the door');
    await signInOn(page, test.address, 'safety@cartwright.example', passwordOf('safety'));
    for (const screen of screens) {
      await page.goto(test.address + addressOf(screen), { waitUntil: 'domcontentloaded' });
      await look(screen);
    }
    return found;
  };

  itInBrowser('the door, and after it every address of the app, light on a phone and dark at a desk', async () => {
    expect(screens.length).toBeGreaterThan(40);
    expect(await Promise.all(looks.map(lookAtAll))).toEqual(looks.map(() => ({})));
  });
});

/** A house with something behind every address. */
async function fill(test: TestApp): Promise<Record<string, string>> {
  const [safety, system] = [await test.as('safety'), await test.as('system')];
  const asked = async (agent: typeof safety, text: string, variables?: object): Promise<any> => {
    const { data, errors } = await agent.graphql(text, variables);
    if (errors || !data) throw new Error(JSON.stringify(errors));
    return data;
  };
  const { tour: before } = await asked(system, '{ tour(id: "harbour-lights") { version tour } }');
  const design = { id: 'arena', name: 'Arena', hangs: before.tour.shows[0].hangs };
  await asked(system, 'mutation($tour: TourJson!, $v: Int) { saveTour(tour: $tour, expectedVersion: $v) { version } }', {
    tour: { ...before.tour, designs: [design] },
    v: before.version,
  });
  const { plan, id: planId } = (
    await asked(system, 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }')
  ).makePackPlan.plan;
  await asked(system, 'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename } }', { id: planId });
  await asked(safety, 'mutation($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }', {
    days: [{ onDay: '2027-03-20', depot: 'Ferry Lane' }],
  });
  const { visits } = await asked(safety, '{ visits(from: "2027-01-01", to: "2027-12-31") { id } }');
  const hoist = plan.picks.hangs[0].picks[0].hoistSerial;
  const { item } = await asked(safety, 'query($id: ID!) { item(id: $id) { records { edges { node { id } } } } }', { id: hoist });
  const lent = { serial: 'L-1', model: 'Chain hoist 2.5 t', owner: 'Quay Hire (invented)', on: '2027-02-26' };
  await asked(safety, 'mutation($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId } }', {
    kit: { ...lent, kind: 'hoist', by: 'lender', depot: 'Ferry Lane', ratedLoad: '2500 kg', condition: 'clean' },
  });
  const load = plan.carts.loads.find((each: any) => each.cart !== null);
  return {
    ...{ tourId: 'harbour-lights', showId: 'quayside', hangId: plan.picks.hangs[0].hang, hole: 'C', designId: 'arena', lentId: 'L-1' },
    ...{ truckId: plan.truck.trucks[0].id, visitId: visits[0].id, itemId: hoist, recordId: item.records.edges[0].node.id },
    ...{ loadId: load.id, cartId: load.cart, trunkId: plan.hardware.lines.flatMap((each: any) => each.trunks)[0], what: 'all' },
  };
}
