import { writeCsv } from '#kernel';
import { modelCells, saveForm } from '../support/register-edits.js';
import { type Agent, type TestApp, agentOf, postListed, startTestApp } from '../support/test-app.js';

const tourId = 'harbour-lights';
const name = 'mutation($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }';
const answer = 'mutation($ids: [ID!]) { answerProposals(ids: $ids, accept: true, reason: "seen on the label") }';
const release =
  'mutation($id: ID!, $despite: String) { releasePackPlan(planId: $id, despite: $despite) { __typename ... on StopRefusal { needsOfficer } ... on PlanView { releasedBy } } }';
const days = { from: '2027-02-25', until: '2027-02-28', timeZone: 'Europe/London', reason: 'at the yard' };

/** Who stands in for the safety officer: within days and a part of the house, never beyond, never for themselves. */
describe('a deputy of the safety officer', () => {
  let test: TestApp;
  let agents: Record<'warehouse' | 'system' | 'safety', Agent>;
  let ids: Map<string, string>;
  let now = '2027-02-26T09:00:00Z';
  let named: string;
  beforeAll(async () => {
    test = await startTestApp({ clock: { now: () => new Date(now) } });
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    agents = { warehouse, system, safety };
    const { people } = (await safety.graphql('{ people { id role } }')).data;
    ids = new Map(people.map((each: { id: string; role: string }) => [each.role, each.id]));
  });
  afterAll(() => test.close());

  const codeOf = (reply: any): string => reply.errors?.[0]?.extensions.code ?? 'done';
  const deputy = (more: object = {}) => ({ personId: ids.get('warehouse'), officerId: ids.get('safety'), ...days, ...more });
  const nameOne = async (more: object = {}, who = agents.safety) => who.graphql(name, { deputy: deputy(more) });
  const end = (id: string, who = agents.safety) => who.graphql(`mutation { withdrawDeputy(id: "${id}") }`);
  const mine = async (who = agents.warehouse) => (await who.graphql('{ me { deputyships { officer depot tourId } } }')).data.me.deputyships;
  const quarantine = (item: string) => agents.system.graphql(`mutation { quarantine(itemId: "${item}", reason: "look") { item } }`);
  const clear = (item: string, who = agents.warehouse) =>
    who.graphql(`mutation { releaseFromQuarantine(itemId: "${item}", reason: "looked at") { item } }`);

  /** A rating raised by somebody, which waits. */
  async function proposal(who: Agent, rated: string): Promise<string> {
    const { catalogueModels } = (await who.graphql('{ catalogueModels { kind model } }')).data;
    const { model } = catalogueModels.find((each: { kind: string }) => each.kind === 'hoists');
    const was = await modelCells(who, 'hoists', model);
    expect(await saveForm(who, 'models/hoists', was, { ...was, 'rated load': rated })).toMatchObject({ status: 200 });
    return (await who.graphql('{ proposals(first: 50) { newest } }')).data.proposals.newest;
  }

  it.each([
    ['themselves', () => ({ personId: ids.get('safety') }), 'personId'],
    ['nobody on file', () => ({ personId: ids.get('safety')?.replace(/.$/, 'x') }), 'personId'],
    ['of somebody who is no officer', () => ({ officerId: ids.get('system') }), 'officerId'],
    ['for days gone by', () => ({ from: '2027-02-01', until: '2027-02-25' }), 'until'],
    ['for two years', () => ({ until: '2029-02-25' }), 'until'],
    ['by no calendar', () => ({ timeZone: 'Mars/Base' }), 'timeZone'],
    ['for a depot and a tour', () => ({ depot: 'Leeds depot', tourId }), 'depot'],
    ['for a depot without kit', () => ({ depot: 'Nowhere' }), 'depot'],
    ['without a reason', () => ({ reason: ' ' }), 'reason'],
  ])('is not named: %s', async (_, more, field) => {
    expect((await nameOne(more())).errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual([field]);
    expect(await test.dataSource.query('SELECT FROM deputy')).toEqual([]);
  });

  it('is named by nobody but a safety officer, and acts only then, with a name that says so', async () => {
    expect(codeOf(await nameOne({}, agents.system))).toBe('NOT_ALLOWED');
    await quarantine('H-07');
    expect(codeOf(await clear('H-07'))).toBe('NOT_ALLOWED');
    named = (await nameOne()).data.nameDeputy;
    expect(await mine()).toEqual([{ officer: 'Ines Aldous', depot: null, tourId: null }]);
    expect(codeOf(await clear('H-07'))).toBe('done');
    const [line] = await test.dataSource.query(
      `SELECT who, person_id AS id FROM event WHERE item_id = 'H-07' AND what <> 'row' ORDER BY event.id DESC LIMIT 1`,
    );
    expect(line).toEqual({ who: expect.stringMatching(/, deputy of Ines Aldous$/), id: ids.get('warehouse') });
  });

  it('is kept by an officer: whoever keeps people takes neither the account nor the name, today or before the first day', async () => {
    const id = ids.get('warehouse');
    const tries = [`renewPassword(id: "${id}", password: "taken over by")`, `renamePerson(id: "${id}", name: "Ada Wold") { name }`];
    const refused = async () => {
      for (const each of tries) expect(codeOf(await agents.system.graphql(`mutation { ${each} }`))).toBe('NOT_ALLOWED');
    };
    await refused();
    now = '2027-02-01T09:00:00Z';
    await refused();
    now = '2027-02-26T09:00:00Z';
    expect(await mine()).toHaveLength(1);
  });

  it('names no deputies, makes no officers, and is not let further by what else is asked in the same request', async () => {
    expect(codeOf(await nameOne({ personId: ids.get('system') }, agents.warehouse))).toBe('NOT_ALLOWED');
    await quarantine('H-08');
    const both = await agents.warehouse.graphql(
      `mutation($deputy: DeputyInput!) { releaseFromQuarantine(itemId: "H-08", reason: "looked at") { item } nameDeputy(deputy: $deputy) }`,
      { deputy: deputy({ personId: ids.get('system') }) },
    );
    expect(codeOf(both)).toBe('NOT_ALLOWED');
    expect(await test.dataSource.query('SELECT count(*)::int AS n FROM deputy')).toEqual([{ n: 1 }]);
    expect(codeOf(await agents.warehouse.graphql(`mutation { answerProposal(id: "${ids.get('system')}", accept: true) }`))).toBe(
      'NOT_ALLOWED',
    );
  });

  it('is not named twice for the same days and part; withdrawn, anew', async () => {
    const first = (await nameOne({ from: '2027-03-10', until: '2027-03-11' })).data.nameDeputy;
    const again = await nameOne({ from: '2027-03-10', until: '2027-03-11' });
    expect(again.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'from', wanted: expect.stringContaining('named already') });
    await end(first);
    expect(codeOf(await end((await nameOne({ from: '2027-03-10', until: '2027-03-11' })).data.nameDeputy))).toBe('done');
  });

  it('whose password goes back to one that somebody else gave gets one from the officer, and acts once the own one is chosen', async () => {
    const person = { name: 'Pim Sorrel', email: 'pim@cartwright.example', role: 'warehouse', password: 'from the system tech' };
    const { id } = (await agents.system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person })).data
      .addPerson;
    const signIn = async (password: string): Promise<Agent> => {
      const reply = await postListed(test.address, 'SignIn', { email: person.email, password });
      return agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
    };
    const choose = (who: Agent, next: string) => who.graphql(`mutation { changePassword(old: "", next: "${next}") }`);
    // Whoever gave the password signs in with it first, and chooses the next.
    await choose(await signIn(person.password), 'chosen by the tech');
    const tech = await signIn('chosen by the tech');
    expect((await nameOne({ personId: id })).errors?.[0]?.extensions.faults).toEqual([
      expect.objectContaining({ field: 'password', wanted: expect.stringContaining('from you') }),
    ]);
    const given = (await nameOne({ personId: id, password: 'from the officer' })).data.nameDeputy;
    await quarantine('H-07');
    expect(codeOf(await clear('H-07', tech))).toBe('NOT_SIGNED_IN');
    expect(codeOf(await clear('H-07', await signIn('chosen by the tech')))).toBe('NOT_SIGNED_IN');
    const handed = await signIn('from the officer');
    expect(codeOf(await clear('H-07', handed))).toBe('NEW_PASSWORD_WANTED');
    await choose(handed, 'chosen by myself');
    const own = await signIn('chosen by myself');
    expect(codeOf(await clear('H-07', own))).toBe('done');
    expect(codeOf(await agents.system.graphql(`mutation { renewPassword(id: "${id}", password: "taken over by") }`))).toBe('NOT_ALLOWED');
    // The own one holds from then on: named again, nothing has to be given.
    await end(given);
    const again = (await nameOne({ personId: id })).data.nameDeputy;
    expect(await mine(own)).toHaveLength(1);
    await end(again);
    // Until somebody else has given one.
    expect(codeOf(await agents.system.graphql(`mutation { renewPassword(id: "${id}", password: "given once more") }`))).toBe('done');
    await choose(await signIn('given once more'), 'chosen once more');
    expect((await nameOne({ personId: id })).errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual(['password']);
  });

  it('accepts what others propose, and never what they proposed themselves', async () => {
    const own = (await nameOne({ personId: ids.get('system') })).data.nameDeputy;
    const of = await proposal(agents.system, '9000 kg');
    expect(codeOf(await agents.system.graphql(answer, { ids: [of] }))).toBe('NOT_ALLOWED');
    expect((await agents.warehouse.graphql(answer, { ids: [of] })).data.answerProposals).toBe(1);
    const [line] = await test.dataSource.query(`SELECT who FROM event WHERE what = 'accepted' ORDER BY id DESC LIMIT 1`);
    expect(line.who).toMatch(/, deputy of Ines Aldous$/);
    await end(own);
  });

  it('releases over a stop what others planned, and nothing that they planned', async () => {
    const { tour, version } = (await agents.system.graphql(`{ tour(id: "${tourId}") { version tour } }`)).data.tour;
    const save = 'mutation($tour: TourJson!, $version: Int) { saveTour(tour: $tour, expectedVersion: $version) { version } }';
    expect((await agents.system.graphql(save, { tour: { ...tour, jurisdictions: ['NO'] }, version })).errors).toBeUndefined();
    const make = `mutation { makePackPlan(tourId: "${tourId}", showId: "quayside") { ... on PlanMade { plan { id } } } }`;
    const { id } = (await agents.system.graphql(make)).data.makePackPlan.plan;
    const own = (await nameOne({ personId: ids.get('system') })).data.nameDeputy;
    expect(codeOf(await agents.system.graphql(release, { id, despite: 'fine' }))).toBe('NOT_ALLOWED');
    await end(own);
    expect((await agents.system.graphql(release, { id, despite: 'fine' })).data.releasePackPlan).toMatchObject({ needsOfficer: true });
    const { releasePackPlan: released } = (await agents.warehouse.graphql(release, { id, despite: 'asked at home' })).data;
    expect(released).toEqual({ __typename: 'PlanView', releasedBy: expect.stringMatching(/, deputy of Ines Aldous$/) });
  });

  it('ends with the last day, by its own calendar, and at once when withdrawn', async () => {
    now = '2027-02-28T23:59:59Z';
    expect(await mine(await test.as('warehouse'))).toHaveLength(1);
    now = '2027-03-01T00:00:00Z';
    expect(await mine(await test.as('warehouse'))).toEqual([]);
    now = '2027-02-26T09:00:00Z';
    await quarantine('H-07');
    expect(codeOf(await end(named, agents.system))).toBe('NOT_ALLOWED');
    expect(codeOf(await end(named))).toBe('done');
    expect(await mine()).toEqual([]);
    expect(codeOf(await clear('H-07'))).toBe('NOT_ALLOWED');
    const put = `UPDATE deputy SET withdrawn_at = NULL, withdrawn_by_id = NULL WHERE id = $1`;
    await expect(test.dataSource.query(put, [named])).rejects.toThrow(/kept as it is/);
    expect(codeOf(await end(named))).toBe('NOT_ALLOWED');
  });

  it('of one depot or one tour acts there alone', async () => {
    const [{ depot }] = await test.dataSource.query(`SELECT depot FROM item WHERE id = 'H-07'`);
    await test.dataSource.query(`UPDATE item SET depot = 'Elsewhere' WHERE id = 'H-09'`);
    await quarantine('H-09');
    const ofDepot = (await nameOne({ depot })).data.nameDeputy;
    expect([codeOf(await clear('H-07')), codeOf(await clear('H-09'))]).toEqual(['done', 'NOT_ALLOWED']);
    expect(codeOf(await agents.warehouse.graphql(answer, { ids: [await proposal(agents.system, '9500 kg')] }))).toBe('NOT_ALLOWED');
    await end(ofDepot, agents.warehouse);
    const ofTour = (await nameOne({ tourId })).data.nameDeputy;
    const place = (id: string) => `mutation { answerPlace(tourId: "${id}", place: "NO", rulesOf: "GB", reason: "home rules") { home } }`;
    expect([codeOf(await agents.warehouse.graphql(place(tourId))), codeOf(await agents.warehouse.graphql(place('another')))]).toEqual([
      'done',
      'NOT_ALLOWED',
    ]);
    await end(ofTour);
  });

  it('of another officer waits for a second signature, and the name of an officer who leaves goes out of what deputies signed', async () => {
    const person = { name: 'Ada Thorne', email: 'ada@cartwright.example', role: 'warehouse', password: 'given by another' };
    const { id } = (await agents.system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person })).data
      .addPerson;
    await agents.system.graphql(`mutation { proposeOfficer(id: "${id}") }`);
    expect((await nameOne({ personId: id })).errors?.[0]?.extensions.faults?.map((each) => each.field)).toEqual(['password']);
    await agents.safety.graphql(`mutation { answerProposal(id: "${id}", accept: true, password: "from the officer") }`);
    await postListed(test.address, 'SignIn', { ...person, password: 'from the officer' }).then(async (reply) => {
      const first = agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
      await first.graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
    });
    const reply = await postListed(test.address, 'SignIn', { email: person.email, password: 'chosen by myself' });
    const second = agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
    const waits = (await nameOne({ officerId: id })).data.nameDeputy;
    expect(await mine()).toEqual([]);
    const sign = (who: Agent) => who.graphql(`mutation { signDeputy(id: "${waits}") }`);
    expect(codeOf(await sign(agents.safety))).toBe('NOT_ALLOWED');
    expect(codeOf(await sign(second))).toBe('done');
    expect(await mine()).toMatchObject([{ officer: 'Ada Thorne' }]);
    await quarantine('H-07');
    await clear('H-07');
    expect(codeOf(await agents.safety.graphql(`mutation { removePerson(id: "${id}") }`))).toBe('done');
    expect(await mine()).toEqual([]);
    const left = await test.dataSource.query(`SELECT DISTINCT who FROM event WHERE who LIKE '%deputy of%' ORDER BY 1`);
    expect([...new Set(left.map((each: { who: string }) => each.who.replace(/^.*, /, '')))]).toEqual([
      'deputy of Ines Aldous',
      expect.stringMatching(/deputy of Person \d+ \(left\)/),
    ]);
  });

  it('brings in an examiner’s list with the officer’s hand where the whole house is theirs; of a part it waits', async () => {
    for (const { id } of await test.dataSource.query(`SELECT id FROM deputy WHERE withdrawn_at IS NULL`)) await end(id);
    const send = async (report: string) => {
      const list = writeCsv([
        ['serial', 'pieces', 'examined on', 'kind of examination', 'outcome', 'examiner', 'report', 'next no later than', 'remarks'],
        ['H-03', '', '2027-02-20', '', 'pass', 'B. Ropemaker', report, '', ''],
      ]);
      const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
      const reply = await agents.warehouse.fetch('/api/imports/examinations?dryRun=false', { method: 'POST', headers, body: list });
      const { id } = (await reply.json()) as { id: string };
      for (;;) {
        const one = (await agents.warehouse.graphql('query($id: ID!) { csvImport(id: $id) { state outcome { added waiting } } }', { id }))
          .data.csvImport;
        if (one.state !== 'going') return one.outcome;
        await new Promise((soon) => setTimeout(soon, 50));
      }
    };
    const keptBy = async (report: string) =>
      (await test.dataSource.query(`SELECT recorded_by AS by FROM examination WHERE data->>'report' = $1`, [report])).map(
        (each: any) => each.by,
      );
    expect(await send('L-1')).toEqual({ added: 1, waiting: 1 });
    const part = (await nameOne({ depot: 'Ferry Lane' })).data.nameDeputy;
    expect(await send('L-2')).toEqual({ added: 1, waiting: 1 });
    await end(part);
    const whole = (await nameOne()).data.nameDeputy;
    expect(await send('L-3')).toEqual({ added: 1, waiting: 0 });
    await end(whole);
    expect(await send('L-4')).toEqual({ added: 1, waiting: 1 });
    expect([await keptBy('L-1'), await keptBy('L-2'), await keptBy('L-4')]).toEqual([[], [], []]);
    expect(await keptBy('L-3')).toEqual([expect.stringMatching(/, deputy of Ines Aldous$/)]);
  });
});
