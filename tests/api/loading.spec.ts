import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const answer = '{ __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { sentence reasons } }';
const keepPieces = `mutation($id: ID!, $pieces: [String!]!) { keepPieces(planId: $id, pieces: $pieces) ${answer} }`;
const keepRow = `mutation($id: ID!, $truck: String!, $row: Int!) { keepRow(planId: $id, truck: $truck, row: $row) ${answer} }`;
const keepLoaded = `mutation($id: ID!) { keepLoaded(planId: $id) ${answer} }`;
const letGo = `mutation($id: ID!, $pieces: [String!]!) { letPiecesGo(planId: $id, pieces: $pieces) ${answer} }`;
const waive = `mutation($id: ID!, $piece: String!, $reason: String!) { waiveOrder(planId: $id, piece: $piece, reason: $reason) ${answer} }`;
const endWaiver = `mutation($id: ID!, $piece: String!) { endWaiver(planId: $id, piece: $piece) ${answer} }`;
const take = `mutation($id: ID!, $case: String!) { takeCase(planId: $id, case: $case) ${answer} }`;
const leave = `mutation($id: ID!, $case: String!) { leaveCase(planId: $id, case: $case) ${answer} }`;
const setEnd = `mutation($id: ID!, $group: String!, $end: String) { setGroupEnd(planId: $id, group: $group, end: $end) ${answer} }`;
const look =
  'query($id: ID!, $truck: String!, $first: Int!, $second: Int!) { rowSwap(planId: $id, truck: $truck, first: $first, second: $second) { axles { axle beforeKg afterKg limitKg } sideBeforeMm sideAfterMm breaches { piece mayBeWaived sentence } } }';
const swap = `mutation($id: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) { swapRows(planId: $id, truck: $truck, first: $first, second: $second, reason: $reason) ${answer} }`;
const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }';
const read = 'query($id: ID!) { plan(id: $id) { state changed { sentence } ticks plan } }';
const page =
  '{ showPage(tourId: "harbour-lights", showId: "quayside") { released { id plan changed { sentence } } draft { id changed { sentence } } } }';

describe('what people at the dock want of the trucks', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
  });
  afterAll(() => test.close());

  const planned = async () => (await system.graphql(make)).data.makePackPlan.plan;
  const planOf = async (id: string) => (await warehouse.graphql(read, { id })).data.plan;
  const done = async (text: string, variables: object, agent = warehouse) => {
    const { data, errors } = await agent.graphql(text, variables);
    expect(errors).toBeUndefined();
    return Object.values<any>(data)[0];
  };
  const faultOf = async (text: string, variables: object) => {
    const { errors } = await warehouse.graphql(text, variables);
    expect(errors?.[0]?.extensions.code).toBe('BAD_INPUT');
    return errors![0]!.extensions.faults![0]!;
  };
  const placesOf = (plan: any, truck: string, row: number) => {
    const load = plan.truck.trucks.find((each: any) => each.id === truck);
    const { pieces } = load.rows.find((each: any) => each.number === row);
    return load.placements
      .filter((each: any) => pieces.includes(each.id))
      .map(({ id, xMm, yMm, zMm, turned }: any) => ({ id, truck, xMm, yMm, zMm, turned }));
  };
  const whereAre = (plan: any, pieces: readonly { id: string }[]) =>
    plan.truck.trucks.flatMap((load: any) =>
      load.placements
        .filter((each: any) => pieces.some((one) => one.id === each.id))
        .map(({ id, xMm, yMm, zMm, turned }: any) => ({ id, truck: load.id, xMm, yMm, zMm, turned })),
    );
  const acts = async (): Promise<number> => Number((await test.dataSource.query('SELECT count(*) FROM loading_act'))[0].count);

  it('keeps a row where it stands in every plan from then on, until it is let go; the record says who', async () => {
    const { id, plan } = await planned();
    const row = placesOf(plan, 'T1', 5);
    const { draftId } = await done(keepRow, { id, truck: 'T1', row: 5 });
    const draft = await planOf(draftId);
    expect(draft).toMatchObject({ state: 'draft', changed: [] });
    expect(whereAre(draft.plan, row)).toEqual(expect.arrayContaining(row));
    expect(draft.plan.truck.trucks[0].kept.map((each: any) => each.piece).sort()).toEqual(row.map((each: any) => each.id).sort());
    expect(draft.plan.carts).toEqual(plan.carts);
    const again = await planned();
    expect(whereAre(again.plan, row)).toEqual(expect.arrayContaining(row));
    const events = await test.dataSource.query(`SELECT who, sentence FROM event WHERE what = 'loading' ORDER BY id DESC LIMIT 1`);
    expect(events[0].sentence).toContain('Keeps row 5 of T1');
    const free = await done(letGo, { id: again.id, pieces: row.map((each: any) => each.id) });
    expect((await planOf(free.draftId)).plan.truck.trucks.flatMap((each: any) => each.kept)).toEqual([]);
  });

  it('locks what is loaded, and the rows that stand as before stay ticked', async () => {
    const { id, plan } = await planned();
    for (const what of ['T1 row 1', 'T1 row 2']) await warehouse.graphql(tick, { id, what });
    const { draftId } = await done(keepLoaded, { id });
    const draft = await planOf(draftId);
    const loaded = [...placesOf(plan, 'T1', 1), ...placesOf(plan, 'T1', 2)];
    expect(whereAre(draft.plan, loaded)).toEqual(expect.arrayContaining(loaded));
    expect(draft.plan.truck.trucks[0].kept).toHaveLength(loaded.length);
    expect(draft.plan.truck.trucks[0].kept.every((each: any) => each.loaded)).toBe(true);
    expect(draft.ticks).toEqual(expect.arrayContaining(['row:T1:1', 'row:T1:2']));
    const swapped = await done(swap, { id: draftId, truck: 'T1', first: 1, second: 2, reason: 'no matter' });
    expect(swapped).toMatchObject({ __typename: 'PlanningRefusal', sentence: 'Rows 1 and 2 of T1 cannot change places.' });
    await done(letGo, { id: draftId, pieces: loaded.map((each: any) => each.id) });
  });

  it('takes a case of the register along at the dock and leaves it again', async () => {
    const file = 'serial,model,state,depot\nWB-20,Workbox,in service,Ferry Lane\n';
    const sent = await warehouse.fetch('/api/csv/items/case?dryRun=false', {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: file,
    });
    expect(sent.status).toBeLessThan(300);
    const { id } = await planned();
    const { draftId, changes } = await done(take, { id, case: 'WB-20' });
    expect(changes.join('\n')).toContain('WB-20 rides in');
    const draft = await planOf(draftId);
    expect(draft.plan.truck.notes).toContainEqual(expect.objectContaining({ kind: 'taken', subject: 'WB-20' }));
    expect(draft.plan.truck.leftOver).toEqual([]);
    expect(await faultOf(take, { id: draftId, case: 'WB-20' })).toMatchObject({ field: 'case', wanted: 'a case that does not travel yet' });
    const left = await done(leave, { id: draftId, case: 'WB-20' });
    expect(left.changes).toContain('WB-20 no longer travels.');
  });

  it('waives the unloading order for a piece: the plan names the piece, the reason, who and when', async () => {
    const { id } = await planned();
    const { draftId } = await done(waive, { id, piece: 'HT-1', reason: 'the trunk is not needed before the evening.' });
    const draft = await planOf(draftId);
    const said = draft.plan.findings.filter((each: any) => each.code === 'order-waived');
    expect(said).toHaveLength(1);
    expect(said[0].sentence).toMatch(
      /Hardware trunk HT-1 need not come off in its turn: the trunk is not needed before the evening \(.+, 2027-02-26\)\./,
    );
    const after = await planOf((await done(endWaiver, { id: draftId, piece: 'HT-1' })).draftId);
    expect(after.plan.findings.filter((each: any) => each.code === 'order-waived')).toEqual([]);
  });

  it('wants a group at the door', async () => {
    const { id } = await planned();
    const { draftId } = await done(setEnd, { id, group: 'Cable', end: 'door' });
    expect((await planOf(draftId)).plan.truck.dockOrder[0].first).toBe('Cable');
    const back = await done(setEnd, { id: draftId, group: 'Cable', end: null });
    expect((await planOf(back.draftId)).plan.truck.dockOrder[0].first).toBe('Hoists');
  });

  it('tells what two exchanged rows do, exchanges them for a reason where only the order is broken, and never otherwise', async () => {
    const { id, plan } = await planned();
    const before = await acts();
    const rows = plan.truck.trucks[0].rows;
    // Two rows of equal length beside one another in which something comes off earlier in one than in the other.
    const stops = (row: any) =>
      row.pieces.map((piece: string) => plan.truck.trucks[0].placements.find((each: any) => each.id === piece).firstOff);
    let found: { first: number; second: number } | undefined;
    for (let index = 0; index + 1 < rows.length && !found; index++)
      if (Math.min(...stops(rows[index])) > Math.max(...stops(rows[index + 1]))) {
        const seen = await done(look, { id, truck: 'T1', first: index + 1, second: index + 2 });
        if (seen.breaches.length > 0 && seen.breaches.every((each: any) => each.mayBeWaived))
          found = { first: index + 1, second: index + 2 };
      }
    expect(found).toBeDefined();
    const seen = await done(look, { id, truck: 'T1', ...found });
    expect(seen.axles.map((each: any) => each.axle)).toContain('drive axle');
    expect(await done(swap, { id, truck: 'T1', ...found })).toMatchObject({
      __typename: 'PlanningRefusal',
      reasons: seen.breaches.map((each: any) => each.sentence),
    });
    expect(await acts()).toBe(before);
    const { draftId } = await done(swap, { id, truck: 'T1', ...found, reason: 'the crew wants it so' });
    const draft = await planOf(draftId);
    const moved = placesOf(plan, 'T1', found!.first).map((each: any) => each.id);
    expect(draft.plan.truck.trucks[0].rows[found!.second - 1].pieces.slice().sort()).toEqual(moved.slice().sort());
    for (const axle of seen.axles)
      expect(draft.plan.truck.trucks[0].axles.find((each: any) => each.axle === axle.axle).loadKg).toBeCloseTo(axle.afterKg, 6);
    expect(draft.plan.findings.some((each: any) => each.code === 'order-waived')).toBe(true);
  });

  it('lets go of everything that is kept, also where nothing could be planned around it', async () => {
    const [{ id }, before] = [await planned(), await acts()];
    const { draftId } = await done('mutation($id: ID!) { letPiecesGo(planId: $id) { __typename ... on LoadingDone { draftId } } }', { id });
    const { plan } = await planOf(draftId);
    expect(plan.truck.trucks.flatMap((each: any) => each.kept)).toEqual([]);
    expect(plan.truck.notes.filter((each: any) => each.kind === 'kept')).toEqual([]);
    expect(await acts()).toBe(before + 1);
    expect(await faultOf('mutation($id: ID!) { letPiecesGo(planId: $id) { __typename } }', { id: draftId })).toMatchObject({
      field: 'pieces',
    });
  });

  it('never changes a released plan: what is wanted afterwards makes it stale and gives a draft', async () => {
    const { id } = await planned();
    const release =
      'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "only a test") { __typename ... on PlanView { revision } } }';
    expect((await system.graphql(release, { id })).data.releasePackPlan.__typename).toBe('PlanView');
    const before = (await warehouse.graphql(page)).data.showPage.released;
    const { draftId } = await done(keepRow, { id, truck: 'T1', row: 3 });
    const after = (await warehouse.graphql(page)).data.showPage;
    expect(after.released.plan).toEqual(before.plan);
    expect(after.released.changed).toEqual([{ sentence: 'the loading wishes of the show have changed' }]);
    expect(after.draft).toEqual({ id: draftId, changed: [] });
    await expect(test.dataSource.query('UPDATE loading_act SET who = $1', ['nobody'])).rejects.toThrow(/append only/);
    await expect(test.dataSource.query('DELETE FROM loading_act')).rejects.toThrow(/append only/);
  });

  it('refuses what is not there, in words, and puts nothing on file', async () => {
    const { id, plan } = await planned();
    const before = await acts();
    const truck = plan.truck.trucks.find((each: any) => each.kept.length < each.placements.length);
    const free = truck.placements.find((each: any) => !truck.kept.some((one: any) => one.piece === each.id)).id;
    expect(await faultOf(keepPieces, { id, pieces: [free, 'WB-99'] })).toMatchObject({
      field: 'pieces[1]',
      value: 'WB-99',
      wanted: 'a piece that stands in a truck of this plan',
    });
    expect(await faultOf(keepPieces, { id, pieces: [] })).toMatchObject({ field: 'pieces' });
    expect(await faultOf(keepRow, { id, truck: 'T9', row: 1 })).toMatchObject({ field: 'truck', wanted: expect.stringContaining('T1') });
    expect(await faultOf(keepRow, { id, truck: 'T1', row: 0 })).toMatchObject({ field: 'row', value: 0 });
    expect(await faultOf(keepLoaded, { id })).toMatchObject({ wanted: expect.stringContaining('row ticked') });
    expect(await faultOf(letGo, { id, pieces: [free] })).toMatchObject({ field: 'pieces[0]' });
    expect(await faultOf(waive, { id, piece: 'WB-99', reason: 'late' })).toMatchObject({ field: 'pieces[0]', value: 'WB-99' });
    expect(await faultOf(waive, { id, piece: 'HT-1', reason: ' ' })).toMatchObject({ field: 'reason' });
    expect(await faultOf(endWaiver, { id, piece: 'HT-1' })).toMatchObject({ field: 'piece' });
    expect(await faultOf(take, { id, case: 'WB-99' })).toMatchObject({ field: 'case', wanted: expect.stringContaining('on the register') });
    expect(await faultOf(take, { id, case: 'P-001' })).toMatchObject({ wanted: 'a case; P-001 is a box' });
    expect(await faultOf(take, { id, case: 'HT-1' })).toMatchObject({ wanted: 'a case that does not travel yet' });
    expect(await faultOf(leave, { id, case: 'HT-1' })).toMatchObject({ field: 'case' });
    expect(await faultOf(setEnd, { id, group: 'Choir', end: 'door' })).toMatchObject({
      field: 'group',
      wanted: expect.stringContaining('Cable'),
    });
    expect(await faultOf(setEnd, { id, group: 'Cable', end: 'roof' })).toMatchObject({ field: 'end', value: 'roof' });
    expect(await faultOf(look, { id, truck: 'T1', first: 2, second: 2 })).toMatchObject({ field: 'second' });
    expect(await faultOf(swap, { id, truck: 'T1', first: 1, second: 99 })).toMatchObject({ field: 'second', value: 99 });
    expect(await acts()).toBe(before);
  });

  it('is for the warehouse and the system tech; the safety officer may look', async () => {
    const { id } = await planned();
    const safety = await test.as('safety');
    for (const [text, variables] of [
      [keepRow, { id, truck: 'T1', row: 1 }],
      [keepLoaded, { id }],
      [waive, { id, piece: 'HT-1', reason: 'x' }],
      [take, { id, case: 'WB-20' }],
      [swap, { id, truck: 'T1', first: 1, second: 2 }],
    ] as const)
      expect((await safety.graphql(text, variables)).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await safety.graphql(look, { id, truck: 'T1', first: 1, second: 2 })).errors).toBeUndefined();
    const unknown = await warehouse.graphql(keepLoaded, { id: '00000000-0000-4000-8000-000000000000' });
    expect(unknown.errors?.[0]?.extensions.code).toBe('NOT_FOUND');
  });
});
