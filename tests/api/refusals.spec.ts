import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

/** Things that nobody means to send: always an answer in words, never a fault of ours. */
describe('what cannot be read', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
  });
  afterAll(() => test.close());

  it.each([
    ['an id that is none', '{ plan(id: "zz") { id } }'],
    ['another', 'mutation { cancelJob(id: "zz") { id } }'],
    ['a difference of nothing', '{ planDifference(from: "a", to: "b") { sentences } }'],
    ['a release of nothing', 'mutation { releasePackPlan(planId: "zz") { __typename } }'],
    ['a work list of nothing', '{ workList(planId: "zz") }'],
    ['NUL in an id', '{ item(id: "a\\u0000") { history { edges { cursor } } } }'],
    ['NUL in a search', '{ items(search: "\\u0000") { totalCount } }'],
  ])('answers %s as bad input', async (_what, query) => {
    expect((await system.graphql(query)).errors?.[0]?.extensions.code).toMatch(/^(BAD_INPUT|NOT_FOUND)$/);
  });

  it('answers a GET of the API and a NUL in an address without a fault', async () => {
    expect((await system.fetch('/graphql')).status).toBe(405);
    expect((await system.fetch('/api/tours/%00/file')).status).toBe(422);
    const report = await system.fetch('/api/reports/zz');
    expect([report.status, await report.json()]).toMatchObject([422, { faults: [{ field: 'id', value: 'zz' }] }]);
  });

  it('takes the same kit under another tour, and refuses a promise that overlaps one on file', async () => {
    const send = (file: object) =>
      system.fetch('/api/tours/file?dryRun=false', {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
        body: JSON.stringify(file),
      });
    const now = (await (await system.fetch('/api/tours/harbour-lights/file')).json()) as { tour: object; bookings: object[] };
    const again = await send({ ...now, tour: { ...now.tour, id: 'again', name: 'Again' } });
    expect(again.status).toBe(200);
    const clash = await send({
      ...now,
      tour: { ...now.tour, id: 'third', name: 'Third' },
      bookings: [{ ...now.bookings[0], tour: 'Somebody else' }],
    });
    expect(clash.status).toBe(422);
    expect(((await clash.json()) as { faults: { field: string }[] }).faults[0]!.field).toBe('bookings[0]');
  });

  it('takes a file of its kit after boxes were moved, leaves them where they stand, and says which field of an item differs', async () => {
    const now = (await (await system.fetch('/api/tours/harbour-lights/file')).json()) as { tour: object; items: any[] };
    const empty = 'mutation { setStack(cart: "K07", serials: []) { summary { id } } }';
    expect((await system.graphql(empty)).errors).toBeUndefined();
    const send = (file: object) =>
      system.fetch('/api/tours/file?dryRun=false', {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
        body: JSON.stringify(file),
      });
    expect((await send({ ...now, bookings: [], tour: { ...now.tour, id: 'later', name: 'Later' } })).status).toBe(200);
    const stood = await test.dataSource.query(`SELECT count(*)::int AS count FROM item WHERE stack_cart = 'K07'`);
    expect(stood).toEqual([{ count: 0 }]);
    const told = await test.dataSource.query(`SELECT count(*)::int AS count FROM event WHERE sentence LIKE '%file of the tour Later.'`);
    expect(told).toEqual([{ count: 0 }]);
    const items = now.items.map((each) => (each.id === 'K07' ? { ...each, depot: 'Elsewhere' } : each));
    const differs = await send({ ...now, items, bookings: [], tour: { ...now.tour, id: 'fourth', name: 'Fourth' } });
    expect(((await differs.json()) as { faults: object[] }).faults).toContainEqual(
      expect.objectContaining({ value: 'K07', wanted: expect.stringContaining('(depot differs)') }),
    );
  });

  it('keeps no more boxes on a cart than it holds', async () => {
    const stack = 'mutation { setStack(cart: "K01", serials: ["P-001", "P-002", "P-003", "P-004", "P-005"]) { summary { id } } }';
    expect((await system.graphql(stack)).errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'serials', value: 5 });
  });

  it('tells a tour file in UTF-16 by its name', async () => {
    const reply = await system.fetch('/api/tours/file?dryRun=true', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
      body: Buffer.from('\ufeff{"format":1}', 'utf16le'),
    });
    expect(reply.status).toBe(400);
    expect(await reply.text()).toContain('UTF-16');
  });

  it('refuses a CSV in another encoding than UTF-8, and saves nothing', async () => {
    const reply = await system.fetch('/api/csv/items/box?dryRun=false', {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: Buffer.from('serial,model,depot,state,reason\nP-001,Plover,Ferry Lane,in repair,caf\xe9\n', 'latin1'),
    });
    expect(reply.status).toBe(422);
    expect(await reply.text()).toContain('UTF-8');
    const { item } = (await system.graphql('{ item(id: "P-001") { summary { state } } }')).data;
    expect(item.summary.state).toBe('in service');
  });

  it.each([
    ['a kind', '{ items(kind: "zzz") { totalCount } }', 'kind'],
    ['a state', '{ items(state: "zzz") { totalCount } }', 'state'],
    ['a cursor', '{ items(after: "zz!") { totalCount } }', 'after'],
  ])('names %s that there is not', async (_what, query, field) => {
    expect((await system.graphql(query)).errors?.[0]?.extensions.faults?.[0]?.field).toBe(field);
  });

  it('releases a plan that says stop only with a reason, which is kept', async () => {
    const { id } = (
      await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "fenland") { ... on PlanMade { plan { id } } } }')
    ).data.makePackPlan.plan;
    const release = `mutation($id: ID!, $despite: String) { releasePackPlan(planId: $id, despite: $despite) {
      __typename ... on PlanView { revision releasedDespite } ... on StopRefusal { sentence stops { code subjects { role kind id } sentence } } } }`;
    // A hoist in date is missing: that is the safety officer's to answer, whatever the system tech's reason.
    const safety = await test.as('safety');
    const despite = 'A box and a hoist come from Northgate';
    for (const reason of [undefined, despite])
      expect((await system.graphql(release, { id, despite: reason })).data.releasePackPlan).toMatchObject({
        __typename: 'StopRefusal',
        stops: expect.arrayContaining([expect.objectContaining({ code: 'item-missing' })]),
      });
    const first = (await safety.graphql(release, { id })).data.releasePackPlan;
    expect(first).toMatchObject({
      __typename: 'StopRefusal',
      stops: expect.arrayContaining([expect.objectContaining({ sentence: expect.stringContaining('Dunlin') })]),
    });
    const second = (await safety.graphql(release, { id, despite })).data.releasePackPlan;
    expect(second).toEqual({ __typename: 'PlanView', revision: 'A', releasedDespite: despite });
  });

  it('keeps the boxes of the plan before where that costs no move more', async () => {
    const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { plan } } } }';
    const loadsOf = (plan: any) => plan.carts.loads.map((load: any) => load.boxes.map((box: any) => box.serial).join());
    const before = (await system.graphql(make)).data.makePackPlan.plan.plan;
    const loose = before.carts.floorBefore.loose.find((serial: string) => !loadsOf(before).join().includes(serial));
    await system.graphql('mutation($id: ID!) { quarantine(itemId: $id, reason: "scuffed") { summary { id } } }', { id: loose });
    expect(loadsOf((await system.graphql(make)).data.makePackPlan.plan.plan)).toEqual(loadsOf(before));
  });
});
