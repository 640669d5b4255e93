import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readTourFile } from '#tour-file';
import { numberFrom, readArguments, say } from '../arguments.js';
import { judgeHang, judgeSharedPoint, newTally } from './judged-limits.js';

/** Seeded hangs and shows whose limits stand between rest and worst, or above the worst, by algebra that knows nothing of the product. */
export function run(args: readonly string[], root: string): number {
  const values = readArguments(args);
  const [hangs, shows, first] = [numberFrom(values, 'hangs', 200), numberFrom(values, 'shows', 200), numberFrom(values, 'first', 1)];
  const written = JSON.parse(readFileSync(join(root, 'tests', 'examples', 'demo-tour.json'), 'utf8')) as object;
  const read = readTourFile(written);
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  const [limits, shared] = [newTally(), newTally()];
  for (let seed = first; seed < first + hangs; seed++) judgeHang(read.value, seed, limits);
  for (let seed = first; seed < first + shows; seed++) judgeSharedPoint(read.value, seed, shared);
  for (const each of [...limits.wrong, ...shared.wrong].slice(0, 40)) say(each);
  const count = ({ wrong, ...rest }: typeof limits) => ({ ...rest, wrong: wrong.length });
  say(JSON.stringify({ hangs, limits: count(limits), shows, shared: count(shared) }));
  return limits.wrong.length + shared.wrong.length === 0 ? 0 : 1;
}
