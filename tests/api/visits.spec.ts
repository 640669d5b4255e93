import { randomUUID } from 'node:crypto';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const season = { from: '2027-02-26', to: '2027-12-31', depot: null };

describe('visits of examiners', () => {
  let test: TestApp;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    safety = await test.as('safety');
    // Every hoist of the demo goes with two tours, whose dates the season lives through.
    await test.dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT gen_random_uuid(), id, 'named', tour, tour, days::daterange
       FROM item, (VALUES ('Lanterns', '[2027-04-10,2027-05-30]'), ('Autumn', '[2027-10-01,2027-11-20]')) given (tour, days) WHERE kind = 'hoist' AND state = 'in service'`,
    );
  });
  afterAll(() => test.close());

  const addDays = async (days: object[], who = safety) =>
    who.graphql('mutation($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }', { days });
  const plan = async (without: string[] = []) =>
    (
      await safety.graphql(
        'query($from: String!, $to: String!, $depot: String, $without: [ID!]!) { visitSeason(from: $from, to: $to, depot: $depot, withIdle: false, without: $without) { answer without names { id kind } } }',
        { ...season, without },
      )
    ).data.visitSeason;
  const listed = async () =>
    (
      await safety.graphql(
        'query($from: String!, $to: String!) { visits(from: $from, to: $to) { id onDay depot placeName state list entered version } }',
        season,
      )
    ).data.visits as { id: string; onDay: string; state: string; list: { id: string }[] | null; entered: number; version: number }[];
  const agree = async (visits: string[]) =>
    safety.graphql('mutation($from: String!, $to: String!, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, visits: $visits) }', {
      ...season,
      visits,
    });
  const enter = async (id: string, lines: object[], key?: string, who = safety) =>
    who.graphql(
      'mutation($id: ID!, $lines: [VisitResultInput!]!) { enterVisitResults(id: $id, examiner: "Rosa Tamm (invented)", lines: $lines) { visit { entered } lines { itemId outcome report remark } } }',
      { id, lines },
      key ? { 'idempotency-key': key } : {},
    );

  it('are possible on days that exist, at depots and shows on file, entered once', async () => {
    const [{ depot }] = await test.dataSource.query(`SELECT DISTINCT depot FROM item WHERE kind = 'hoist'`);
    const days = ['2027-02-26', '2027-03-20', '2027-04-05', '2027-06-15', '2027-09-20'].map((onDay) => ({ onDay, depot }));
    expect((await addDays(days)).data).toEqual({ addVisitDays: 5 });
    expect((await addDays(days)).data).toEqual({ addVisitDays: 0 });
    const wrong = await addDays([
      { onDay: '2027-02-30', depot },
      { onDay: '2027-05-01', depot: 'Nowhere' },
      { onDay: '2027-05-01', tourId: 'harbour-lights', showId: 'quayside' },
      { onDay: '2026-05-01', depot },
    ]);
    expect(wrong.errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual([
      'days[0].onDay',
      'days[1].depot',
      'days[2].onDay',
      'days[3].onDay',
    ]);
    expect((await listed()).length).toBe(5);
    expect((await addDays(days, await test.as('warehouse'))).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });

  it('are planned over all tours, with proof, and without a day that falls away', async () => {
    const { answer, without, names } = await plan();
    expect(without).toBeNull();
    expect(answer.count.visits).toBeGreaterThan(0);
    expect(answer.count.visitsAtLeast).toBe(answer.count.visits);
    expect(names.some((each: { kind: string }) => each.kind === 'hoist')).toBe(true);
    const last = answer.visits.at(-1);
    const asked = await plan([last.id]);
    expect(asked.answer.count).toEqual(answer.count);
    expect(asked.without.visits.map((each: { id: string }) => each.id)).not.toContain(last.id);
  });

  it('are agreed as they were seen, and not otherwise', async () => {
    const { answer } = await plan();
    const chosen = answer.visits.map((each: { id: string }) => each.id);
    expect((await agree(chosen.slice(1))).errors?.[0]?.extensions.faults?.[0]?.field).toBe('visits');
    expect((await listed()).every((each) => each.state === 'possible')).toBe(true);
    expect((await agree(chosen)).data).toEqual({ agreeVisits: chosen.length });
    const agreed = (await listed()).filter((each) => each.state === 'agreed');
    expect(agreed.map((each) => each.id).sort()).toEqual([...chosen].sort());
    expect(agreed[0]!.list!.map((each) => each.id)).toEqual(answer.visits[0].items.map((each: { id: string }) => each.id));
  });

  it('take results line by line, some now and some later, once, all or none of what is sent', async () => {
    const [{ depot }] = await test.dataSource.query(`SELECT DISTINCT depot FROM item WHERE kind = 'hoist'`);
    const [today] = (await listed()).filter((each) => each.onDay === '2027-02-26');
    const hoists: { id: string }[] = await test.dataSource.query(
      `SELECT id FROM item WHERE kind = 'hoist' AND depot = $1 ORDER BY id LIMIT 3`,
      [depot],
    );
    const line = (index: number, more: object = {}) => ({ itemId: hoists[index]!.id, outcome: 'pass', report: `RT-${index}`, ...more });
    const counted = async () => Number((await test.dataSource.query('SELECT count(*) FROM examination'))[0].count);
    const before = await counted();
    const wrong = await enter(today!.id, [line(0), line(1, { report: '' }), { ...line(2), itemId: 'H-999' }]);
    expect(wrong.errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual(['lines[1].report', 'lines[2].itemId']);
    expect(await counted()).toBe(before);
    const key = randomUUID();
    const first = await enter(today!.id, [line(0), line(1, { outcome: 'fail', remark: 'hook worn' })], key);
    expect(first.errors).toBeUndefined();
    expect(first.data.enterVisitResults.visit.entered).toBe(2);
    expect((await enter(today!.id, [line(0), line(1, { outcome: 'fail', remark: 'hook worn' })], key)).data).toEqual(first.data);
    expect(await counted()).toBe(before + 2);
    expect((await enter(today!.id, [line(0)])).errors?.[0]?.extensions.faults?.[0]?.field).toBe('lines[0].itemId');
    const second = await enter(today!.id, [line(2)]);
    expect(
      second.data.enterVisitResults.lines.map((each: { outcome: string; remark: string | null }) => [each.outcome, each.remark]),
    ).toEqual([
      ['pass', null],
      ['fail', 'hook worn'],
      ['pass', null],
    ]);
    const item = await safety.graphql('query($id: ID!) { item(id: $id) { summary { dueState } } }', { id: hoists[1]!.id });
    expect(item.data.item.summary.dueState).toBe('failed');
    const [ahead] = (await listed()).filter((each) => each.onDay > '2027-03-01');
    expect((await enter(ahead!.id, [line(0)])).errors?.[0]?.extensions.faults?.[0]?.field).toBe('lines[0].on');
    expect((await enter(today!.id, [line(0)], undefined, await test.as('system'))).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });

  /** Moves a visit, or without a day cancels it. */
  const change = (id: string, version: number, onDay?: string) =>
    onDay === undefined
      ? safety.graphql('mutation($id: ID!, $version: Int!) { cancelVisit(id: $id, expectedVersion: $version) }', { id, version })
      : safety.graphql(
          'mutation($id: ID!, $version: Int!, $onDay: String!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $version) }',
          { id, version, onDay },
        );

  it('move and are cancelled by who saw them last', async () => {
    const [one] = (await listed()).filter((each) => each.onDay > '2027-03-01' && each.state === 'agreed');
    const move = (version: number) => change(one!.id, version, '2027-03-22');
    expect((await move(one!.version)).data).toEqual({ moveVisit: true });
    expect((await move(one!.version)).errors?.[0]?.extensions.faults?.[0]?.field).toBe('expectedVersion');
    const now = (await listed()).find((each) => each.id === one!.id)!;
    expect(now.onDay).toBe('2027-03-22');
    const { items, visit } = (
      await safety.graphql('query($id: ID!) { visitList(id: $id) { items { id intervals } visit { list } } }', { id: one!.id })
    ).data.visitList as { items: { id: string; intervals: string[] }[]; visit: { list: { id: string; carriesTo: string }[] } };
    const yearly = items.filter((each) => each.intervals.join() === 'P12M').map((each) => each.id);
    expect(yearly.length).toBeGreaterThan(0);
    // Twelve months from the day it was moved to.
    for (const id of yearly) expect(visit.list.find((each) => each.id === id)?.carriesTo).toBe('2028-03-22');
    const other = (await listed()).find((each) => each.id !== one!.id && each.onDay > '2027-03-01')!;
    const onto = await change(one!.id, now.version, other.onDay);
    expect(onto.errors?.[0]?.extensions.faults?.[0]).toMatchObject({
      field: 'onDay',
      wanted: expect.stringContaining(`on ${other.onDay} there is one already`),
    });
    const seen = (await listed()).find((each) => each.entered > 0)!;
    for (const refused of [await change(seen.id, seen.version), await change(seen.id, seen.version, '2027-03-25')])
      expect(refused.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ wanted: expect.stringContaining('3 results are entered') });
    expect((await listed()).find((each) => each.id === seen.id)).toEqual(seen);
    expect((await change(one!.id, now.version)).data).toEqual({ cancelVisit: true });
    expect((await listed()).find((each) => each.id === one!.id)?.state).toBe('cancelled');
  });

  it('of another check are planned by its own dates, and nothing of the examination is touched', async () => {
    const rule = { jurisdiction: 'GB', kinds: ['hoist'], source: 'house rule', status: 'house rule' };
    const add = (rules: object[]) => safety.graphql('mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }', { rules });
    const before = (await plan()).answer;
    const ask = async (check: string) =>
      safety.graphql(
        'query($from: String!, $to: String!, $depot: String, $check: String) { visitSeason(from: $from, to: $to, depot: $depot, withIdle: false, without: [], check: $check) { answer } }',
        { ...season, check },
      );
    expect((await ask('electrical')).data.visitSeason.answer).toMatchObject({ count: { visits: 0 }, notSaved: [] });
    expect((await add([{ ...rule, check: 'electrical', intervals: ['P6M'] }])).errors).toBeUndefined();
    const [hoist]: { id: string }[] = await test.dataSource.query(
      `SELECT item.id FROM item JOIN booking ON item_id = item.id WHERE kind = 'hoist' AND state = 'in service' AND tour_name = 'Lanterns' ORDER BY item.id LIMIT 1`,
    );
    const examination = { on: '2027-02-20', outcome: 'pass', check: 'electrical', examiner: 'E. Volt (invented)', report: 'E-1' };
    const recorded = await safety.graphql('mutation($id: ID!, $e: AnyJson!) { recordExamination(itemId: $id, examination: $e) { item } }', {
      id: hoist?.id,
      e: examination,
    });
    expect(recorded.errors).toBeUndefined();
    const { answer } = (await ask('electrical')).data.visitSeason;
    expect(answer.count.visits).toBe(answer.count.visitsAtLeast);
    // Passed on 20 February: good through 20 August, so that the autumn tour needs it once more, and the spring tour does not.
    const seen = answer.visits.flatMap((visit: any) => visit.items.filter((each: any) => each.id === hoist?.id));
    const lost = answer.notSaved.filter((each: any) => each.id === hoist?.id);
    expect([...seen, ...lost].map((each: any) => each.neededOn)).toEqual(['2027-10-01']);
    expect((await plan()).answer.visits).toEqual(before.visits);
    expect((await ask('chemical')).errors?.[0]?.extensions.faults?.[0]?.field).toBe('check');
  });

  it('by count are told of what was lifted here since its last record', async () => {
    const system = await test.as('system');
    const counted = async () =>
      (await safety.graphql('{ countedUse { itemId basis every since count isDue } }')).data.countedUse as {
        itemId: string;
        basis: string;
        every: number;
        since: string;
        count: number;
        isDue: boolean;
      }[];
    expect(await counted()).toEqual([]);
    const rule = { jurisdiction: 'GB', kinds: ['hoist'], source: 'house rule', status: 'house rule', intervals: [] };
    const added = await safety.graphql('mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }', {
      rules: [{ ...rule, basis: 'lifts', every: 2 }],
    });
    expect(added.errors).toBeUndefined();
    expect(await counted()).toEqual([]);
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    const { id, plan: planned } = made.data.makePackPlan.plan;
    const hangs: any[] = planned.picks.hangs;
    const [first, second] = hangs;
    await test.dataSource.query(`UPDATE pack_plan SET state = 'released', revision = 'A' WHERE id = $1`, [id]);
    const sign = (hang: string, day: string) =>
      test.dataSource.query(
        `INSERT INTO sign_off (id, plan_id, hang, kind, name, remark, signed_at, signed_by) VALUES (gen_random_uuid(), $1, $2, 'inspected', 'Sol Achterberg', '', $3, 'Sol Achterberg')`,
        [id, hang, `${day}T12:00:00Z`],
      );
    const hoist = first.picks[0].hoistSerial;
    const since = (
      await test.dataSource.query(
        `SELECT max(data->>'on') AS since FROM examination WHERE item_id = $1 AND data->>'outcome' = 'pass' AND data->>'check' IS NULL`,
        [hoist],
      )
    )[0].since;
    await sign(first.hang, '2001-01-01');
    expect((await counted()).find((each) => each.itemId === hoist)).toMatchObject({ count: since === null ? 1 : 0, isDue: false, since });
    await sign(first.hang, '2027-03-02');
    await sign(first.hang, '2027-03-04');
    expect((await counted()).find((each) => each.itemId === hoist)).toMatchObject({
      basis: 'lifts',
      every: 2,
      count: since === null ? 3 : 2,
      isDue: true,
    });
    expect((await counted()).some((each) => each.itemId === second.picks[0].hoistSerial)).toBe(false);
  });
});
