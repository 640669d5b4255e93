import { stoppedJoints } from '#pack-plan';
import { type Words, english } from '#words';
import { nonsenseWords, withoutWords } from '../support/nonsense-words.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const refusal = '... on PlanningRefusal { code sentence reasons }';
const texts = {
  make: 'mutation($show: ID!) { makePackPlan(tourId: "harbour-lights", showId: $show) { ... on PlanMade { plan { id plan stops looks findings { code weight subjects { role kind id place } numbers { name values } sentence } } } } }',
  release: `mutation($id: ID!, $despite: String) { releasePackPlan(planId: $id, despite: $despite) { __typename ... on PlanView { revision state }
    ... on BookingRefusal { code sentence clashes { item from to tour } } ... on StaleRefusal { code sentence changed { code subjects { role kind id place } numbers { name values } sentence } } ... on StopRefusal { code sentence needsOfficer stops { code weight section date subjects { role kind id place } numbers { name values } sentence } } } }`,
  tick: 'mutation($id: ID!, $what: String!, $done: Boolean = true) { tick(planId: $id, what: $what, done: $done) { ticks } }',
  confirm: `mutation($id: ID!, $load: String!, $serials: [String!]!) { confirmCart(planId: $id, load: $load, serials: $serials) {
    agrees slots { slot expected found agrees code fact sentence } barred { itemId code from loads hangs sentence } } }`,
  workList: 'query($id: ID!) { workList(planId: $id) }',
  swapBox: `mutation($id: ID!, $serial: String!) { swapBox(planId: $id, serial: $serial, reason: "horn cracked") { __typename
    ... on SwapResult { draftId marked difference { sentences boxes { hang position from to } hangsChanged } } ${refusal} } }`,
  swapRows: `mutation($id: ID!, $first: Int!, $second: Int!, $reason: String) { swapRows(planId: $id, truck: "T1", first: $first, second: $second, reason: $reason) {
    __typename ... on LoadingDone { draftId changes } ${refusal} } }`,
  rowSwap: `query($id: ID!, $first: Int!, $second: Int!) { rowSwap(planId: $id, truck: "T1", first: $first, second: $second) {
    axles { axle beforeKg afterKg limitKg } sideBeforeMm sideAfterMm breaches { piece mayBeWaived sentence } } }`,
  quarantine: 'mutation($id: ID!) { quarantine(itemId: $id, reason: "rattles") { summary { state } } }',
  reading: `mutation($id: ID!, $hang: String!, $hole: String!, $kg: Float!) { addLoadReading(planId: $id, hang: $hang, hole: $hole, place: "at the hook", readingKg: $kg) {
    readings { hang hole readingKg verdict sentence } } }`,
  attention: '{ attention(first: 200) { totalCount edges { node { role code weight showId itemId date sentence } } } }',
  whyHere: 'query($id: ID!, $load: String!) { whyHere(planId: $id, load: $load, slot: 1) { code fact sentence } }',
  between: '{ betweenShows(tourId: "harbour-lights") { from to what } }',
  remedies: '{ remedies(model: "Plover", day: "2027-03-02") { kind serial sentence } }',
  hold: `mutation($items: [String!]!) { placeHold(hold: { name: "Regatta", from: "2027-03-01", to: "2027-03-20", hours: 24, items: $items }) {
    __typename ... on Hold { id } } }`,
  endHold: 'mutation($id: ID!) { giveHoldBack(id: $id) }',
  again:
    'query($id: ID!) { plan(id: $id) { state changed { code subjects { role kind id place } numbers { name values } sentence } plan stops looks ticks } }',
} as const;

/** A day of the demo told through the API; everything that was answered, in its order. */
class Day {
  /** Without words. */
  readonly decided: unknown[] = [];
  /** All that was said. */
  readonly said: unknown[] = [];

  constructor(private readonly agents: Record<'system' | 'warehouse' | 'safety', Agent>) {}

  async ask(who: 'system' | 'warehouse' | 'safety', what: keyof typeof texts, variables: object = {}): Promise<any> {
    const { data, errors } = await this.agents[who].graphql(texts[what], variables);
    if (errors?.[0]?.extensions.code === 'GRAPHQL_VALIDATION_FAILED') throw new Error(errors[0].message);
    this.said.push(data, errors);
    this.decided.push({ who, what, data: withoutWords(counted(data ?? null)), errors: (errors ?? []).map(faultOf) });
    return data && Object.values<any>(data)[0];
  }

  add(what: string, decided: unknown): void {
    this.decided.push({ what, decided });
  }
}

const lists = new Set(['sentences', 'changes', 'reasons', 'marked']);
/** Of a list of sentences it counts how many there are. */
const counted = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, each: unknown) => (lists.has(key) && Array.isArray(each) ? each.length : each)));

const faultOf = ({ extensions }: any) => ({
  code: extensions.code,
  faults: extensions.faults?.map(({ field, value }: any) => ({ field, value })),
});

async function liveADay(test: TestApp): Promise<Day> {
  const [system, warehouse, safety] = await Promise.all([test.as('system'), test.as('warehouse'), test.as('safety')]);
  const day = new Day({ system, warehouse, safety });
  const made = async (show = 'quayside') => {
    const { plan } = await day.ask('system', 'make', { show });
    day.add(
      'hatched',
      plan.plan.picks.hangs.map((hang: any) => [...stoppedJoints(plan.plan.findings, hang.hang)]),
    );
    return plan;
  };

  // A box is promised elsewhere; a draft grows stale; the next is released.
  const first = await made();
  const hold = await day.ask('warehouse', 'hold', { items: [first.plan.carts.loads[0].boxes[0].serial] });
  await day.ask('system', 'release', { id: first.id });
  await day.ask('warehouse', 'endHold', { id: hold.id });
  await day.ask('warehouse', 'quarantine', { id: first.plan.carts.loads[0].boxes[0].serial });
  await day.ask('system', 'release', { id: first.id });
  const { id, plan } = await made();
  await day.ask('system', 'release', { id });

  // On the floor: lists, carts, rows, steps, cells.
  await day.ask('warehouse', 'workList', { id });
  await day.ask('system', 'between');
  await day.ask('system', 'whyHere', { id, load: plan.carts.loads[0].id });
  await day.ask('system', 'remedies');
  const serials = plan.carts.loads[0].boxes.map((box: any) => box.serial);
  const load = plan.carts.loads[0].id;
  await day.ask('warehouse', 'confirm', { id, load, serials: [...serials.slice(1), 'P-999'] });
  await day.ask('warehouse', 'confirm', { id, load, serials });
  await day.ask('warehouse', 'tick', { id, what: 'T1 row 1' });
  await day.ask('warehouse', 'tick', { id, what: 'nothing of the kind' });
  const [hang] = plan.picks.hangs;
  const { goingUp, comingDown } = hang.runningOrder;
  await day.ask('system', 'tick', { id, what: comingDown[0].key });
  const holds = goingUp.filter((each: any) => each.hold);
  for (const step of [holds[2], holds[0], holds[1], holds[2]]) await day.ask('system', 'tick', { id, what: step.key });
  await day.ask('system', 'tick', { id, what: holds[0].key, done: false });
  for (const share of [1, 1.5]) {
    const [pick] = hang.picks;
    await day.ask('system', 'reading', { id, hang: hang.hang, hole: pick.hole, kg: pick.hookLoadKg * share });
  }

  // A box fails, rows change places.
  const { draftId } = await day.ask('warehouse', 'swapBox', { id, serial: plan.carts.loads[4].boxes[1].serial });
  await day.ask('warehouse', 'confirm', { id, load: plan.carts.loads[4].id, serials });
  await day.ask('system', 'again', { id: draftId });
  const rows = plan.truck.trucks[0].rows.length;
  for (const [one, other] of [
    [1, 2],
    [1, rows],
  ]) {
    await day.ask('warehouse', 'rowSwap', { id: draftId, first: one, second: other });
    await day.ask('warehouse', 'swapRows', { id: draftId, first: one, second: other });
  }

  // Joints that are too weak: stops, hatching, and who may release them.
  await test.dataSource.query(`UPDATE model SET data = jsonb_set(data, '{ratedRearLinkN}', '900') WHERE kind = 'boxes'`);
  const weak = await made('old-mill');
  await day.ask('system', 'release', { id: weak.id });
  await day.ask('system', 'release', { id: weak.id, despite: 'because' });
  await day.ask('safety', 'release', { id: weak.id, despite: 'because' });
  await day.ask('system', 'again', { id: weak.id });
  await day.ask('system', 'attention');
  return day;
}

/** Ids that the database gives out, by their first use: the third one is the third one in every telling. */
function steady(value: unknown): unknown {
  const known = new Map<string, string>();
  const id = (found: string) => known.get(found) ?? (known.set(found, `id ${known.size + 1}`), known.get(found)!);
  return JSON.parse(JSON.stringify(value).replace(/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]{22}/g, id));
}

async function tellIn(words: Words): Promise<{ readonly decided: any[]; readonly said: string }> {
  const test = await startTestApp({ words });
  try {
    const { decided, said } = await liveADay(test);
    return { decided: steady(decided) as any[], said: JSON.stringify(said) };
  } finally {
    await test.close();
  }
}

describe('a day at the API, said in nonsense', () => {
  let told: Awaited<ReturnType<typeof tellIn>>;
  let muddled: Awaited<ReturnType<typeof tellIn>>;
  beforeAll(async () => {
    told = await tellIn(english);
    muddled = await tellIn(nonsenseWords(3));
  }, 300_000);

  it('is decided alike: plans, weights, order, releases, stops, hatching, ticks, carts, lists, swaps', () => {
    expect(muddled.decided).toEqual(told.decided);
  });

  it('is nonsense', () => {
    const sentence = /no shorter list exists/;
    expect(told.said).toMatch(sentence);
    expect(muddled.said).not.toMatch(sentence);
  });

  it('is a day with releases, refusals of every kind, hatched joints and ticks', () => {
    const of = (what: string) => told.decided.filter((each) => each.what === what);
    expect(of('release').map(({ data }) => data.releasePackPlan.__typename)).toEqual([
      'BookingRefusal',
      'StaleRefusal',
      'PlanView',
      'StopRefusal',
      'StopRefusal',
      'PlanView',
    ]);
    expect(of('hatched').at(-1).decided.flat().length).toBeGreaterThan(0);
    expect(of('tick').filter(({ errors }) => errors.length === 0)).toHaveLength(4);
    expect(of('confirm').map(({ data }) => data.confirmCart.agrees)).toEqual([false, true, false]);
    expect(of('swapBox')[0].data.swapBox).toMatchObject({ __typename: 'SwapResult' });
  });
});
