import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const save =
  'mutation($id: ID, $venue: VenueJson!, $version: Int) { saveVenue(id: $id, venue: $venue, expectedVersion: $version) { id version venue } }';
const choose = 'mutation($venue: ID) { chooseVenue(tourId: "harbour-lights", showId: "quayside", venueId: $venue) }';
const ofShow = '{ venueOfShow(tourId: "harbour-lights", showId: "quayside") { id venue shows { tourId showId } } }';
const hall = {
  name: 'Quayside Hall',
  city: 'Saltmouth',
  country: 'GB',
  timeZone: 'Europe/London',
  datum: 'middle of the stage edge',
  points: [{ name: 'A1', xMm: -2000, yMm: 3000, heightMm: 15_200, allowed: { value: 20, unit: 'kN', source: 'the house' } }],
  doors: [{ name: 'dock door', widthMm: 3000, heightMm: 4000 }],
  dock: { heightMm: 1100 },
};

describe('venues', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let id: string;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
  });
  afterAll(() => test.close());

  it('are kept whole, by the system tech alone', async () => {
    expect((await warehouse.graphql(save, { venue: hall })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    const { data, errors } = await system.graphql(save, { venue: hall });
    expect(errors).toBeUndefined();
    expect(data.saveVenue).toMatchObject({ version: 1, venue: hall });
    id = data.saveVenue.id;
  });

  it('are the venue of a show by id, and a new name of theirs changes neither that nor the tour', async () => {
    expect((await system.graphql(ofShow)).data.venueOfShow).toBeNull();
    expect((await system.graphql(choose, { venue: id })).data.chooseVenue).toBe(true);
    const renamed = await system.graphql(save, { id, venue: { ...hall, name: 'Quayside Halls' }, version: 1 });
    expect(renamed.data.saveVenue).toMatchObject({ id, version: 2 });
    const { data } = await warehouse.graphql(ofShow);
    expect(data.venueOfShow).toMatchObject({
      id,
      venue: { name: 'Quayside Halls', points: hall.points },
      shows: [{ tourId: 'harbour-lights', showId: 'quayside' }],
    });
    const { tour } = (await system.graphql('{ tour(id: "harbour-lights") { tour } }')).data.tour;
    expect(tour.shows[0].venue).toBe('Quayside Hall');
  });

  it.each([
    ['a country that is none', { country: 'Bretagna' }, 'country'],
    ['no country', { country: undefined }, 'country'],
    ['a time zone that is none', { timeZone: 'Europe/Nowhere' }, 'timeZone'],
    ['no name', { name: '' }, 'name'],
  ])('refuse %s', async (_what, wrong, field) => {
    const { errors } = await system.graphql(save, { venue: { ...hall, ...wrong } });
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field }] });
  });

  it('refuse an older version', async () => {
    const { errors } = await system.graphql(save, { id, venue: hall, version: 1 });
    expect(errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'expectedVersion' });
  });
});
