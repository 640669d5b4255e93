import { SearchWorker } from '../../apps/api/src/features/search/search.worker.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const start = 'mutation { startSearch(tourId: "harbour-lights", showId: "quayside") { id state } }';
const latest = '{ latestSearch(tourId: "harbour-lights", showId: "quayside") { id state progress sentence } }';
const stop = 'mutation($id: ID!) { stopSearch(searchId: $id) { state sentence } }';

describe('a longer search', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
    await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { id } }');
  });
  afterAll(() => test.close());

  const until = async (wanted: (state: string) => boolean) => {
    for (;;) {
      const { latestSearch } = (await system.graphql(latest)).data;
      if (wanted(latestSearch.state)) return latestSearch;
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  };

  it('is in the queue as soon as it is asked for, the very first one too', async () => {
    const { data } = await system.graphql(start);
    const jobs = await test.dataSource.query(`SELECT data FROM job_queue.job WHERE name = 'search'`);
    expect(jobs).toEqual([{ data: { searchId: data.startSearch.id } }]);
    await system.graphql(stop, { id: data.startSearch.id });
  });

  it('is one however often it is asked for, waits without a worker, and can be stopped', async () => {
    const answers = await Promise.all(Array.from({ length: 6 }, () => system.graphql(start)));
    expect(answers.map((each) => each.errors)).toEqual(answers.map(() => undefined));
    expect(new Set(answers.map((each) => each.data.startSearch.id)).size).toBe(1);
    expect((await system.graphql(latest)).data.latestSearch).toMatchObject({ state: 'waiting', progress: 0 });
    const { data } = await system.graphql(stop, { id: answers[0]!.data.startSearch.id });
    expect(data.stopSearch).toEqual({ state: 'stopped', sentence: 'Stopped by Sol Achterberg; the plan is as it was.' });
  });

  it('is not for the safety officer to start', async () => {
    const safety = await test.as('safety');
    expect((await safety.graphql(start)).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });

  it('is done by the worker, which tells what came of it', async () => {
    await test.app.get(SearchWorker).listen();
    await system.graphql(start);
    const done = await until((state) => state === 'done' || state === 'failed');
    expect(done).toMatchObject({ state: 'done', progress: 1 });
    expect(done.sentence).toMatch(/^(No shorter load was found: \d+\.\d\d m are used as before\.|The draft now uses \d+\.\d\d m of truck)/);
  });
});
