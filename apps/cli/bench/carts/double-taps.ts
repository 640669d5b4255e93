import { seededRandom } from '#kernel';
import { tapGate } from '#pack-plan';
import { numberFrom, readArguments } from '../arguments.js';

/** Taps as a glove bounces: the second of each pair comes 50 to 600 ms after the first, the next pair when the first has long been answered. */
export function doubleTaps(pairs: number, seed: number): { readonly pairs: number; readonly marked: number; readonly notMeant: number } {
  const random = seededRandom(seed);
  const isMeant = tapGate();
  let [at, marked, notMeant] = [0, 0, 0];
  for (let pair = 0; pair < pairs; pair++) {
    at += 1_500 + random() * 3_000;
    if (isMeant(at)) marked++;
    at += 50 + random() * 550;
    if (isMeant(at)) notMeant++;
  }
  return { pairs, marked, notMeant };
}

export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const counted = doubleTaps(numberFrom(values, 'pairs', 200), numberFrom(values, 'seed', 1));
  process.stdout.write(`${JSON.stringify(counted)}\n`);
  return counted.notMeant === 0 && counted.marked === counted.pairs ? 0 : 1;
}
