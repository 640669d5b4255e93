import { readFileSync } from 'node:fs';
import { makePackPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { answerDamaged } from '../../apps/cli/bench/plans/answer-damaged.js';
import { damagedTour } from '../../apps/cli/bench/plans/damaged-tours.js';
import { demoTour } from '../support/demo-tour.js';

/** `npm run bench -- damaged --tours 3000` runs the same over many more seeds. */
const seeds = Array.from({ length: 10 }, (_, index) => index + 1);

describe('a tour damaged in several ways at once', () => {
  it('gets plans with which every checker agrees, or a refusal that names fields, and never an exception', async () => {
    const integerProgram = await loadIntegerProgramSolver();
    const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8')) as object;
    const file = demoTour();
    const earlier = makePackPlan(file, file.tour.shows[0]!.id, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    const boxes = earlier.carts.loads.flatMap((load) => load.boxes.flatMap((box) => box.serial ?? []));
    const answers = seeds.map((seed) =>
      answerDamaged(damagedTour(written, seed).file, earlier, boxes[seed % boxes.length]!, integerProgram, 20),
    );
    const refused = answers.filter((each) => each.is === 'refused');
    const planned = answers.filter((each) => each.is === 'planned');
    // Both kinds of answer are really met.
    expect(refused.length).toBeGreaterThan(1);
    expect(planned.length).toBeGreaterThan(1);
    expect(refused.map((each) => each.fields.filter((field) => field !== '').length > 0)).not.toContain(false);
    const off = planned.flatMap(({ plans }) => plans.flatMap((plan) => plan.findings.filter((each) => each.code === 'checker-disagrees')));
    expect(off.map((each) => each.sentence)).toEqual([]);
  }, 600_000);
});
