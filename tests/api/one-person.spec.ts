import { loadKit } from '../../apps/api/src/planning/snapshot/kit-snapshot.js';
import { type Agent, type TestApp, agentOf, postListed, startTestApp } from '../support/test-app.js';

const sign =
  'mutation($id: ID!, $kind: String!, $name: String!, $remark: String = "") { signOff(planId: $id, hang: "Centre", kind: $kind, name: $name, remark: $remark) { signOffs { kind name } } }';
const set = (isOn: boolean, reason: string) => `mutation { setOnePerson(isOn: ${isOn}, reason: "${reason}") }`;
const times = '{ me { onePerson { since until by reason endedBecause } } }';

/** Two pairs of eyes are asked for unless the only safety officer of a house says, with a reason, that there is one. */
describe('one person', () => {
  let test: TestApp;
  let system: Agent;
  let ines: Agent;
  let tam: Agent;
  let tamId: string;
  let planId: string;
  beforeAll(async () => {
    test = await startTestApp();
    [system, ines] = await Promise.all([test.as('system'), test.as('safety')]);
    const person = { name: 'Tam Orrery', email: 'tam@cartwright.example', role: 'system', password: 'given by another' };
    tamId = (await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person })).data.addPerson.id;
  });
  afterAll(() => test.close());

  const faultOf = (answer: any) => answer.errors?.[0]?.extensions?.faults?.[0] ?? answer.errors?.[0]?.extensions?.code;
  const signIn = async (password: string): Promise<Agent> => {
    const reply = await postListed(test.address, 'SignIn', { email: 'tam@cartwright.example', password });
    return agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
  };
  const ownPassword = async (given: string): Promise<Agent> => {
    await (await signIn(given)).graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
    return signIn('chosen by myself');
  };
  const accept = async (who: Agent) => {
    const { data } = await who.graphql('{ proposals(first: 200) { edges { node { id proposedBy } } } }');
    const ids = data.proposals.edges.map((each: any) => each.node).filter((each: any) => each.proposedBy === 'Tam Orrery');
    return who.graphql('mutation($ids: [ID!]) { answerProposals(ids: $ids, accept: true, reason: "seen on the plate") }', {
      ids: ids.map((each: any) => each.id),
    });
  };

  it('is off from the start, and not for others than a safety officer who is the only one', async () => {
    expect((await ines.graphql(times)).data.me.onePerson).toEqual([]);
    expect(faultOf(await system.graphql(set(true, 'alone')))).toBe('NOT_ALLOWED');
    expect(faultOf(await ines.graphql(set(true, '  ')))).toMatchObject({ field: 'reason' });
    expect(faultOf(await ines.graphql(set(false, 'as it was')))).toMatchObject({ field: 'isOn' });
    tam = await ownPassword('given by another');
    // Proposed as the system tech; afterwards its own officer.
    const [known] = (await loadKit(test.dataSource)).loadRules;
    const rule = { ...known, id: 'own-regime', title: 'Own regime' };
    expect((await tam.graphql('mutation($rule: ModelJson!) { saveLoadRule(rule: $rule) }', { rule })).errors).toBeUndefined();
    await system.graphql(`mutation { proposeOfficer(id: "${tamId}") }`);
    await ines.graphql(`mutation { answerProposal(id: "${tamId}", accept: true, password: "from the officer") }`);
    tam = await ownPassword('from the officer');
    expect(faultOf(await ines.graphql(set(true, 'alone')))).toBe('NOT_ALLOWED');
    expect(faultOf(await accept(tam))).toBe('NOT_ALLOWED');
  });

  it('lets the only one accept what they proposed, with a reason, and says so in the log', async () => {
    const people = (await tam.graphql('{ people { id name } }')).data.people;
    const inesId = people.find((each: any) => each.name === 'Ines Aldous').id;
    await tam.graphql(`mutation { disablePerson(id: "${inesId}") }`);
    expect(faultOf(await accept(tam))).toBe('NOT_ALLOWED');
    expect((await tam.graphql(set(true, 'the other officer has left'))).errors).toBeUndefined();
    expect((await tam.graphql(times)).data.me.onePerson).toMatchObject([
      { until: null, by: 'Tam Orrery', reason: 'the other officer has left' },
    ]);
    expect((await accept(tam)).errors).toBeUndefined();
    const [kept] = await test.dataSource.query(`SELECT by_one_person, state FROM proposal WHERE subject = 'own-regime'`);
    expect(kept).toEqual({ by_one_person: true, state: 'accepted' });
    const said = await test.dataSource.query(`SELECT sentence FROM event WHERE what IN ('accepted', 'one person') ORDER BY id`);
    expect(said.map((each: any) => each.sentence).join('\n')).toMatch(
      /One person judges alone in this house from now on: the other officer has left\.[^]*seen on the plate\. One person only judged it\./,
    );
  });

  it('lets the only one inspect and take over, once it is said why; nobody else', async () => {
    const made = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
    const { id, plan } = (await system.graphql(made)).data.makePackPlan.plan;
    planId = id;
    await tam.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename } }', { id });
    const holds = plan.picks.hangs.find((each: any) => each.hang === 'Centre').runningOrder.goingUp.filter((each: any) => each.hold);
    for (const { key } of holds)
      expect(
        faultOf(
          await tam.graphql('mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }', { id, what: key }),
        ),
      ).toBeUndefined();
    expect(faultOf(await tam.graphql(sign, { id, kind: 'inspected', name: 'Tam Orrery' }))).toBeUndefined();
    // Signed in as another, in the name of the officer: not the officer's own signature.
    expect(faultOf(await system.graphql(sign, { id, kind: 'handed over', name: 'Tam Orrery', remark: 'alone' }))).toMatchObject({
      field: 'name',
    });
    expect(faultOf(await tam.graphql(sign, { id, kind: 'handed over', name: 'Tam Orrery' }))).toMatchObject({ field: 'remark' });
    const { data } = await tam.graphql(sign, { id, kind: 'handed over', name: 'tam orrery', remark: 'nobody else in the hall' });
    expect(data.signOff.signOffs).toMatchObject([{ kind: 'inspected' }, { kind: 'handed over', name: 'Tam Orrery' }]);
    const [last] = await test.dataSource.query(`SELECT sentence FROM event WHERE what = 'handed over' ORDER BY id DESC LIMIT 1`);
    expect(last.sentence).toContain('nobody else in the hall. One person only judged it.');
  });

  it('ends by itself when a second safety officer is on file, stays ended, and is never taken out of the record', async () => {
    const inesId = (await tam.graphql('{ people { id name } }')).data.people.find((each: any) => each.name === 'Ines Aldous').id;
    await tam.graphql(`mutation { enablePerson(id: "${inesId}") }`);
    const after = [{ endedBecause: 'a second safety officer is on file', until: expect.any(String) }];
    expect((await tam.graphql(times)).data.me.onePerson).toMatchObject(after);
    await tam.graphql(`mutation { disablePerson(id: "${inesId}") }`);
    expect((await tam.graphql(times)).data.me.onePerson).toMatchObject(after);
    expect((await tam.graphql(set(true, 'alone again'))).errors).toBeUndefined();
    expect((await tam.graphql(set(false, 'a second one begins on Monday'))).errors).toBeUndefined();
    expect((await tam.graphql(times)).data.me.onePerson).toMatchObject([{ endedBecause: 'a second one begins on Monday' }, ...after]);
    await expect(test.dataSource.query('DELETE FROM one_person')).rejects.toThrow();
    await expect(test.dataSource.query('UPDATE one_person SET is_on = false')).rejects.toThrow();
    expect(planId).toBeDefined();
  });
});
