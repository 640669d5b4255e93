import { readFileSync } from 'node:fs';
import { shiftDates } from '#tour-file';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const readTour = '{ tour(id: "harbour-lights") { version tour } }';
const saveTour = 'mutation($tour: TourJson!, $version: Int) { saveTour(tour: $tour, expectedVersion: $version) { version tour } }';
const addRule = 'mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }';
const saveVenue = 'mutation($venue: VenueJson!) { saveVenue(venue: $venue) { id } }';
const choose = 'mutation($show: ID!, $venue: ID) { chooseVenue(tourId: "harbour-lights", showId: $show, venueId: $venue) }';
const plan = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const file = (): any => JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8'));

/** Midnight of the place, and the second before it, by the offsets of the time zone database. */
const midnights = [
  ['Pacific/Kiritimati', '2027-02-26T10:00:00Z'],
  ['Europe/London', '2027-02-27T00:00:00Z'],
  ['America/Los_Angeles', '2027-02-27T08:00:00Z'],
] as const;

describe('places', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  let now = '2027-02-26T09:00:00Z';
  beforeAll(async () => {
    test = await startTestApp({ clock: { now: () => new Date(now) } });
    [system, safety] = await Promise.all([test.as('system'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const onFile = async () => (await system.graphql(readTour)).data.tour;
  const save = (tour: object, version: number) => system.graphql(saveTour, { tour, version });

  it('are codes: what was written before is read as its code, and a file is given back as it was written', async () => {
    expect((await onFile()).tour.jurisdictions).toEqual(['GB']);
    const { examinationRules } = (await system.graphql('{ rules }')).data.rules;
    expect([...new Set(examinationRules.map((each: any) => each.jurisdiction))]).toEqual(['GB']);
    const given = await (await system.fetch('/api/tours/harbour-lights/file')).text();
    expect(JSON.parse(given).tour.jurisdictions).toEqual(file().tour.jurisdictions);
    expect(file().tour.jurisdictions).toEqual(['UK']);
  });

  it.each([
    ['Germny', 'DE (Germany)'],
    ['Englnad', 'GB (United Kingdom)'],
    ['XX', 'AX'],
  ])('refuse %s in a tour file and in a tour, and offer the nearest', async (wrong, nearest) => {
    const { tour, version } = await onFile();
    const reply = await save({ ...tour, jurisdictions: ['GB', wrong] }, version);
    const fault = { field: 'jurisdictions[1]', value: wrong, wanted: expect.stringContaining(nearest.slice(0, 2)) };
    expect(reply.errors?.[0]?.extensions.faults).toEqual([fault]);
    const written = file();
    written.tour.jurisdictions = ['UK', wrong];
    const sent = await system.fetch('/api/tours/file', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
      body: JSON.stringify(written),
    });
    expect(JSON.stringify(await sent.json())).toContain('tour.jurisdictions[1]');
  });

  it('are parts of countries only where a rule of theirs is on file', async () => {
    const { tour, version } = await onFile();
    const parted = { ...tour, jurisdictions: ['GB', 'US-CA'] };
    expect((await save(parted, version)).errors?.[0]?.extensions.faults).toMatchObject([
      { field: 'tour.jurisdictions[1]', value: 'US-CA', wanted: expect.stringContaining('US (United States)') },
    ]);
    const rule = { jurisdiction: 'US-CA', kinds: ['hoist'], intervals: ['P3M'], source: 'a rule of the house', status: 'house rule' };
    expect((await safety.graphql(addRule, { rules: [rule] })).errors).toBeUndefined();
    const saved = await save(parted, version);
    expect(saved.errors).toBeUndefined();
    await save({ ...tour, jurisdictions: ['GB'] }, saved.data.saveTour.version);
  });

  it('count where a venue on record is, whatever the tour names, and a plan of before says that the tour changed', async () => {
    const made = (await system.graphql(plan)).data.makePackPlan.plan;
    expect(made.plan.findings.filter((each: any) => each.code === 'not-judged')).toEqual([]);
    const hall = { name: 'Fjord Hall', country: 'NO', timeZone: 'Europe/Oslo' };
    const { id } = (await system.graphql(saveVenue, { venue: hall })).data.saveVenue;
    await system.graphql(choose, { show: 'quayside', venue: id });
    const changed = await system.graphql('query($id: ID!) { plan(id: $id) { changed { code sentence } } }', { id: made.id });
    expect(changed.data.plan.changed.length).toBeGreaterThan(0);
    const again = (await system.graphql(plan)).data.makePackPlan.plan;
    const said = again.plan.findings.filter((each: any) => each.code === 'not-judged');
    expect(said).toMatchObject([{ weight: 'stop', sentence: expect.stringContaining('NO (Norway) is visited by Harbour Lights') }]);
    await system.graphql(choose, { show: 'quayside', venue: null });
  });

  it.each(midnights)('have a day of their own at a depot in %s: what runs out is overdue from their midnight on', async (timeZone, at) => {
    const depot = `Depot ${timeZone}`;
    await system.graphql(saveVenue, { venue: { name: depot, country: 'GB', timeZone } });
    const [{ id }] = await test.dataSource.query(`SELECT id FROM item WHERE kind = 'hoist' AND due_state = 'due' ORDER BY id LIMIT 1`);
    const lastDay = '2027-02-26';
    await test.dataSource.query('UPDATE item SET depot = $2 WHERE id = $1', [id, depot]);
    await system.graphql('query($id: ID!) { item(id: $id) { summary { dueOn } } }', { id });
    await test.dataSource.query('UPDATE item SET due_on = $2, due_known = true WHERE id = $1', [
      id,
      at === midnights[0][1] ? '2027-02-26' : lastDay,
    ]);
    const state = async (instant: string) => {
      now = instant;
      const { item } = (await system.graphql('query($id: ID!) { item(id: $id) { summary { dueState } } }', { id })).data;
      const { edges } = (
        await system.graphql('query($search: String) { items(search: $search, first: 50) { edges { node { id dueState } } } }', {
          search: id,
        })
      ).data.items;
      expect(edges.find((each: any) => each.node.id === id).node.dueState).toBe(item.summary.dueState);
      return item.summary.dueState;
    };
    expect(await state(new Date(Date.parse(at) - 1000).toISOString())).toBe('in date');
    expect(await state(at)).toBe('overdue');
    now = '2027-02-26T09:00:00Z';
  });

  it.each(midnights)('have a day of their own at a venue in %s: Today lets a show go at its midnight', async (timeZone, at) => {
    const { id } = (await system.graphql(saveVenue, { venue: { name: `Hall ${timeZone}`, country: 'GB', timeZone } })).data.saveVenue;
    await system.graphql(choose, { show: 'quayside', venue: id });
    const { tour, version } = await onFile();
    const quayside = tour.shows.find((each: any) => each.id === 'quayside');
    const days = Math.round((Date.parse('2027-02-26') - Date.parse(quayside.to)) / 86_400_000);
    const moved = (shiftDates({ tour } as never, days) as { tour: any }).tour;
    const saved = await save(moved, version);
    expect(saved.errors).toBeUndefined();
    const isInSight = async (instant: string) => {
      now = instant;
      const { edges } = (await system.graphql('{ attention(first: 200) { edges { node { showId tourId } } } }')).data.attention;
      return edges.some(({ node }: any) => node.showId === 'quayside');
    };
    expect(await isInSight(new Date(Date.parse(at) - 1000).toISOString())).toBe(true);
    expect(await isInSight(at)).toBe(false);
    now = '2027-02-26T09:00:00Z';
  });

  it('have rules that the safety officer changes, each edition kept with before and after, who and why', async () => {
    const change =
      'mutation($was: ModelJson!, $rule: ModelJson!, $reason: String!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }';
    const rules = async () => (await safety.graphql('{ rules }')).data.rules.examinationRules;
    const was = (await rules()).find((each: any) => each.kinds.includes('hoist') && each.intervals.length > 0);
    const rule = { ...was, intervals: ['P6M'], who: 'competent person' };
    expect((await system.graphql(change, { was, rule, reason: 'heavy use' })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await safety.graphql(change, { was, rule, reason: ' ' })).errors?.[0]?.extensions.faults?.[0]?.field).toBe('reason');
    expect((await safety.graphql(change, { was, rule, reason: 'heavy use' })).data).toEqual({ changeExaminationRule: true });
    const stale = await safety.graphql(change, { was, rule: { ...was, intervals: ['P3M'] }, reason: 'again' });
    expect(stale.errors).toHaveLength(1);
    expect(await rules()).toContainEqual(rule);
    expect(await rules()).not.toContainEqual(was);
    const [edition] = (await system.graphql('{ examinationRuleEditions { was wanted reason madeBy madeAt } }')).data
      .examinationRuleEditions;
    expect(edition).toEqual({
      was,
      wanted: rule,
      reason: 'heavy use',
      madeBy: expect.stringMatching(/./),
      madeAt: new Date(now).toISOString(),
    });
  });

  it('ask for electrical checks beside the examination: a lift without one is barred, and a record of the one is none of the other', async () => {
    const rule = {
      jurisdiction: 'GB',
      kinds: ['hoist'],
      check: 'electrical',
      intervals: ['P1Y'],
      source: 'of the house',
      status: 'house rule',
    };
    await safety.graphql(addRule, { rules: [rule] });
    const dates = async () => (await safety.graphql('{ item(id: "H-01") { summary { dueOn dueState } } }')).data.item.summary;
    expect(await dates()).toMatchObject({ dueOn: null });
    const record =
      'mutation($examination: AnyJson!) { recordExamination(itemId: "H-01", examination: $examination) { summary { dueOn } } }';
    const examination = { on: '2027-02-01', outcome: 'pass', check: 'electrical', examiner: 'R. Tamm (invented)', report: 'E-1' };
    expect((await safety.graphql(record, { examination })).errors).toBeUndefined();
    expect((await dates()).dueOn).not.toBeNull();
  });
});
