import { type Agent, type TestApp, agentOf, passwordOf, postListed, startTestApp } from '../support/test-app.js';

const people = {
  name: 'Tamsin Vane',
  email: 'Tamsin@example.org',
  password: passwordOf('system').padEnd(12, '.'),
  officerName: 'Osric Bell',
  officerEmail: 'osric@example.org',
  officerPassword: 'first password',
};

describe('the first people of an empty house', () => {
  let test: TestApp;
  let officer: Agent;
  beforeAll(async () => {
    test = await startTestApp({ demo: false, config: { setUpCode: 'k4codek4' } });
  });
  afterAll(() => test.close());

  const send = async (variables: object, name = 'SetUp') => (await (await postListed(test.address, name, variables)).json()) as any;
  const faultsOf = (reply: any) => reply.errors[0].extensions.faults.map((each: any) => each.field);
  const isToSetUp = async () => (await send({}, 'ToSetUp')).data.isToSetUp;
  const signIn = async (email: string, password: string) => {
    const reply = await postListed(test.address, 'SignIn', { email, password });
    return agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0]!);
  };

  it('are two, each said what is wrong with them', async () => {
    expect(await isToSetUp()).toBe(true);
    expect(faultsOf(await send({ code: 'k4codek4', people: { ...people, officerPassword: 'short', officerEmail: 'nowhere' } }))).toEqual([
      'officerEmail',
      'officerPassword',
    ]);
    const alone = { ...people, officerName: 'tamsin  vane', officerEmail: people.email };
    expect(faultsOf(await send({ code: 'k4codek4', people: alone }))).toEqual(['officerName', 'officerEmail']);
    const shared = { ...people, officerPassword: people.password, name: 'Person 3 (left)' };
    expect(faultsOf(await send({ code: 'k4codek4', people: shared }))).toEqual(['name', 'officerPassword']);
  });

  it('have to wait after five wrong codes, with the right one too', async () => {
    await test.dataSource.query('DELETE FROM sign_in_try');
    // Whoever tries to sign in, by whatever name, is not counted with it.
    for (let number = 0; number < 8; number++) await postListed(test.address, 'SignIn', { email: 'set-up', password: 'guess' });
    for (let number = 1; number <= 5; number++) expect(faultsOf(await send({ code: `guess ${number}`, people }))).toEqual(['code']);
    const sixth = await send({ code: 'k4codek4', people });
    expect(sixth.errors[0].extensions.faults).toEqual([
      expect.objectContaining({ field: 'code', wanted: 'a wait of a minute after so many wrong ones' }),
    ]);
    expect(await isToSetUp()).toBe(true);
    await test.dataSource.query('DELETE FROM sign_in_try');
  });

  it('are made by the right code, once', async () => {
    expect((await send({ code: ' K4CODEK4 ', people })).data).toEqual({ setUp: true });
    expect(await isToSetUp()).toBe(false);
    expect((await send({ code: 'k4codek4', people: { ...people, email: 'x@example.org' } })).errors[0].extensions.code).toBe('NOT_ALLOWED');
    const [{ count }] = await test.dataSource.query('SELECT count(*)::int AS count FROM account');
    expect(count).toBe(2);
  });

  it('let the system tech in, and the safety officer to choose a password first', async () => {
    const tech = await signIn('tamsin@example.org', people.password);
    expect((await tech.graphql('{ me { role mustChange } }')).data.me).toEqual({ role: 'system', mustChange: false });
    officer = await signIn('osric@example.org', people.officerPassword);
    expect((await officer.graphql('{ me { role mustChange } }')).data.me).toEqual({ role: 'safety', mustChange: true });
    // Neither the one that the system tech typed, nor one that everybody reads.
    for (const next of [people.officerPassword, 'osric@example.org']) {
      const reply = await officer.graphql('mutation($next: String!) { changePassword(old: "", next: $next) }', { next });
      expect([next, faultsOf(reply)]).toEqual([next, ['next']]);
    }
  });

  it('keep examination rules: the officer puts them on file and takes them out, others are told that they may not', async () => {
    const tech = await signIn('tamsin@example.org', people.password);
    const rule = { jurisdiction: 'GB', kinds: ['hoist'], intervals: ['P12M'], source: 'LOLER 1998 reg. 9(3)(a)(ii)', status: 'found' };
    const add = 'mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }';
    expect((await tech.graphql(add, { rules: [rule] })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await officer.graphql(add, { rules: [rule] })).errors?.[0]?.extensions.code).toBe('NEW_PASSWORD_WANTED');
    await test.dataSource.query(`UPDATE account SET must_change = false WHERE role = 'safety'`);
    expect(faultsOf(await officer.graphql(add, { rules: [rule, { ...rule, intervals: ['six months'] }] }))).toEqual([
      'rules[1].intervals[0]',
    ]);
    expect((await officer.graphql(add, { rules: [rule] })).data).toEqual({ addExaminationRules: true });
    expect((await officer.graphql(add, { rules: [{ ...rule, who: 'competent person' }] })).data).toEqual({ addExaminationRules: true });
    expect((await officer.graphql('{ rules beginningOfHouse { examinationRules officers } }')).data).toEqual({
      rules: { examinationRules: [{ ...rule, who: 'competent person' }], loadRules: [] },
      beginningOfHouse: { examinationRules: 1, officers: 1 },
    });
    const remove = 'mutation($rule: ModelJson!, $why: String!) { removeExaminationRule(rule: $rule, reason: $why) }';
    expect(faultsOf(await officer.graphql(remove, { rule, why: ' ' }))).toEqual(['reason']);
    const why = 'a scheme of examination takes its place';
    expect((await officer.graphql(remove, { rule, why })).data).toEqual({ removeExaminationRule: true });
    const editions = await test.dataSource.query(`SELECT number, reason FROM edition WHERE kind = 'examination rule' ORDER BY id`);
    expect(editions).toEqual([
      { number: 1, reason: null },
      { number: 2, reason: null },
      { number: 3, reason: why },
    ]);
    expect((await officer.graphql(remove, { rule, why })).errors?.[0]?.extensions.code).toBe('NOT_FOUND');
  });
});
