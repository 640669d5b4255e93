import { hangsWithSheet, renderMarkup } from '#drawings';
import type { PackPlan } from '#pack-plan';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const release = 'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename } }';
const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }';
const barredNow = 'query($id: ID!) { plan(id: $id) { flying { hang name inCharge } barred { itemId sentence hangs } } }';

/** Something barred while it hangs over heads: the person in charge is told, and what hangs with it is on one sheet. */
describe('barred in the air', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  let warehouse: Agent;
  let id: string;
  let plan: PackPlan;
  beforeAll(async () => {
    test = await startTestApp();
    [system, safety, warehouse] = await Promise.all([test.as('system'), test.as('safety'), test.as('warehouse')]);
    ({ id, plan } = (await system.graphql(make)).data.makePackPlan.plan);
    await system.graphql(release, { id });
    await safety.graphql(release, { id });
  });
  afterAll(() => test.close());

  const aloft = async (who: Agent, role: string): Promise<string[]> => {
    const { data } = await who.graphql(`{ attention(role: "${role}", first: 100) { edges { node { code sentence } } } }`);
    return data.attention.edges.flatMap(({ node }: any) => (node.code === 'barred-in-the-air' ? [node.sentence] : []));
  };
  const now = async () => (await system.graphql(barredNow, { id })).data.plan;
  const centre = () => plan.picks.hangs.find((each) => each.hang === 'Centre')!;

  it('says nothing of a hang that stands on the floor', async () => {
    await safety.graphql(`mutation { quarantine(itemId: "${centre().boxes[1]?.serial}", reason: "crack in the frame") { item } }`);
    expect((await now()).flying).toEqual([]);
    expect(await aloft(safety, 'safety')).toEqual([]);
    await safety.graphql(`mutation { releaseFromQuarantine(itemId: "${centre().boxes[1]?.serial}", reason: "a scratch") { item } }`);
  });

  it('tells everybody, with the person in charge by name, from the first step up to the last hold of the way down', async () => {
    const { goingUp, comingDown } = centre().runningOrder;
    const up = goingUp.filter((each) => each.hold);
    for (const { key } of up) expect((await system.graphql(tick, { id, what: key })).errors).toBeUndefined();
    expect((await now()).flying).toEqual([{ hang: 'Centre', name: centre().name, inCharge: 'Sol Achterberg' }]);
    expect(await aloft(system, 'system')).toEqual([]);
    const hoist = centre().picks[0]?.hoistSerial ?? '';
    await safety.graphql(`mutation { quarantine(itemId: "${hoist}", reason: "hook bent") { item } }`);
    for (const [who, role] of [
      [system, 'system'],
      [safety, 'safety'],
      [warehouse, 'warehouse'],
    ] as const) {
      const said = await aloft(who, role);
      expect(said).toHaveLength(1);
      expect(said[0]).toContain(`in charge: Sol Achterberg, hangs with ${hoist}, which must not fly`);
    }
    const down = comingDown.filter((each) => each.hold);
    for (const { key } of down) expect((await system.graphql(tick, { id, what: key })).errors).toBeUndefined();
    expect((await now()).flying).toEqual([]);
    expect(await aloft(system, 'system')).toEqual([]);
  });

  it('brings down what is half way up when something of it fails: the loads that went up, in order, and no other', async () => {
    const hang = plan.picks.hangs.find((each) => each.hang === 'Main left')!;
    const { goingUp, comingDown } = hang.runningOrder;
    const [first, second] = [...new Set(goingUp.flatMap((each) => each.load?.id ?? []))];
    const holds = goingUp.filter((each) => each.hold);
    const half = holds.slice(0, holds.findIndex((each) => each.load?.id === second) + 1);
    for (const { key } of half) expect((await system.graphql(tick, { id, what: key })).errors).toBeUndefined();
    const owed = comingDown.filter((each) => each.hold && (each.load === null || [first, second].includes(each.load.id)));
    const refusal = async (what: string) => (await system.graphql(tick, { id, what })).errors?.[0]?.extensions.faults?.[0]?.wanted;
    expect(await refusal(owed[0]!.key)).toContain('going up finished first');
    await safety.graphql(`mutation { quarantine(itemId: "${hang.picks[0]?.hoistSerial}", reason: "brake slips") { item } }`);
    expect(await refusal(holds[half.length]!.key)).toContain('brake slips');
    const never = comingDown.find((each) => each.hold && each.load && !owed.includes(each))!;
    expect(await refusal(never.key)).toContain('going up finished first');
    expect(await refusal(owed[1]!.key)).toBeDefined();
    expect((await now()).flying.map((each: any) => each.hang)).toContain('Main left');
    for (const { key } of owed) expect((await system.graphql(tick, { id, what: key })).errors).toBeUndefined();
    expect((await now()).flying.map((each: any) => each.hang)).not.toContain('Main left');
  });

  it('prints every serial of the load path, shares that sum to the whole, and the order down, lowest first', async () => {
    const { barred } = await now();
    const hoist = centre().picks[0]?.hoistSerial ?? '';
    const about = barred.filter((each: any) => each.hangs.includes('Centre'));
    const sheet = renderMarkup(
      hangsWithSheet(
        { plan, revision: 'A' },
        centre(),
        about.map((each: any) => ({ item: each.itemId, sentence: each.sentence })),
        true,
      ),
    );
    const serials = [centre().gridSerial, ...centre().picks.map((each) => each.hoistSerial), ...centre().boxes.map((each) => each.serial)];
    for (const serial of serials) expect(sheet).toContain(`>${serial}<`);
    expect(sheet).toContain(`<b>■ <span class="mono">${hoist}</span></b>`);
    const shares = [...sheet.matchAll(/>(\d+) %</g)].map(([, share]) => Number(share));
    expect(shares).toHaveLength(centre().picks.length);
    expect(Math.abs(shares.reduce((sum, each) => sum + each, 0) - 100)).toBeLessThanOrEqual(1);
    const order = [...sheet.matchAll(/Boxes (\d+) to/g)].map(([, first]) => Number(first));
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(order.length).toBeGreaterThan(0);
    expect(sheet).toContain('Nobody stands below');
    expect(sheet).not.toMatch(/\bsafe\b/);
  });
});
