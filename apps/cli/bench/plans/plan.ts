import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { capSeconds, makePackPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { readTourFile } from '#tour-file';
import { median, numberFrom, readArguments, say } from '../arguments.js';

/** The demo's first show (60 boxes, three hangs, two trucks) planned whole, as the app does it. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const rounds = numberFrom(readArguments(args), 'rounds', 30);
  const integerProgram = await loadIntegerProgramSolver();
  const written = JSON.parse(readFileSync(join(root, 'tests', 'examples', 'demo-tour.json'), 'utf8')) as unknown;
  const times: number[] = [];
  let boxes = 0;
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    const read = readTourFile(written);
    if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
    const plan = makePackPlan(read.value, read.value.tour.shows[0]!.id, {
      now: () => performance.now(),
      integerProgram,
      timeLimitSeconds: capSeconds,
    });
    times.push(performance.now() - start);
    boxes = plan.carts.loads.reduce((sum, load) => sum + load.boxes.length, 0);
  }
  say(
    JSON.stringify({
      boxes,
      rounds,
      firstMs: Math.round(times[0]!),
      medianMs: Math.round(median(times)),
      slowestMs: Math.round(Math.max(...times)),
    }),
  );
  return 0;
}
