import { judgeItem } from '#inspection-calendar';
import { addDays } from '#kernel';
import { DataSource } from 'typeorm';
import { KitReader } from '../../apps/api/src/features/register/kit.reader.js';
import { type Agent, type TestApp, startTestApp, testDay } from '../support/test-app.js';

interface Line {
  readonly id: string;
  readonly state: string;
  readonly dueOn: string | null;
  readonly dueState: string;
}

describe('dates kept beside the items', () => {
  let test: TestApp;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    safety = await test.as('safety');
  });
  afterAll(() => test.close());

  const page = async (first: number, after: string | null) =>
    (
      await safety.graphql(
        'query($first: Int, $after: String) { examinedItems(first: $first, after: $after) { pageInfo { hasNextPage endCursor } edges { node { id state dueOn dueState } } } }',
        { first, after },
      )
    ).data.examinedItems;

  async function list(first: number): Promise<Line[]> {
    const lines: Line[] = [];
    for (let after: string | null = null, more = true; more; ) {
      const { edges, pageInfo } = await page(first, after);
      lines.push(...edges.map((edge: { node: Line }) => edge.node));
      ({ hasNextPage: more, endCursor: after } = pageInfo);
    }
    return lines;
  }

  /** Every examined item as the calendar judges it, from all that is on file. */
  async function judged(): Promise<Map<string, { dueOn: string | null; dueState: string }>> {
    const { items, examinationRules } = await test.app.get(KitReader).load(test.app.get(DataSource).manager);
    const lines = items
      .filter((item) => item.state !== 'retired')
      .flatMap((item) => {
        const own = examinationRules.filter((rule) => rule.kinds.includes(item.kind)).flatMap((rule) => rule.intervals);
        const intervals = item.intervals ?? [...new Set(own)];
        if (intervals.length === 0) return [];
        const { id, examinations, events, declaredOn } = item;
        const { dueOn, state } = judgeItem({ id, intervals, examinations, events, declaredOn }, { from: testDay, to: testDay });
        return [[id, { dueOn, dueState: ['in date throughout', 'falls due'].includes(state) ? 'in date' : state }] as const];
      });
    return new Map(lines);
  }

  const expectAgreement = async () => {
    const [lines, wanted] = [await list(7), await judged()];
    expect(new Map(lines.map(({ id, dueOn, dueState }) => [id, { dueOn, dueState }]))).toEqual(wanted);
    expect(lines).toHaveLength(wanted.size);
    return lines;
  };

  it('are those that the calendar judges, each item once, whatever the size of a page', async () => {
    const lines = await expectAgreement();
    expect(lines.length).toBeGreaterThan(20);
    expect(await list(200)).toEqual(lines);
  });

  it('put what may not be used first, then what runs out first', async () => {
    await test.dataSource.query(`UPDATE item SET state = 'quarantined' WHERE id = (SELECT max(id) FROM item WHERE due_state = 'due')`);
    const lines = await list(200);
    const usable = (each: Line) => each.state === 'in service' && each.dueOn !== null;
    const firstUsable = lines.findIndex(usable);
    expect(firstUsable).toBeGreaterThan(0);
    expect(lines.slice(firstUsable).every(usable)).toBe(true);
    const days = lines.slice(firstUsable).map((each) => each.dueOn);
    expect(days).toEqual([...days].sort());
  });

  it('are chosen by depot, kind, tour and days ahead, and leave out nothing that may not be used', async () => {
    await test.dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT gen_random_uuid(), id, 'tour', 'harbour-lights', 'x', '[2027-03-01,2027-03-05)' FROM item WHERE id IN ('H-05', 'H-06')`,
    );
    const all = (await safety.graphql('{ examinedItems(first: 200) { edges { node { id kind depot state dueOn } } } }')).data.examinedItems
      .edges;
    const booked = new Set(
      (await test.dataSource.query(`SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = 'harbour-lights'`)).map(
        (each: { item_id: string }) => each.item_id,
      ),
    );
    const last = addDays(testDay, 90);
    const choices: readonly (readonly [string, string, (each: Line & { kind: string; depot: string }) => boolean])[] = [
      ['days: 90', 'days=90', (each) => each.state !== 'in service' || each.dueOn === null || each.dueOn <= last],
      [
        'depot: "Ferry Lane", kind: "hoist"',
        'depot=Ferry%20Lane&kind=hoist',
        (each) => each.depot === 'Ferry Lane' && each.kind === 'hoist',
      ],
      ['tour: "harbour-lights"', 'tour=harbour-lights', (each) => booked.has(each.id)],
    ];
    for (const [args, search, isChosen] of choices) {
      const wanted = all.map((edge: any) => edge.node).filter(isChosen);
      const { data } = await safety.graphql(`{ examinedItems(first: 200, ${args}) { edges { node { id kind depot state dueOn } } } }`);
      expect(wanted).not.toHaveLength(0);
      expect(data.examinedItems.edges.map((edge: any) => edge.node)).toEqual(wanted);
      const csv = await (await safety.fetch(`/api/csv/due?${search}`)).text();
      expect(
        csv
          .trim()
          .split('\r\n')
          .slice(1)
          .map((row) => row.split(',')[0]),
      ).toEqual(wanted.map((each: Line) => each.id));
    }
    expect((await safety.fetch('/api/csv/due?days=soon')).status).toBe(422);
    expect((await safety.graphql('{ examinedItems(kind: "anvil") { edges { cursor } } }')).errors).toBeDefined();
  });

  it.each([
    [
      'a record',
      `INSERT INTO examination (item_id, data, recorded_by, recorded_at) VALUES ('H-01', '{"on": "2027-02-20", "outcome": "fail"}', 'x', now())`,
    ],
    [
      'a correction',
      `INSERT INTO examination (item_id, data, recorded_by, recorded_at, supersedes) SELECT 'H-01', '{"on": "2027-02-20", "outcome": "pass"}', 'x', now(), max(id) FROM examination WHERE item_id = 'H-01'`,
    ],
    ['an incident', `INSERT INTO incident (item_id, on_day, what) VALUES ('H-02', '2027-02-25', 'dropped')`],
    ['an interval of its own', `UPDATE item SET rest = rest || '{"intervals": ["P1M"]}' WHERE id = 'H-03'`],
    ['a declaration', `UPDATE item SET rest = rest || '{"declaredOn": "2027-01-01", "intervals": ["P9M", "P5Y"]}' WHERE id = 'H-04'`],
    ['a rule', `UPDATE rule SET data = jsonb_set(data, '{intervals}', '["P3M"]') WHERE kind = 'examination'`],
  ])('follow %s that was written past the program', async (_what, statement) => {
    const before = await list(200);
    await test.dataSource.query(statement);
    const after = await expectAgreement();
    expect(after).not.toEqual(before);
  });

  it('end with the declaration that stands in for a first examination', async () => {
    await test.dataSource.query(
      `INSERT INTO item (id, kind, model, state, depot, rest) VALUES ('NEW-1', 'hoist', 'none', 'in service', 'x', '{"declaredOn": "2026-02-26", "intervals": ["P2Y"]}')`,
    );
    const line = async () => (await list(200)).find((each) => each.id === 'NEW-1');
    expect(await line()).toMatchObject({ dueOn: '2028-02-26', dueState: 'in date' });
    const [kept] = await test.dataSource.query(`SELECT due_holds_through::text AS through FROM item WHERE id = 'NEW-1'`);
    expect(kept.through).toBe('2027-02-26');
    await test.dataSource.query(`UPDATE item SET rest = rest || '{"declaredOn": "2026-02-25"}' WHERE id = 'NEW-1'`);
    expect(await line()).toMatchObject({ dueOn: null, dueState: 'no record' });
  });
});
