import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const list = 'query($id: ID!) { workList(planId: $id) }';
const move = 'mutation($id: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $id, box: $box, from: $from, to: $to) }';
const undo = 'mutation($id: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $id, box: $box, from: $from, to: $to) }';
const stack = 'mutation($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }';
const swap =
  'mutation($id: ID!, $serial: String!, $reason: String!) { swapBox(planId: $id, serial: $serial, reason: $reason) { ... on SwapResult { draftId marked difference { sentences boxes { hang position from to } } } } }';

describe('work on the floor', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let plan: any;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
    plan = (await system.graphql(make)).data.makePackPlan.plan;
  });
  afterAll(() => test.close());

  const workList = async () => (await warehouse.graphql(list, { id: plan.id })).data.workList;
  const changed = async () =>
    (await warehouse.graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { changed { code } } } }')).data.showPage
      .draft.changed;

  it('gives the list of the plan, and what is left of it after each move; the plan is not stale meanwhile', async () => {
    const before = await workList();
    expect(before).toMatchObject({ status: 'as planned', moves: plan.plan.carts.moves, bound: plan.plan.carts.boxMoves });
    const first = before.moves[0];
    const { data, errors } = await warehouse.graphql(move, { id: plan.id, ...pick(first) });
    expect(errors).toBeUndefined();
    expect(data.doMove).toMatchObject({ status: 'as planned', moves: before.moves.slice(1) });
    expect(await changed()).toEqual([]);
    const { item } = (
      await warehouse.graphql('query($id: ID!) { item(id: $id) { history { edges { node { what sentence } } } } }', { id: first.box })
    ).data;
    expect(item.history.edges[0].node).toMatchObject({
      what: 'moved',
      sentence: expect.stringContaining(`Moved from ${first.from} to ${first.to}`),
    });
  });

  it('takes a move back: the box stands where it came from, the move is left to do, and both are on record', async () => {
    const [first, second] = plan.plan.carts.moves;
    const whole = plan.plan.carts.moves;
    const { data, errors } = await warehouse.graphql(undo, { id: plan.id, ...pick(first) });
    expect(errors).toBeUndefined();
    expect(data.undoMove).toMatchObject({ status: 'as planned', moves: whole });
    const progress = 'query($id: ID!) { plan(id: $id) { ticks } }';
    expect((await warehouse.graphql(progress, { id: plan.id })).data.plan.ticks).toEqual([]);
    expect(await changed()).toEqual([]);
    const { item } = (
      await warehouse.graphql('query($id: ID!) { item(id: $id) { history { edges { node { what } } } } }', { id: first.box })
    ).data;
    expect(item.history.edges.slice(0, 2).map((each: any) => each.node.what)).toEqual(['moved back', 'moved']);
    const again = await warehouse.graphql(undo, { id: plan.id, ...pick(first) });
    expect(again.errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field: 'box' }] });
    expect(await workList()).toMatchObject({ moves: whole });
    const done = await warehouse.graphql(move, { id: plan.id, ...pick(first) });
    expect(done.data.doMove.moves[0]).toEqual(second);
  });

  it('refuses to take a move back that something stands on, until that is taken back', async () => {
    const [first] = plan.plan.carts.moves;
    const to = plan.plan.carts.moves
      .slice(1)
      .findIndex((each: any) => [each.from, each.to].some((place) => [first.from, first.to].includes(place) && place !== 'floor'));
    const between = plan.plan.carts.moves.slice(1, to + 2);
    expect(to).toBeGreaterThanOrEqual(0);
    for (const each of between) await warehouse.graphql(move, { id: plan.id, ...pick(each) });
    const before = await workList();
    const { errors } = await warehouse.graphql(undo, { id: plan.id, ...pick(first) });
    expect(errors?.[0]?.extensions.faults?.[0]).toMatchObject({
      field: 'box',
      value: first.box,
      wanted: expect.stringContaining(between.at(-1).box),
    });
    expect(await workList()).toEqual(before);
    for (const each of [...between].reverse())
      expect((await warehouse.graphql(undo, { id: plan.id, ...pick(each) })).errors).toBeUndefined();
    expect((await workList()).moves).toEqual(plan.plan.carts.moves.slice(1));
  });

  it('says what a code is that was read: a box that may stand in, one that may not, a lot, nothing on file', async () => {
    const asked = 'query($id: ID!, $code: String!) { floorCode(planId: $id, code: $code) { id kind model count whyNot wantedSerials } }';
    const codeOf = async (code: string) => (await warehouse.graphql(asked, { id: plan.id, code })).data.floorCode;
    const flying = plan.plan.carts.loads[0].boxes[0];
    expect(await codeOf(flying.serial.toLowerCase())).toMatchObject({ id: flying.serial, kind: 'box', model: flying.model, whyNot: null });
    const { serial } = plan.plan.carts.leftOut[0];
    expect(await codeOf(`https://house.example/register/${serial}`)).toMatchObject({ id: serial, whyNot: { code: expect.any(String) } });
    const lots = (await warehouse.graphql('{ items(kind: "pin", first: 1) { edges { node { id } } } }')).data.items.edges;
    expect(await codeOf(lots[0].node.id)).toMatchObject({ kind: 'pin', count: expect.any(Number) });
    expect(await codeOf('4006381333931')).toBeNull();
  });

  it('the safety officer takes no move back', async () => {
    const safety = await test.as('safety');
    const { errors } = await safety.graphql(undo, { id: plan.id, ...pick(plan.plan.carts.moves[0]) });
    expect(errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });

  it('refuses a move that is not on the list as it now is, and moves nothing', async () => {
    const before = await workList();
    const { errors } = await warehouse.graphql(move, { id: plan.id, ...pick(plan.plan.carts.moves[0]) });
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field: 'box' }] });
    expect(await workList()).toEqual(before);
  });

  it('takes the floor as somebody else left it, and gives the shortest list from there, which ends in the plan', async () => {
    const before = await workList();
    const cart = before.floor.carts.find(
      (each: any) => each.boxes.length === 4 && plan.plan.carts.loads.some((load: any) => load.cart === each.cart),
    );
    const [top, second, ...rest] = cart.boxes;
    await warehouse.graphql(stack, { cart: cart.cart, serials: [second, top, ...rest] });
    let now = await workList();
    expect(now.status).toBe('anew');
    expect(now.moves.length).toBe(now.bound);
    for (let guard = 0; now.moves.length > 0 && guard < 60; guard++) {
      const left: number = now.moves.length;
      now = (await warehouse.graphql(move, { id: plan.id, ...pick(now.moves[0]) })).data.doMove;
      expect(now.moves.length).toBe(left - 1);
    }
    expect(now).toMatchObject({ status: 'done', moves: [] });
    const stacks = now.floor.carts.map((each: any) => each.boxes.join());
    for (const load of plan.plan.carts.loads) expect(stacks).toContain(load.boxes.map((box: any) => box.serial).join());
  });

  it('swaps a failed box for the change that is least, quarantines it, and marks the other plans that counted on it', async () => {
    await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "fenland") { ... on PlanMade { plan { id } } } }');
    const current = (await system.graphql(make)).data.makePackPlan.plan;
    const failed = current.plan.carts.loads[2].boxes[0].serial;
    const { data, errors } = await warehouse.graphql(swap, { id: current.id, serial: failed, reason: 'Driver open' });
    expect(errors).toBeUndefined();
    const { draftId, difference, marked } = data.swapBox;
    expect(difference.boxes).toHaveLength(1);
    expect(difference.boxes[0]).toMatchObject({ from: failed, to: expect.any(String) });
    const after = (await system.graphql('query($id: ID!) { plan(id: $id) { plan changed { code } } }', { id: draftId })).data.plan;
    expect(after.changed).toEqual([]);
    expect(after.plan.carts.loads.flatMap((load: any) => load.boxes.map((box: any) => box.serial))).not.toContain(failed);
    expect((await system.graphql('query($id: ID!) { item(id: $id) { summary { state } } }', { id: failed })).data.item.summary.state).toBe(
      'quarantined',
    );
    expect(marked.filter((each: string) => !/Fenland Dome/.test(each))).toEqual([]);
  });

  it('says no to a list with a box that must not fly, and to a plan that has been superseded', async () => {
    const release = 'mutation($id: ID!) { releasePackPlan(planId: $id) { __typename ... on PlanView { revision } } }';
    const old = (await system.graphql(make)).data.makePackPlan.plan;
    expect(old.plan.show).toMatchObject({ number: 1, of: 3 });
    await system.graphql(release, { id: old.id });
    const flying = old.plan.carts.loads[4].boxes[1].serial;
    const { data } = await warehouse.graphql(swap, { id: old.id, serial: flying, reason: 'Handle off' });
    const stopped = (await warehouse.graphql(list, { id: old.id })).data.workList;
    expect(stopped).toMatchObject({ status: 'cannot', moves: [], sentence: expect.stringContaining(`${flying} of`) });
    expect(stopped.sentence).toContain('quarantined, Handle off');
    const next = data.swapBox.draftId;
    expect((await system.graphql('query($id: ID!) { plan(id: $id) { plan } }', { id: next })).data.plan.plan.show.number).toBe(1);
    expect((await warehouse.graphql(list, { id: next })).data.workList.status).not.toBe('cannot');
    expect((await system.graphql(release, { id: next })).data.releasePackPlan).toMatchObject({ revision: 'B' });
    const { errors } = await warehouse.graphql(swap, { id: old.id, serial: old.plan.carts.loads[5].boxes[1].serial, reason: 'Handle off' });
    expect(errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'planId', wanted: expect.stringContaining('superseded') });
  });

  it.each([
    ['a box that is not in the plan', 'P-999', 'dent', 'serial'],
    ['no reason', 'P-010', ' ', 'reason'],
  ])('refuses a swap with %s', async (_what, serial, reason, field) => {
    const { id } = (await system.graphql(make)).data.makePackPlan.plan;
    const { errors } = await warehouse.graphql(swap, { id, serial, reason });
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field }] });
  });
});

const pick = ({ box, from, to }: { box: string; from: string; to: string }) => ({ box, from, to });
