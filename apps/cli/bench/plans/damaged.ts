import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makePackPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { readTourFile } from '#tour-file';
import { answerDamaged } from './answer-damaged.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { damagedTour } from './damaged-tours.js';

/** The demo tour damaged at random, several ways at once: each answer is a plan with which every checker agrees, or a refusal that names fields. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [tours, first, seconds] = [numberFrom(values, 'tours', 300), numberFrom(values, 'first', 1), numberFrom(values, 'seconds', 20)];
  const integerProgram = await loadIntegerProgramSolver();
  const written = JSON.parse(readFileSync(join(root, 'tests', 'examples', 'demo-tour.json'), 'utf8')) as object;
  const read = readTourFile(written);
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  const earlier = makePackPlan(read.value, read.value.tour.shows[0]!.id, {
    now: () => performance.now(),
    integerProgram,
    timeLimitSeconds: seconds,
  });
  const boxes = earlier.carts.loads.flatMap((load) => load.boxes.flatMap((box) => box.serial ?? []));
  const counts = { tours, refused: 0, planned: 0, thrown: 0, disagreed: 0, withoutField: 0, slowestMs: 0 };
  for (let seed = first; seed < first + tours; seed++) {
    const { file, done } = damagedTour(written, seed);
    const start = performance.now();
    try {
      const answer = answerDamaged(file, earlier, boxes[seed % boxes.length]!, integerProgram, seconds);
      counts[answer.is]++;
      if (answer.is === 'refused' && (answer.fields.length === 0 || answer.fields.some((each) => each === ''))) counts.withoutField++;
      const off =
        answer.is === 'planned' ? answer.plans.flatMap((plan) => plan.findings.filter((each) => each.code === 'checker-disagrees')) : [];
      if (off.length > 0) {
        counts.disagreed++;
        say(`seed ${seed} (${done.join(', ')}): ${off[0]!.sentence}`);
      }
    } catch (fault) {
      counts.thrown++;
      say(`seed ${seed} (${done.join(', ')}): ${(fault as Error).stack?.split('\n').slice(0, 4).join(' | ')}`);
    }
    counts.slowestMs = Math.max(counts.slowestMs, Math.round(performance.now() - start));
  }
  say(JSON.stringify(counts));
  return counts.thrown + counts.disagreed + counts.withoutField > 0 ? 1 : 0;
}
