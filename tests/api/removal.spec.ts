import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const read = 'query { tour(id: "harbour-lights") { version tour removedShows { showId name removedBy revisions } } }';
const removeShow =
  'mutation($show: ID!, $v: Int!) { removeShow(tourId: "harbour-lights", showId: $show, expectedVersion: $v) { version tour removedShows { showId } } }';
const showBack =
  'mutation($show: ID!, $v: Int!) { putShowBack(tourId: "harbour-lights", showId: $show, expectedVersion: $v) { version tour removedShows { showId } } }';
const along =
  'query($show: ID) { takenAlong(tourId: "harbour-lights", showId: $show) { shows hangs boxes drafts inForce revisions givenBack } }';
const removeTour = 'mutation($v: Int!) { removeTour(tourId: "harbour-lights", expectedVersion: $v) { version } }';
const tourBack = 'mutation($v: Int!) { putTourBack(tourId: "harbour-lights", expectedVersion: $v) { version } }';
const make = (show: string) =>
  `mutation { makePackPlan(tourId: "harbour-lights", showId: "${show}") { ... on PlanMade { planId } ... on PlanningRefusal { sentence } } }`;
const release = 'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "as tried") { __typename ... on PlanView { id } } }';

describe('what is removed and put back', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, safety] = [await test.as('system'), await test.as('safety')];
  });
  afterAll(() => test.close());

  const tour = async () => (await system.graphql(read)).data.tour;
  const held = async (): Promise<number> => {
    const [{ count }] = await test.dataSource.query(
      `SELECT count(*)::int AS count FROM booking WHERE holder_kind = 'tour' AND holder_id = 'harbour-lights'`,
    );
    return count;
  };
  const planned = async (show: string): Promise<string> => (await system.graphql(make(show))).data.makePackPlan.planId;
  const inForce = async (id: string): Promise<string> => {
    const [{ state }] = await test.dataSource.query('SELECT state FROM pack_plan WHERE id = $1', [id]);
    return state;
  };
  const faultOf = async (query: string, variables: object, who = system) =>
    (await who.graphql(query, variables)).errors?.[0]?.extensions.faults?.[0];

  it('takes a show that was never released off its tour with its draft, and puts it back with it', async () => {
    const draft = await planned('fenland');
    expect((await system.graphql(along, { show: 'fenland' })).data.takenAlong).toMatchObject({
      shows: 1,
      drafts: 1,
      inForce: [],
      revisions: 0,
    });
    const before = await tour();
    const fenland = before.tour.shows.find((each: any) => each.id === 'fenland');
    const gone = (await system.graphql(removeShow, { show: 'fenland', v: before.version })).data.removeShow;
    expect(gone).toMatchObject({ version: before.version + 1, removedShows: [{ showId: 'fenland' }] });
    expect(gone.tour.shows.map((each: any) => each.id)).toEqual(['quayside', 'old-mill']);
    expect((await system.graphql(make('fenland'))).errors?.[0]?.message).toContain('fenland');
    const back = (await system.graphql(showBack, { show: 'fenland', v: gone.version })).data.putShowBack;
    expect(back.tour.shows.find((each: any) => each.id === 'fenland')).toEqual(fenland);
    expect(back.removedShows).toEqual([]);
    expect(await inForce(draft)).toBe('draft');
  });

  it('closes a released show: its revision stays on file, superseded, and what it alone held is given back', async () => {
    const plans = [await planned('quayside'), await planned('old-mill')];
    for (const id of plans) expect((await safety.graphql(release, { id })).data.releasePackPlan.__typename).toBe('PlanView');
    const [before, heldBefore] = [await tour(), await held()];
    const said = (await system.graphql(along, { show: 'old-mill' })).data.takenAlong;
    expect(said).toMatchObject({ revisions: 1, inForce: [expect.stringMatching(/, revision A$/)] });
    await system.graphql(removeShow, { show: 'old-mill', v: before.version });
    expect(await inForce(plans[1]!)).toBe('superseded');
    expect(await inForce(plans[0]!)).toBe('released');
    expect(await held()).toBe(heldBefore - said.givenBack);
    expect((await tour()).removedShows).toEqual([
      expect.objectContaining({ showId: 'old-mill', removedBy: 'Sol Achterberg', revisions: ['A'] }),
    ]);
    const { version } = await tour();
    await system.graphql(showBack, { show: 'old-mill', v: version });
    expect(await inForce(plans[1]!)).toBe('superseded');
    const again = await planned('old-mill');
    expect((await safety.graphql(release, { id: again })).data.releasePackPlan.__typename).toBe('PlanView');
    expect(await held()).toBe(heldBefore);
  });

  it('refuses an older version, the last show, a show dropped in passing, an id that a removed show has, and whoever may not', async () => {
    const { version, tour: data } = await tour();
    expect(await faultOf(removeShow, { show: 'fenland', v: version - 1 })).toMatchObject({ field: 'expectedVersion' });
    const save = 'mutation($tour: TourJson!, $v: Int) { saveTour(tour: $tour, expectedVersion: $v) { version } }';
    expect(await faultOf(save, { tour: { ...data, shows: data.shows.slice(1) }, v: version })).toMatchObject({ field: 'tour.shows' });
    expect((await safety.graphql(removeShow, { show: 'fenland', v: version })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    const gone = (await system.graphql(removeShow, { show: 'fenland', v: version })).data.removeShow;
    expect(await faultOf(save, { tour: data, v: gone.version })).toMatchObject({ field: 'tour.shows[2].id', value: 'fenland' });
    const one = (await system.graphql(removeShow, { show: 'old-mill', v: gone.version })).data.removeShow;
    expect(await faultOf(removeShow, { show: 'quayside', v: one.version })).toMatchObject({
      wanted: expect.stringContaining('remove the tour'),
    });
    for (const show of ['old-mill', 'fenland']) await system.graphql(showBack, { show, v: (await tour()).version });
    expect((await tour()).tour).toEqual(data);
  });

  it('takes a tour off the list, gives back what it holds, refuses work on it, and puts it back whole', async () => {
    const before = await tour();
    expect((await system.graphql(along, { show: null })).data.takenAlong).toMatchObject({ shows: 3, revisions: 3 });
    await system.graphql(removeTour, { v: before.version });
    expect(await held()).toBe(0);
    expect((await system.graphql('{ tours { edges { node { id } } } }')).data.tours.edges).toEqual([]);
    expect((await system.graphql('{ removedTours { id revisions removedBy } }')).data.removedTours).toEqual([
      { id: 'harbour-lights', revisions: 3, removedBy: 'Sol Achterberg' },
    ]);
    expect(await faultOf(make('quayside'), {})).toMatchObject({ wanted: expect.stringContaining('put it back') });
    const file = await (await system.fetch('/api/tours/harbour-lights/file')).json();
    const again = await system.fetch('/api/tours/file', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
      body: JSON.stringify(file),
    });
    expect(((await again.json()) as any).faults[0]).toMatchObject({ field: 'tour.id', wanted: expect.stringContaining('put it back') });
    await system.graphql(tourBack, { v: before.version + 1 });
    expect((await tour()).tour).toEqual(before.tour);
  });

  it('lets a tour of which nothing was released come in again from its edited file', async () => {
    const file: any = await (await system.fetch('/api/tours/harbour-lights/file')).json();
    file.tour = { ...file.tour, id: 'second', name: 'Second' };
    const send = async () =>
      (
        await system.fetch('/api/tours/file', {
          method: 'POST',
          headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
          body: JSON.stringify(file),
        })
      ).status;
    expect(await send()).toBe(200);
    await system.graphql('mutation { makePackPlan(tourId: "second", showId: "quayside") { ... on PlanMade { planId } } }');
    expect(await send()).toBe(422);
    await system.graphql('mutation { removeTour(tourId: "second", expectedVersion: 1) { version } }');
    file.tour.shows[0].name = 'Another name';
    expect(await send()).toBe(200);
    expect((await system.graphql('{ tour(id: "second") { version tour } }')).data.tour).toMatchObject({
      version: 1,
      tour: { shows: [{ name: 'Another name' }, {}, {}] },
    });
  });
});
