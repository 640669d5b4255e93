import fc from 'fast-check';
import { parse } from 'csv-parse/sync';
import { loadKit } from '../../apps/api/src/planning/snapshot/kit-snapshot.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const split = `mutation($lot: ID!, $pieces: Int!, $state: String!, $reason: String!, $examination: AnyJson) {
  splitLot(itemId: $lot, pieces: $pieces, state: $state, reason: $reason, examination: $examination) { taken left } }`;
const page = `query($id: ID!) { item(id: $id) { summary { count state dueState } records { edges { node { examination recordedBy recordedAt } } } history(first: 100) { edges { node { at who what sentence } } } }
  lotSplits(itemId: $id) { parentId childId pieces ofPieces state reason madeBy } }`;
const make =
  'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan changed { sentence } } } } }';

describe('some pieces of a batch', () => {
  let test: TestApp;
  let agents: Record<'warehouse' | 'system' | 'safety', Agent>;
  let lot: { id: string; count: number };
  beforeAll(async () => {
    test = await startTestApp();
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    agents = { warehouse, system, safety };
    [lot] = await test.dataSource.query(
      `SELECT id, count FROM item WHERE kind = 'pin' AND state = 'in service' ORDER BY count DESC LIMIT 1`,
    );
  });
  afterAll(() => test.close());

  const take = async (variables: object, who: Agent = agents.warehouse) => {
    const { data, errors } = await who.graphql(split, {
      lot: lot.id,
      state: 'quarantined',
      reason: 'thread worn',
      examination: null,
      ...variables,
    });
    return { done: data?.splitLot, fault: errors?.[0]?.extensions.faults?.[0], code: errors?.[0]?.extensions.code };
  };
  const read = async (id: string) => {
    const { data, errors } = await agents.safety.graphql(page, { id });
    expect(errors).toBeUndefined();
    return { ...data.item, splits: data.lotSplits };
  };
  const family = async (): Promise<number> =>
    (await test.dataSource.query('SELECT sum(count)::int AS sum FROM item WHERE id = $1 OR id LIKE $2', [lot.id, `${lot.id}/%`]))[0].sum;
  const wordsOf = (item: any): string[] => item.history.edges.map(({ node }: any) => `${node.at} ${node.who} ${node.sentence}`);

  it('fail and the rest stays: three of them, with the examination that failed them, and the plan counts the rest', async () => {
    const before = await read(lot.id);
    const first = (await agents.system.graphql(make)).data.makePackPlan.plan;
    const examination = {
      on: '2027-02-25',
      outcome: 'fail',
      examiner: 'Northgate Inspection (invented)',
      report: 'NI-77',
    };
    const { done, fault } = await take({ pieces: 3, examination }, agents.safety);
    expect(fault).toBeUndefined();
    expect(done).toEqual({ taken: `${lot.id}/1`, left: lot.count - 3 });
    const [rest, failed] = [await read(lot.id), await read(done.taken)];
    expect(rest.summary).toMatchObject({ count: lot.count - 3, state: 'in service', dueState: before.summary.dueState });
    expect(failed.summary).toMatchObject({ count: 3, state: 'quarantined', dueState: 'failed' });
    for (const each of [rest, failed])
      expect(each.splits).toEqual([
        {
          parentId: lot.id,
          childId: done.taken,
          pieces: 3,
          ofPieces: lot.count,
          state: 'quarantined',
          reason: 'thread worn',
          madeBy: 'Ines Aldous',
        },
      ]);
    // All that was on record of the batch is on record of both, as it was written; what came after is of the one part alone.
    const records = (item: any) => item.records.edges.map(({ node }: any) => node);
    expect(records(rest)).toEqual(records(before));
    expect(records(failed).slice(1)).toEqual(records(before));
    expect(records(failed)[0].examination).toMatchObject({ outcome: 'fail', report: 'NI-77' });
    for (const each of [rest, failed]) expect(wordsOf(each)).toEqual(expect.arrayContaining(wordsOf(before)));
    expect(wordsOf(rest).join()).not.toContain('NI-77');
    const plan = (await agents.system.graphql('query($id: ID!) { plan(id: $id) { changed { sentence } } }', { id: first.id })).data.plan;
    expect(plan.changed.length).toBeGreaterThan(0);
    const next = (await agents.system.graphql(make)).data.makePackPlan.plan.plan;
    const free = (from: any) => from.hardware.lines.find((line: any) => JSON.stringify(line).includes(lot.id)) ?? null;
    expect(JSON.stringify(next.hardware)).not.toEqual(JSON.stringify(first.plan.hardware));
    expect(free(next)).not.toBeNull();
  });

  it('are barred by the gate, with the failure as the reason, and not fit when they only leave quarantine', async () => {
    const { errors } = await agents.safety.graphql(
      'mutation($id: ID!) { releaseFromQuarantine(itemId: $id, reason: "looked at") { summary { state dueState } } }',
      {
        id: `${lot.id}/1`,
      },
    );
    expect(errors).toBeUndefined();
    expect((await read(`${lot.id}/1`)).summary).toMatchObject({ state: 'in service', dueState: 'failed' });
    const { items } = await loadKit(test.dataSource, [`${lot.id}/1`]);
    expect(items[0]!.examinations.at(-1)).toMatchObject({ outcome: 'fail' });
    await agents.warehouse.graphql('mutation($id: ID!) { quarantine(itemId: $id, reason: "thread worn") { item } }', { id: `${lot.id}/1` });
  });

  it('are taken out by CSV, all rows or none, and leave as CSV', async () => {
    const send = (body: string) =>
      agents.warehouse.fetch('/api/csv/lots', { method: 'POST', headers: { 'content-type': 'text/csv', 'x-cartwright': '1' }, body });
    const before = await family();
    const bad = await send(`batch,pieces,state,reason\r\n${lot.id},2,retired,lost\r\nNOWHERE,1,retired,lost\r\n`);
    expect(bad.status).toBe(422);
    expect(((await bad.json()) as any).faults).toEqual([{ row: 3, column: 'batch', value: 'NOWHERE', wanted: 'a batch on file' }]);
    expect((await read(`${lot.id}`)).splits).toHaveLength(1);
    const good = await send(`batch,pieces,state,reason\r\n${lot.id},2,retired,lost at sea\r\n${lot.id},1,quarantined,bent\r\n`);
    expect(await good.json()).toEqual({ taken: [`${lot.id}/2`, `${lot.id}/3`] });
    expect(await family()).toBe(before);
    const rows: Record<string, string>[] = parse(await (await agents.system.fetch('/api/csv/lots')).text(), { columns: true });
    expect(rows.map((each) => [each['batch'], each['pieces'], each['state'], each['new batch']])).toEqual([
      [lot.id, '3', 'quarantined', `${lot.id}/1`],
      [lot.id, '2', 'retired', `${lot.id}/2`],
      [lot.id, '1', 'quarantined', `${lot.id}/3`],
    ]);
  });

  it('never appear or vanish, however often and by whomever they are taken out', async () => {
    const total = await family();
    const lots = async (): Promise<{ id: string; count: number }[]> =>
      test.dataSource.query(`SELECT id, count FROM item WHERE (id = $1 OR id LIKE $2) AND state <> 'retired' ORDER BY id`, [
        lot.id,
        `${lot.id}/%`,
      ]);
    const steps = fc.array(
      fc.record({
        which: fc.nat(),
        share: fc.double({ min: -0.2, max: 1.2, noNaN: true }),
        state: fc.constantFrom('quarantined', 'retired'),
      }),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    await fc.assert(
      fc.asyncProperty(steps, async (taken) => {
        for (const { which, share, state } of taken) {
          const among = await lots();
          const one = among[which % among.length]!;
          const pieces = Math.round(share * one.count) || 0;
          const isPart = pieces >= 1 && pieces < one.count;
          const { done, fault } = await take({ lot: one.id, pieces, state });
          expect(Boolean(done)).toBe(isPart);
          if (!isPart) expect(fault).toMatchObject({ field: 'pieces', value: pieces });
          expect(await family()).toBe(total);
        }
      }),
      { numRuns: 12, seed: 7 },
    );
    const at = await Promise.all([1, 2, 3, 4].map(() => take({ pieces: 1 })));
    expect(new Set(at.map(({ done }) => done?.taken)).size).toBe(4);
    expect(await family()).toBe(total);
  });

  it.each([
    ['no pieces', { pieces: 0 }, 'pieces'],
    ['all pieces', { pieces: 100_000 }, 'pieces'],
    ['one thing with a serial', { lot: 'P-001', pieces: 1 }, 'itemId'],
    ['a state that lets them be used', { pieces: 1, state: 'in service' }, 'state'],
    ['no reason', { pieces: 1, reason: ' ' }, 'reason'],
  ])('refuses %s', async (_what, variables, field) => {
    const before = await family();
    expect(await take(variables)).toMatchObject({ code: 'BAD_INPUT', fault: { field } });
    expect(await family()).toBe(before);
  });

  it('are failed by the safety officer alone, and by an examination that failed', async () => {
    const examination = { on: '2027-02-25', outcome: 'fail', examiner: 'N. I.', report: 'NI-78' };
    expect((await take({ pieces: 1, examination })).code).toBe('NOT_ALLOWED');
    expect((await take({ pieces: 1, examination: { ...examination, outcome: 'pass' } }, agents.safety)).fault).toMatchObject({
      field: 'examination.outcome',
    });
    const [{ count }] = await test.dataSource.query('SELECT count(*)::int AS count FROM lot_split WHERE child_id LIKE $1', [`${lot.id}/%`]);
    const later = await take({ pieces: 1, examination: { ...examination, on: '2029-01-01' } }, agents.safety);
    expect(later.code).toBe('BAD_INPUT');
    expect(
      (await test.dataSource.query('SELECT count(*)::int AS count FROM lot_split WHERE child_id LIKE $1', [`${lot.id}/%`]))[0].count,
    ).toBe(count);
  });
});
