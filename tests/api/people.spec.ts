import { renewAtTheMachine } from '../../apps/api/src/features/account/renew-at-the-machine.js';
import { hashPassword } from '../../apps/api/src/platform/sign-in/password.js';
import { openEventStream } from '../support/event-stream.js';
import { type Agent, type TestApp, agentOf, postListed, startTestApp, testDay } from '../support/test-app.js';

interface OnFile {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly state: string;
}

/** People kept by other people: nobody gets in or up alone, and nobody is locked out by a stranger. */
describe('people', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp({ config: { trustProxy: 1 } });
    [system, safety] = await Promise.all([test.as('system'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const people = async (): Promise<OnFile[]> => (await safety.graphql('{ people { id name role state } }')).data.people;
  const idOf = async (name: string): Promise<string> => (await people()).find((each) => each.name === name)?.id ?? 'nobody';
  const signIn = async (email: string, password: string, address = '192.0.2.1') => {
    const reply = await postListed(test.address, 'SignIn', { email, password }, { 'x-forwarded-for': address });
    const { data } = (await reply.json()) as { data: { signIn: { __typename: string; sentence?: string } } };
    const cookie = (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    return { is: data.signIn.sentence ?? data.signIn.__typename, agent: agentOf(test.address, cookie) };
  };
  const add = async (name: string, role = 'warehouse'): Promise<{ id: string; email: string; agent: Agent }> => {
    const email = `${name.toLowerCase().replaceAll(' ', '.')}@cartwright.example`;
    const mutation = 'mutation($person: PersonInput!) { addPerson(person: $person) { id } }';
    const { data } = await system.graphql(mutation, { person: { name, email, role, password: 'given by another' } });
    const first = await signIn(email, 'given by another');
    await first.agent.graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
    return { id: data.addPerson.id, email, agent: (await signIn(email, 'chosen by myself')).agent };
  };
  const act = (who: Agent, words: string) => who.graphql(`mutation { ${words} }`);
  const accept = (id: string) => `answerProposal(id: "${id}", accept: true, password: "from the officer")`;
  const addNamed = (name: string, email = 'second@cartwright.example') =>
    system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', {
      person: { name, email, role: 'warehouse', password: 'given by another' },
    });
  const faultOf = (reply: Awaited<ReturnType<typeof addNamed>>) => reply.errors?.[0]?.extensions.faults?.[0]?.field ?? codeOf(reply);
  const codeOf = (reply: { errors?: { extensions: { code: string } }[] }) => reply.errors?.[0]?.extensions.code ?? 'done';

  it('a password from another person lets in once, and only to choose the own one', async () => {
    await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', {
      person: { name: 'Odo Finch', email: 'odo@cartwright.example', role: 'warehouse', password: 'given by another' },
    });
    const both = await Promise.all([0, 1].map(() => signIn('odo@cartwright.example', 'given by another')));
    expect(both.map((each) => each.is).filter((is) => is === 'Account')).toHaveLength(1);
    const { agent } = both.find((each) => each.is === 'Account')!;
    expect(codeOf(await agent.graphql('{ items { totalCount } }'))).toBe('NEW_PASSWORD_WANTED');
    expect((await agent.fetch('/api/csv/items/box')).status).toBe(403);
    expect(codeOf(await act(agent, 'changePassword(old: "", next: "chosen by myself")'))).toBe('done');
    const own = await signIn('odo@cartwright.example', 'chosen by myself');
    expect((await own.agent.graphql('{ items { totalCount } }')).errors).toBeUndefined();
  });

  it('is not taken where it is short or guessed among the first, whoever gives it', async () => {
    const { id, agent } = await add('Nan Brock');
    for (const password of ['short', 'Password123']) {
      const given = await act(system, `renewPassword(id: "${id}", password: "${password}")`);
      const own = await act(agent, `changePassword(old: "chosen by myself", next: "${password}")`);
      expect([given, own].map((each) => each.errors?.[0]?.extensions.faults?.[0]?.field)).toEqual(['password', 'next']);
    }
  });

  it('what is told to an open page ends at once with its session, at every API, and not with that of another', async () => {
    const [gone, stays] = [await add('Gil Wren'), await add('Ida Wren')];
    const other = await startTestApp({ beside: test, config: { trustProxy: 1 } });
    try {
      const streams = await Promise.all([gone, stays].map(({ agent }) => openEventStream(agentOf(other.address, agent.cookie))));
      const [ofGone, ofStays] = streams as [(typeof streams)[0], (typeof streams)[0]];
      await Promise.all(streams.map((each) => each.opened()));
      expect(codeOf(await act(system, `disablePerson(id: "${gone.id}")`))).toBe('done');
      await act(system, 'quarantine(itemId: "P-001", reason: "Not for them") { item }');
      expect(await ofGone.ended()).not.toContain('item/P-001');
      await ofStays.until('item/P-001');
      const again = await signIn(stays.email, 'chosen by myself');
      await act(again.agent, 'endSessions');
      await ofStays.ended();
    } finally {
      await other.close();
    }
  });

  it('the only safety officer gets a password from whoever holds the login of the database, once, with a line in the log', async () => {
    const officer = (await safety.graphql('{ me { name email } }')).data.me as { name: string; email: string };
    const other = await startTestApp();
    try {
      const session = await other.as('safety');
      const hash = await hashPassword('from the machine');
      const give = (email: string) =>
        other.dataSource.transaction((manager) => renewAtTheMachine(manager, email, hash, new Date(`${testDay}T12:00:00Z`)));
      expect(await give('nobody@cartwright.example')).toBeNull();
      expect(await give(officer.email)).toBe(officer.name);
      expect((await session.graphql('{ me { name } }')).data?.me ?? null).toBeNull();
      const reply = await postListed(other.address, 'SignIn', { email: officer.email, password: 'from the machine' });
      expect(((await reply.json()) as { data: { signIn: { __typename: string } } }).data.signIn.__typename).toBe('Account');
      const lines: { who: string; sentence: string }[] = await other.dataSource.query(
        `SELECT who, sentence FROM event WHERE what = 'person' ORDER BY id DESC LIMIT 1`,
      );
      expect(lines[0]).toMatchObject({ who: 'At the machine', sentence: expect.stringContaining(officer.name) });
    } finally {
      await other.close();
    }
  });

  it('of guesses at one moment no more than five are checked, at two APIs together; others are not locked out', async () => {
    const other = await startTestApp({ beside: test, config: { trustProxy: 1 } });
    try {
      const { email } = await add('Pell Harrow');
      const guess = async (index: number) => {
        const reply = await postListed(
          [test, other][index % 2]!.address,
          'SignIn',
          { email, password: `guess ${index}` },
          { 'x-forwarded-for': '198.51.100.7' },
        );
        return ((await reply.json()) as { data: { signIn: { sentence: string } } }).data.signIn.sentence;
      };
      const answers = await Promise.all(Array.from({ length: 30 }, (_, index) => guess(index)));
      expect(answers.filter((each) => each.startsWith('No account'))).toHaveLength(5);
      expect(answers.filter((each) => each.startsWith('Too many tries'))).toHaveLength(25);
      expect((await signIn(email, 'chosen by myself', '198.51.100.7')).is).toContain('Too many tries');
      expect((await signIn(email, 'chosen by myself', '192.0.2.1')).is).toBe('Account');
    } finally {
      await other.close();
    }
  });

  it('an address that tries many names is stopped as one, and makes no row for each; counts of others stay', async () => {
    const { email } = await add('Wim Sallow');
    for (let turn = 0; turn < 6; turn++) await signIn(email, 'wrong', '203.0.113.5');
    await test.dataSource.query(`UPDATE sign_in_try SET count = 100, wait_until = until WHERE key LIKE 'address %'`);
    const rows = async () => Number((await test.dataSource.query('SELECT count(*) FROM sign_in_try'))[0].count);
    const before = await rows();
    for (let turn = 0; turn < 20; turn++)
      expect((await signIn(`nobody${turn}@cartwright.example`, 'x', '203.0.113.5')).is).toContain('Too many');
    expect(await rows()).toBe(before);
    await test.dataSource.query(`UPDATE sign_in_try SET count = 0, wait_until = NULL WHERE key LIKE 'address %'`);
    expect((await signIn(email, 'chosen by myself', '203.0.113.5')).is).toContain('Too many');
  });

  it('a disabled person is out at once, on every device', async () => {
    const { id, email, agent } = await add('Ren Tully');
    expect(codeOf(await act(system, `disablePerson(id: "${id}")`))).toBe('done');
    expect(codeOf(await agent.graphql('{ items { totalCount } }'))).toBe('NOT_SIGNED_IN');
    expect((await signIn(email, 'chosen by myself')).is).toContain('No account');
    expect(codeOf(await act(system, `enablePerson(id: "${id}")`))).toBe('done');
    expect((await signIn(email, 'chosen by myself')).is).toBe('Account');
  });

  it('a safety officer is made by two, and kept by another officer only', async () => {
    const { id, agent } = await add('Mara Sedge');
    expect(codeOf(await act(system, `changeRole(id: "${id}", role: "safety")`))).toBe('BAD_INPUT');
    expect(codeOf(await act(system, `proposeOfficer(id: "${id}")`))).toBe('done');
    expect(codeOf(await act(system, `answerProposal(id: "${id}", accept: true)`))).toBe('NOT_ALLOWED');
    await expect(test.dataSource.query(`UPDATE account SET role = 'safety' WHERE id = $1`, [id])).rejects.toThrow(/made by two/);
    expect(codeOf(await act(safety, `answerProposal(id: "${id}", accept: true)`))).toBe('BAD_INPUT');
    expect(codeOf(await act(safety, accept(id)))).toBe('done');
    expect(codeOf(await agent.graphql('{ items { totalCount } }'))).toBe('NOT_SIGNED_IN');
    expect((await people()).find((each) => each.id === id)?.role).toBe('safety');
    expect(codeOf(await act(system, `renewPassword(id: "${id}", password: "taken over by")`))).toBe('NOT_ALLOWED');
    const second = await add('Tove Marsh');
    expect(codeOf(await act(safety, `proposeOfficer(id: "${second.id}")`))).toBe('done');
    expect(codeOf(await act(safety, accept(second.id)))).toBe('NOT_ALLOWED');
    expect(codeOf(await act(safety, `disablePerson(id: "${await idOf('Sol Achterberg')}")`))).toBe('NOT_ALLOWED');
  });

  it('a password that who proposed an officer knows lets nobody in once that officer is accepted', async () => {
    const known = await add('Bo Larch');
    const given = (await addNamed('Cy Alder', 'cy@cartwright.example')).data.addPerson.id as string;
    await act(system, `proposeOfficer(id: "${known.id}")`);
    await act(system, `proposeOfficer(id: "${given}")`);
    expect(codeOf(await act(system, `renewPassword(id: "${given}", password: "renewed by the tech")`))).toBe('done');
    const before = await signIn('cy@cartwright.example', 'renewed by the tech');
    expect(before.is).toBe('Account');
    for (const id of [known.id, given]) expect(codeOf(await act(safety, accept(id)))).toBe('done');
    expect((await signIn(known.email, 'chosen by myself')).is).toContain('No account');
    expect((await signIn('cy@cartwright.example', 'renewed by the tech')).is).toContain('No account');
    expect(codeOf(await act(before.agent, 'changePassword(old: "", next: "chosen by the tech")'))).toBe('NOT_SIGNED_IN');
    const handed = await signIn(known.email, 'from the officer');
    expect(codeOf(await handed.agent.graphql('{ items { totalCount } }'))).toBe('NEW_PASSWORD_WANTED');
    expect((await signIn(known.email, 'from the officer')).is).toContain('No account');
  });

  it.each([
    ['whatever its capitals and spaces', ' ines   ALDOUS'],
    ['without its space', 'InesAldous'],
    ['with an accent', 'In\u00e9s Aldous'],
    ['with a character of no width', 'Ines\u200b Aldous'],
    ['with a turn of direction', '\u202eInes Aldous'],
    ['with a letter that fills no place', 'Ines Aldous\u3164'],
    ['with a Cyrillic letter', 'In\u0435s Aldous'],
    ['with a digit for a letter', '1nes A1dous'],
    ['with a stroke for a letter', '|nes Aldous'],
    ['with a letter for another that looks like it', 'lnes AIdous'],
    ['with a dot', 'Ines. Aldous'],
    ['with an Armenian letter', 'Ines Ald\u0585us'],
    ['as deputy of', 'Zed, deputy of Ines Aldous'],
  ])('nobody has the name of another, %s: added or renamed', async (_, name) => {
    const id = await idOf('Wren Castellan');
    expect(faultOf(await addNamed(name))).toBe('name');
    const rename = 'mutation($id: ID!, $name: String!) { renamePerson(id: $id, name: $name) { name } }';
    expect(faultOf(await system.graphql(rename, { id, name }))).toBe('name');
  });

  it('a name of another script that looks the same is taken; an email has no characters that nobody sees', async () => {
    expect(faultOf(await addNamed('\u0410\u043d\u043e\u043a \u0412\u0435\u0440', 'anok@cartwright.example'))).toBe('done');
    expect(faultOf(await addNamed('AHOK BEP'))).toBe('name');
    expect(faultOf(await addNamed('Ada Ferrow', 'ada\u200b@cartwright.example'))).toBe('email');
  });

  it('a name of one other script is a name; an officer is renamed by an officer only, and nobody renames themselves', async () => {
    expect(faultOf(await addNamed('\u0418\u0440\u0438\u043d\u0430', 'irina@cartwright.example'))).toBe('done');
    const rename = (who: Agent, id: string) => act(who, `renamePerson(id: "${id}", name: "Ada Wold") { name }`);
    const [officer, tech] = [await idOf('Ines Aldous'), await idOf('Sol Achterberg')];
    expect(codeOf(await rename(system, officer))).toBe('NOT_ALLOWED');
    expect(codeOf(await rename(system, tech))).toBe('NOT_ALLOWED');
    expect(codeOf(await rename(safety, officer))).toBe('NOT_ALLOWED');
    expect(codeOf(await rename(safety, tech))).toBe('done');
    expect((await people()).find((each) => each.id === tech)?.name).toBe('Ada Wold');
  });

  it('lists where somebody is signed in, and signs out one or all others', async () => {
    const { email, agent } = await add('Una Brook');
    await Promise.all([signIn(email, 'chosen by myself'), signIn(email, 'chosen by myself')]);
    const list = async () => (await agent.graphql('{ sessions { id isThis } }')).data.sessions as { id: string; isThis: boolean }[];
    const [one] = (await list()).filter((each) => !each.isThis);
    expect(await list()).toHaveLength(3);
    await act(agent, `endSessions(id: "${one!.id}")`);
    expect(await list()).toHaveLength(2);
    await act(agent, 'endSessions');
    expect(await list()).toEqual([{ id: expect.any(String), isThis: true }]);
  });

  it('others write while the name of a person who leaves goes out of the words', async () => {
    const { id, agent } = await add('Bram Ossel');
    await agent.graphql('mutation { reportDefect(itemId: "P-002", reason: "a dent, seen by Bram Ossel") { summary { id } } }');
    await act(system, `disablePerson(id: "${id}")`);
    await test.dataSource
      .transaction(async (manager) => {
        await manager.query('SELECT leave_house($1)', [id]);
        // Until this transaction ends whatever it locks is locked.
        const { errors } = await system.graphql(
          'mutation { recordIncident(itemId: "P-003", on: "2027-02-01", what: "fell") { summary { id } } }',
        );
        expect(errors).toBeUndefined();
        await manager.query(`INSERT INTO event (at, who, what, sentence) VALUES (now(), 'x', 'noted', 'Bram Ossel was here')`);
        const [{ count }] = await manager.query(
          `SELECT count(*)::int AS count FROM event WHERE person_id = $1 AND event::text LIKE '%Ossel%'`,
          [id],
        );
        expect(count).toBe(0);
        await expect(manager.query(`UPDATE event SET at = now() WHERE person_id = $1`, [id])).rejects.toThrow('append only');
      })
      .catch((fault: Error) => expect(fault.message).toMatch(/aborted|append only/));
    const named = await test.dataSource.query(`SELECT count(*)::int AS count FROM event WHERE sentence LIKE '%Bram Ossel%'`);
    expect(named[0].count).toBeGreaterThan(0);
  });

  it('takes the name of a person who leaves out of all words, and keeps what was done under a number', async () => {
    const { id, agent } = await add('Quill Barrow');
    await agent.graphql('mutation { reportDefect(itemId: "P-001", reason: "a dent") { summary { id } } }');
    await agent.graphql('mutation { quarantine(itemId: "P-001", reason: "a dent") { summary { id } } }');
    await test.dataSource.query(
      `INSERT INTO place_answer (tour_id, place, rules_of, because, decided_by, decided_by_id, decided_at) VALUES ('harbour-lights', 'FR', 'GB', 'stricter', 'Quill Barrow', $1, now())`,
      [id],
    );
    const made = await act(system, 'makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } }');
    await test.dataSource.query(
      `INSERT INTO sign_off (id, plan_id, hang, kind, name, remark, signed_at, signed_by) VALUES (gen_random_uuid(), $1, 'Centre', 'inspected', 'Quill Barrow', '', now(), 'Sol Achterberg')`,
      [(made as { data: { makePackPlan: { plan: { id: string } } } }).data.makePackPlan.plan.id],
    );
    const acts = () => test.dataSource.query('SELECT count(*)::int AS count FROM event WHERE person_id = $1', [id]);
    const before = await acts();
    expect(before[0].count).toBeGreaterThan(0);
    expect(codeOf(await act(system, `removePerson(id: "${id}")`))).toBe('done');
    expect(await acts()).toEqual(before);
    expect((await people()).find((each) => each.id === id)).toMatchObject({ name: 'Person 1 (left)', state: 'left' });
    const tables: { name: string }[] = await test.dataSource.query(`SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public'`);
    const holding: string[] = [];
    for (const { name } of tables) {
      const [{ count }] = await test.dataSource.query(
        `SELECT count(*)::int AS count FROM "${name}" AS each WHERE each::text ~* 'quill.barrow'`,
      );
      if (count > 0) holding.push(name);
    }
    expect(holding).toEqual([]);
    await expect(test.dataSource.query(`UPDATE event SET who = 'x' WHERE person_id = $1`, [id])).rejects.toThrow();
    expect(codeOf(await agent.graphql('{ items { totalCount } }'))).toBe('NOT_SIGNED_IN');
  });
});
