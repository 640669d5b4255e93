import { seededRandom } from '#kernel';
import { rowKey, tickText } from '#pack-plan';
import { doMove, undoMove } from '../../apps/web/src/features/cart/operations.js';
import { tickMutation } from '../../apps/web/src/features/plan/operations.js';
import { answerOf } from '../../apps/web/src/platform/outbox/answer-of.js';
import type { Action, KeptAction } from '../../apps/web/src/platform/outbox/queue.js';
import { workOff } from '../../apps/web/src/platform/outbox/work-off.js';
import { newId, requestsOver } from '../../apps/web/src/platform/requests-over.js';
import { memoryStore } from '../support/memory-store.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

/** How many actions, and how often they are sent again from their beginning: more by these. */
const actions = Number(process.env.CARTWRIGHT_ACTIONS ?? 30);
const replays = Number(process.env.CARTWRIGHT_REPLAYS ?? 3);
const lost = 0.3;

type Act = { readonly kind: string; readonly values: Readonly<Record<string, unknown>> };

describe('what a device has queued', () => {
  let test: TestApp;
  let system: Agent;
  let planId: string;
  let acts: readonly Act[];
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    planId = made.data.makePackPlan.plan.id;
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a test") { __typename } }', { id: planId });
    acts = madeActs(made.data.makePackPlan.plan.plan, (await floorState()).moves[0]);
  });
  afterAll(() => test.close());

  const floorState = async () => {
    const read = await system.graphql('query($id: ID!) { plan(id: $id) { ticks } workList(planId: $id) }', { id: planId });
    const { moves, floor } = read.data.workList;
    return { ticks: [...read.data.plan.ticks].sort(), moves, floor };
  };
  const sentencesAfter = async (id: string): Promise<string[]> =>
    (
      await test.dataSource.query(
        `SELECT sentence FROM event WHERE id > $1 AND what IN ('ticked', 'unticked', 'moved', 'moved back') ORDER BY id`,
        [id],
      )
    ).map((each: { sentence: string }) => each.sentence);
  const lastEvent = async (): Promise<string> => (await test.dataSource.query('SELECT max(id) AS id FROM event'))[0].id;

  /** Rows are ticked and taken back at random; between them one box goes there and back. */
  function madeActs(plan: any, { box, from, to }: { box: string; from: string; to: string }): readonly Act[] {
    const random = seededRandom(13);
    const rows: string[] = plan.truck.trucks.flatMap((truck: any) => truck.rows.map((row: any) => tickText(rowKey(truck.id, row.number))));
    let isMoved = false;
    return Array.from({ length: actions }, (_, at): Act => {
      if (at % 10 === 9) {
        isMoved = !isMoved;
        return { kind: isMoved ? 'move' : 'undo', values: { planId, box, from, to } };
      }
      return { kind: 'tick', values: { planId, what: rows[Math.floor(random() * rows.length)], done: random() < 0.6 } };
    });
  }

  /** All of them from their first, over a line that loses so many requests: half on the way there, half on the way back. */
  async function sendAll(queue: readonly Action[], losing: number, seed: number): Promise<{ refused: KeptAction[]; requests: number }> {
    const random = seededRandom(seed);
    let requests = 0;
    const { request } = requestsOver({
      pause: () => Promise.resolve(),
      makeId: newId,
      isOffline: () => false,
      fetch: async (path, init) => {
        requests++;
        const fate = random();
        if (fate < losing / 2) throw new TypeError('fetch failed');
        const answer = await system.fetch(path, init);
        if (fate < losing) throw new TypeError('terminated');
        return answer;
      },
    });
    const operations = { tick: tickMutation, move: doMove, undo: undoMove } as const;
    const store = memoryStore();
    for (const each of queue) await store.add(each);
    const send = ({ kind, values, id, doneAt }: KeptAction) =>
      answerOf(request<unknown, unknown>(operations[kind as keyof typeof operations] as never, values, { requestId: id, doneAt }));
    const now = () => new Date('2027-02-26T10:00:00Z');
    while ((await workOff({ store, personId: 'ana', send, now, changed: () => undefined })) !== 'empty');
    return { refused: [...(await store.all())], requests };
  }

  const queued = (): Action[] =>
    acts.map((act) => ({
      ...act,
      id: newId(),
      words: act.kind,
      doneAt: '2027-02-26T08:00:00.000Z',
      personId: 'ana',
      personName: 'Ana',
      tourId: 'harbour-lights',
      showId: 'quayside',
    }));

  it('comes to the same end over a line that drops at random, sent several times, as over a good one, sent once', async () => {
    const began = await floorState();
    const ends = [];
    let sent = 0;
    for (const [times, losing] of [
      [1, 0],
      [replays, lost],
    ] as const) {
      const queue = queued();
      const since = await lastEvent();
      for (let time = 0; time < times; time++) {
        const { refused, requests } = await sendAll(queue, losing, time + 1);
        expect(refused).toEqual([]);
        sent = requests;
      }
      ends.push({ state: await floorState(), said: await sentencesAfter(since) });
      // Back to where it began, so that the second time begins there too.
      for (const what of ends[0]!.state.ticks)
        await system.graphql('mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: false) { id } }', {
          id: planId,
          what,
        });
      const moved = acts.findLast(({ kind }) => kind !== 'tick');
      if (moved?.kind === 'move')
        await system.graphql(
          'mutation($planId: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }',
          moved.values,
        );
      expect(await floorState()).toEqual(began);
    }
    expect(ends[1]).toEqual(ends[0]);
    expect(ends[0]!.said.length).toBeGreaterThan(actions / 4);
    expect(sent).toBeGreaterThan(actions);
  });
});
