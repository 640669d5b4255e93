import { setTimeout as pause } from 'node:timers/promises';
import { TourEdits } from '../../apps/web/src/features/tour/edit/tour-edits.js';
import { toursOver } from '../support/lossy-wire.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

/** How many, how fast, over what: more and slower by these. */
const ticks = Number(process.env.CARTWRIGHT_TICKS ?? 40);
const perSecond = Number(process.env.CARTWRIGHT_TICKS_PER_SECOND ?? 200);
const latencyMs = Number(process.env.CARTWRIGHT_LATENCY_MS ?? 20);
const lost = 0.2;

describe('freight ticked fast over a line that is slow and loses requests', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
  });
  afterAll(() => test.close());

  it('every tick is there, in the order in which they were made, also those made while somebody else saves the tour', async () => {
    const model = (await system.graphql('{ items(kind: "case", first: 1) { edges { node { model depot } } } }')).data.items.edges[0].node;
    const serials = Array.from({ length: ticks }, (_, at) => `MT-${String(at + 1).padStart(4, '0')}`);
    const rows = ['serial,model,depot', ...serials.map((serial) => `${serial},"${model.model}","${model.depot}"`)].join('\r\n');
    const taken = await system.fetch('/api/csv/items/case?dryRun=false', {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: rows,
    });
    expect(taken.status).toBe(200);
    const plain = toursOver(system, { latencyMs: 0, lost: 0, seed: 1 });
    const lossy = toursOver(system, { latencyMs, lost, seed: 29, pauses: latencyMs / 300 });
    const began = await plain.read('harbour-lights');
    const refusals: unknown[] = [];
    const edits = new TourEdits(
      lossy,
      began,
      (milliseconds) => pause((milliseconds * latencyMs) / 300),
      ({ refused }) => void (refused === undefined || refusals.push(refused)),
    );
    const done: Promise<void>[] = [];
    for (const [at, serial] of serials.entries()) {
      done.push(
        edits.add((tour) =>
          tour.freight.some((each) => each.case === serial) ? tour : { ...tour, freight: [...tour.freight, { case: serial }] },
        ),
      );
      if (at === Math.floor(ticks / 2)) {
        const now = await plain.read('harbour-lights');
        await plain.save({ ...now.tour, wishes: { dueSoon: 77 } }, now.version).catch(() => undefined);
      }
      await pause(1000 / perSecond);
    }
    await Promise.all(done);
    const { tour } = await plain.read('harbour-lights');
    expect(refusals).toEqual([]);
    expect(tour.freight.map((each) => each.case)).toEqual([...began.tour.freight.map((each) => each.case), ...serials]);
    expect(lossy.fates.lost).toBeGreaterThan(0);
  });
});
