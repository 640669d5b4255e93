import { randomUUID } from 'node:crypto';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const answer =
  'mutation($through: ID!, $accept: Boolean!) { answerAllProposals(through: $through, accept: $accept, reason: "compared with the papers") { id isGoing total } }';
const state = '{ latestProposalAnswering { id accept isGoing askedBy total answered looked leftBecause } }';

/** Thousands of rows that wait are answered in one signed act, in portions, while others write. */
describe('an answer to all that waits', () => {
  let test: TestApp;
  let [warehouse, system, safety]: Agent[] = [];
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const boxes = async (prefix: string, count: number) => {
    const body = ['serial,model,depot', ...Array.from({ length: count }, (_, index) => `${prefix}-${index},Plover,Ferry Lane`)].join(
      '\r\n',
    );
    const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
    const reply = await warehouse!.fetch('/api/csv/items/box?dryRun=false', { method: 'POST', headers, body });
    expect(reply.status).toBeLessThan(300);
  };
  const newest = async () => (await safety!.graphql('{ proposals { newest totalCount } }')).data.proposals;
  const latest = async () => (await safety!.graphql(state)).data.latestProposalAnswering;
  const ended = async () => {
    for (;;) {
      const one = await latest();
      if (!one.isGoing) return one;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  const accepted = async (prefix: string) =>
    (await test.dataSource.query(`SELECT count(*)::int AS count FROM item WHERE id LIKE $1 AND is_accepted`, [`${prefix}-%`]))[0].count;

  it('accepts them while others write, as one act of the log; what came later still waits', async () => {
    await boxes('MANY', 400);
    await boxes('MORE', 200);
    const { newest: through, totalCount } = await newest();
    const signed = (await safety!.graphql(answer, { through, accept: true })).data.answerAllProposals;
    expect(signed).toMatchObject({ isGoing: true, total: totalCount });
    await boxes('LATER', 3);
    let wrote = 0;
    const write = async (item: string) => {
      for (let round = 0; (await latest()).isGoing; round++) {
        const incident =
          'mutation($item: ID!, $what: String!) { recordIncident(itemId: $item, on: "2027-02-01", what: $what) { summary { id } } }';
        expect((await system!.graphql(incident, { item, what: `looked at ${round}` })).errors).toBeUndefined();
        wrote++;
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
    };
    await Promise.all(['H-01', 'MANY-399', 'P-004'].map(write));
    expect(wrote).toBeGreaterThan(3);
    expect(await ended()).toMatchObject({ id: signed.id, answered: totalCount, looked: totalCount, leftBecause: [] });
    expect([await accepted('MANY'), await accepted('MORE'), await accepted('LATER')]).toEqual([400, 200, 0]);
    const acts = await test.dataSource.query(
      `SELECT act, count(*) FILTER (WHERE row_table = 'proposal')::int AS proposals, count(DISTINCT who) FILTER (WHERE what = 'accepted')::int AS people FROM event
       WHERE act IN (SELECT act FROM event WHERE what = 'accepted') GROUP BY act`,
    );
    expect(acts).toEqual([{ act: signed.id, proposals: totalCount, people: 1 }]);
    expect(await test.dataSource.query(`SELECT sentence FROM event WHERE what = 'accepted' ORDER BY id LIMIT 1`)).toEqual([
      { sentence: `Accepts all ${totalCount} that wait, up to number ${through}, in portions: compared with the papers.` },
    ]);
  }, 60_000);

  it('leaves what a failed examination of the same day speaks against, says why, and accepts the others', async () => {
    const list = 'serial,examined on,kind of examination,outcome,examiner,report\r\nH-02,2027-02-20,,pass,B. Ropemaker,R-1';
    const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
    const reply = await warehouse!.fetch('/api/imports/examinations?dryRun=false', { method: 'POST', headers, body: list });
    const { id } = (await reply.json()) as { id: string };
    const came = async () => (await warehouse!.graphql('query($id: ID!) { csvImport(id: $id) { state } }', { id })).data.csvImport.state;
    while ((await came()) === 'going') await new Promise((resolve) => setTimeout(resolve, 50));
    const fail =
      'mutation { recordExamination(itemId: "H-02", examination: { on: "2027-02-20", outcome: "fail", examiner: "R. Vale", report: "R-9" }) { id } }';
    expect((await safety!.graphql(fail)).errors).toBeUndefined();
    const { newest: through, totalCount } = await newest();
    await safety!.graphql(answer, { through, accept: true });
    const one = await ended();
    expect(one).toMatchObject({ total: totalCount, answered: totalCount - 1, looked: totalCount });
    expect(one.leftBecause).toEqual([
      expect.stringMatching('^H-02: (ids: )?wanted a record by hand: a failed examination of the same day'),
    ]);
    expect(await accepted('LATER')).toBe(3);
    await safety!.graphql(answer, { through, accept: false });
    expect(await ended()).toMatchObject({ accept: false, answered: 1 });
    expect(await newest()).toMatchObject({ totalCount: 0 });
  });

  it('what a process left behind when it died is taken up, and what it had answered is not answered again', async () => {
    await boxes('DEAD', 4);
    const ids: string[] = (await test.dataSource.query(`SELECT id FROM proposal WHERE state = 'proposed' ORDER BY id`)).map(
      (each: any) => each.id,
    );
    const [{ id: officer }] = await test.dataSource.query(`SELECT id FROM account WHERE role = 'safety'`);
    const id = randomUUID();
    await test.dataSource.query(
      `WITH signed AS (INSERT INTO answering (id, is_accepted, reason, asked_by_id, asked_at, total, is_going, alive_until)
         VALUES ($1, true, 'seen', $2, now(), 4, true, now() - interval '1 second'))
       INSERT INTO answering_part (answering_id, number, ids, answered) VALUES ($1, 1, $3, 2), ($1, 2, $4, NULL)`,
      [id, officer, ids.slice(0, 2), ids.slice(2)],
    );
    expect(await ended()).toMatchObject({ id, isGoing: false, answered: 4 });
    expect(await accepted('DEAD')).toBe(2);
  });

  it('is signed by nobody who proposed a part of it, and one at a time', async () => {
    const { newest: through } = await newest();
    await test.dataSource.query(
      `ALTER TABLE proposal DISABLE TRIGGER USER; UPDATE proposal SET proposed_by_id = (SELECT id FROM account WHERE role = 'safety') WHERE id = ${through}; ALTER TABLE proposal ENABLE TRIGGER USER`,
    );
    const { edges, holdsOwn } = (await safety!.graphql('{ proposals { holdsOwn edges { node { id isOwn } } } }')).data.proposals;
    expect([holdsOwn, edges.map((each: any) => each.node.isOwn)]).toEqual([true, [false, true]]);
    const [own] = (await safety!.graphql(answer, { through, accept: true })).errors ?? [];
    expect(own?.extensions.code).toBe('NOT_ALLOWED');
    await test.dataSource.query(
      `UPDATE answering SET is_going = true, alive_until = now() + interval '1 minute' WHERE number = (SELECT max(number) FROM answering)`,
    );
    const [second] = (await safety!.graphql(answer, { through, accept: false })).errors ?? [];
    expect(second?.extensions.faults?.[0]?.wanted).toContain('one answer after the other');
    expect((await warehouse!.graphql(answer, { through, accept: false })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });
});
