import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const write = { 'content-type': 'text/csv', 'x-cartwright': '1' };

/** What people keep on file by hand: models, reports, corrections, rigging systems, people. */
describe('keeping the register', () => {
  let test: TestApp;
  let warehouse: Agent;
  let system: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const upload = (agent: Agent, what: string, body: string, dryRun = false) =>
    agent.fetch(`/api/csv/${what}?dryRun=${dryRun}`, { method: 'POST', headers: write, body });
  const faultOf = async (reply: Response) => ((await reply.json()) as { faults: object[] }).faults[0];

  describe('catalogue models as CSV', () => {
    const kinds = ['boxes', 'grids', 'hoists', 'shackles', 'slings', 'pins', 'looms', 'carts', 'cases', 'trucks'];

    it.each(kinds)('%s: what goes out comes in unchanged, and the example is readable', async (kind) => {
      const text = await (await warehouse.fetch(`/api/csv/models/${kind}`)).text();
      expect(text.split('\r\n').length).toBeGreaterThan(2);
      const answer = (await (await upload(warehouse, `models/${kind}`, text, true)).json()) as object;
      expect(answer).toMatchObject({ added: [], changed: [], faults: [] });
      const example = await (await warehouse.fetch(`/api/csv/models/${kind}/example`)).text();
      expect(((await (await upload(warehouse, `models/${kind}`, example, true)).json()) as { added: string[] }).added).toHaveLength(1);
    });

    it('changes a mass, says from what to what, and leaves the plan visibly stale', async () => {
      await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }');
      const text = await (await warehouse.fetch('/api/csv/models/shackles')).text();
      const heavier = text.replace(',0.62,', ',0.7,');
      expect(heavier).not.toBe(text);
      const answer = (await (await upload(warehouse, 'models/shackles', heavier)).json()) as { changed: object[] };
      expect(answer.changed).toEqual([{ id: 'Bow shackle 3.25', what: 'mass kg 0.62 to 0.7' }]);
      const { data } = await system.graphql(
        '{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { changed { sentence } } } }',
      );
      expect(data.showPage.draft.changed).toContainEqual({ sentence: 'the model Bow shackle 3.25 (shackles) has changed' });
    });

    it.each([
      [
        'a length of zero',
        'model,length mm,mass kg\nLoom,0,1\n',
        'looms',
        { row: 2, column: 'length mm', value: '0', wanted: 'at least 1' },
      ],
      ['a mass below zero', 'model,mass kg\nLink pin 12,-1\n', 'pins', { row: 2, column: 'mass kg', value: '-1', wanted: 'at least 0' }],
      ['no number', 'model,mass kg\nLink pin 12,NaN\n', 'pins', { row: 2, column: 'mass kg', value: 'NaN' }],
      ['an unknown unit', 'model,size,mass kg,rated load\nBow,1,1,3 stone\n', 'shackles', { column: 'rated load', value: '3 stone' }],
      ['a heading that is not one', 'model,weight\nLink pin 12,1\n', 'pins', { row: 1, column: 'weight' }],
    ])('refuses %s by row and column', async (_what, text, kind, fault) => {
      const before = await test.dataSource.query('SELECT count(*) FROM model');
      const reply = await upload(warehouse, `models/${kind}`, text);
      expect(reply.status).toBe(422);
      expect(await faultOf(reply)).toMatchObject(fault);
      expect(await test.dataSource.query('SELECT count(*) FROM model')).toEqual(before);
    });

    it('refuses a box model without the splay that a tour uses', async () => {
      const text = await (await warehouse.fetch('/api/csv/models/boxes')).text();
      const reply = await upload(warehouse, 'models/boxes', text.replaceAll('0 1 2 3 4 5 6 8 10', '0 1'));
      expect(reply.status).toBe(422);
      expect(await faultOf(reply)).toMatchObject({ column: expect.stringContaining('Harbour Lights: tour.shows') });
    });
  });

  it('lets nobody but the safety officer take an item out of quarantine, by CSV neither', async () => {
    await safety.graphql('mutation { quarantine(itemId: "P-005", reason: "dent") { summary { state } } }');
    const row = (await (await warehouse.fetch('/api/csv/items/box')).text())
      .split('\r\n')
      .filter((line, index) => index === 0 || line.startsWith('P-005,'));
    const reply = await upload(warehouse, 'items/box', row.join('\r\n').replace(',quarantined,', ',in repair,'));
    expect(reply.status).toBe(422);
    expect(await faultOf(reply)).toEqual({
      row: 2,
      column: 'state',
      value: 'in repair',
      wanted: 'quarantined: only the safety officer releases it',
    });
  });

  describe('examinations', () => {
    const record = `mutation($examination: AnyJson!, $supersedes: ID, $reason: String) {
      recordExamination(itemId: "H-01", examination: $examination, supersedes: $supersedes, reason: $reason) { summary { dueOn } records { edges { node { id supersededBy examination } } } } }`;

    it('keeps the report with every content of LOLER 1998 Schedule 1, and gives the file back byte for byte', async () => {
      const bytes = Buffer.from('%PDF-1.4 an invented report');
      const kept = await safety.fetch('/api/reports/H-01?name=report%201.pdf', {
        method: 'POST',
        headers: { 'content-type': 'application/pdf', 'x-cartwright': '1' },
        body: bytes,
      });
      const { id } = (await kept.json()) as { id: string };
      const particulars = {
        employer: 'Ferry Lane Hire, 1 Ferry Lane',
        premises: 'the depot',
        manufactured: '2021',
        previousOn: '2026-02-01',
        workingLoadLimit: '2,500 kg',
        firstAfterInstallation: false,
        basis: 'within 12 months',
        statement: 'fit for use as marked',
        dangerousParts: 'none',
        repairsNeeded: 'none',
        tests: '1.25 times the working load limit',
        examinerAddress: '2 Ferry Lane',
        qualifications: 'engineer surveyor',
        employedBy: 'self-employed',
        authenticatedBy: 'B. Ropemaker',
        reportOn: '2027-02-02',
      };
      const { data, errors } = await safety.graphql(record, {
        examination: { on: '2027-02-01', outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-77', reportFile: id, particulars },
      });
      expect(errors).toBeUndefined();
      expect(data.recordExamination.summary.dueOn).toBe('2028-02-01');
      expect(data.recordExamination.records.edges[0].node.examination).toMatchObject({ particulars, reportFile: id });
      const back = await warehouse.fetch(`/api/reports/${id}`);
      expect(back.headers.get('content-type')).toBe('application/pdf');
      expect(Buffer.from(await back.arrayBuffer())).toEqual(bytes);
    });

    it('counts a correction in the place of the record that it corrects, and keeps both', async () => {
      const before = (await safety.graphql('{ item(id: "H-01") { records { edges { node { id supersededBy } } } } }')).data.item.records
        .edges;
      const wrong = before[0].node.id;
      const made = { outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-77' };
      const reason = 'the day was read wrong';
      const { data } = await safety.graphql(record, { examination: { on: '2027-01-15', ...made }, supersedes: wrong, reason });
      expect(data.recordExamination.summary.dueOn).toBe('2028-01-15');
      const { edges } = data.recordExamination.records;
      expect(edges).toHaveLength(before.length + 1);
      expect(edges[1].node).toMatchObject({ id: wrong, supersededBy: edges[0].node.id });
      const again = await safety.graphql(record, { examination: { on: '2027-01-16', ...made }, supersedes: wrong, reason });
      expect(again.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'supersedes', value: wrong });
    });

    it.each([
      ['without an examiner', { examiner: undefined }, 'mistyped', 'examiner'],
      ['without a report', { report: undefined }, 'mistyped', 'report'],
      ['without a reason', {}, '  ', 'reason'],
      ['of a failure without its report', {}, 'it had passed', 'reportFile'],
    ])('refuses a correction %s', async (_what, change, reason, field) => {
      const made = { on: '2027-02-20', outcome: 'fail', examiner: 'B. Ropemaker', report: 'R-78' };
      const failed = (await safety.graphql(record.replaceAll('H-01', 'H-02'), { examination: made })).data.recordExamination;
      const supersedes = failed.records.edges[0].node.id;
      const counted = 'SELECT count(*)::int AS n FROM examination';
      const before = await test.dataSource.query(counted);
      const examination = { ...made, outcome: 'pass', ...change };
      const reply = await safety.graphql(record.replaceAll('H-01', 'H-02'), { examination, supersedes, reason });
      expect(reply.errors?.[0]?.extensions.faults?.map((each) => each.field)).toContain(field);
      expect(await test.dataSource.query(counted)).toEqual(before);
    });

    it.each([
      ['a day to come', { on: '2027-12-01', outcome: 'pass' }, 'on'],
      ['no such day', { on: '2027-02-30', outcome: 'pass' }, 'on'],
      ['another outcome', { on: '2027-02-01', outcome: 'fine' }, 'outcome'],
      ['a report of another item', { on: '2027-02-01', outcome: 'pass', reportFile: '6f9619ff-8b86-4d01-b42d-00c04fc964ff' }, 'reportFile'],
    ])('refuses %s', async (_what, examination, field) => {
      const { errors } = await safety.graphql(record, { examination: { examiner: 'B. Ropemaker', report: 'R-79', ...examination } });
      expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field }] });
    });

    it('is the safety officer’s act alone, and a file of another type is none', async () => {
      expect((await warehouse.graphql(record, { examination: { on: '2027-02-01', outcome: 'pass' } })).errors?.[0]?.extensions.code).toBe(
        'NOT_ALLOWED',
      );
      const reply = await safety.fetch('/api/reports/H-01?name=x', {
        method: 'POST',
        headers: { 'content-type': 'text/html', 'x-cartwright': '1' },
        body: '<b>',
      });
      expect(reply.status).toBe(415);
    });
  });

  it('takes the approval away from a rigging system that is changed, until the safety officer gives it again', async () => {
    const systems = '{ riggingSystems }';
    const { approved, ...data } = (await system.graphql(systems)).data.riggingSystems[0];
    expect(approved).toMatchObject({ by: expect.any(String), on: expect.any(String) });
    const save = 'mutation($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }';
    expect((await system.graphql(save, { system: { ...data, windLimitMps: 10 }, was: data })).errors).toBeUndefined();
    expect((await system.graphql(systems)).data.riggingSystems[0].approved).toBeUndefined();
    expect((await system.graphql(save, { system: { ...data, approved } })).errors?.[0]?.extensions.code).toBe('BAD_INPUT');
    await safety.graphql('mutation($id: ID!) { approveRiggingSystem(id: $id) }', { id: data.id });
    expect((await system.graphql(systems)).data.riggingSystems[0].approved).toEqual({ by: 'Ines Aldous', on: '2027-02-26' });
  });

  it('adds people and changes passwords; the old one and the old session are gone', async () => {
    const add = 'mutation($person: PersonInput!) { addPerson(person: $person) { id role } }';
    const person = { name: 'Tam Orrery', email: 'tam@cartwright.example', role: 'warehouse', password: 'long enough 1' };
    expect((await warehouse.graphql(add, { person })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await system.graphql(add, { person })).data.addPerson.role).toBe('warehouse');
    const twin = { ...person, name: 'Somebody of another name' };
    expect((await system.graphql(add, { person: twin })).errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'email' });
    expect(
      (await system.graphql(add, { person: { ...person, email: 'another@example.org' } })).errors?.[0]?.extensions.faults?.[0],
    ).toMatchObject({
      field: 'name',
    });
    const { errors } = await system.graphql(add, { person: { ...person, email: 'nobody', role: 'owner', password: 'short' } });
    expect(errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual(['email', 'password', 'role']);
    const change = 'mutation($old: String!, $next: String!) { changePassword(old: $old, next: $next) }';
    expect((await warehouse.graphql(change, { old: 'wrong', next: 'quite long enough' })).errors?.[0]?.extensions.faults?.[0]?.field).toBe(
      'old',
    );
    expect((await warehouse.graphql(change, { old: 'test-warehouse', next: 'quite long enough' })).data.changePassword).toBe(true);
    expect((await warehouse.graphql('{ people { id } }')).errors?.[0]?.extensions.code).toBe('NOT_SIGNED_IN');
  });
});
