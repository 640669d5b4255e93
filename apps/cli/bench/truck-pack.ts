import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readContainerProblems, solveContainer, verifyContainer } from '#truck-pack';
import { Trouble } from '#runtime';
import { folderFrom, numberFrom, readArguments, say } from './arguments.js';

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
const percent = (part: number): number => Number((100 * part).toFixed(3));

/** Published single-container problems: files named after their class below --data DIR, the first N of each, S seconds an instance. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const folder = folderFrom(values);
  const seconds = numberFrom(values, 'seconds', 10);
  const first = numberFrom(values, 'first', 10);
  const classes = (values.get('classes') ?? 'BR1,BR3,BR5,BR7').split(',');
  const perClass: Record<string, number> = {};
  const all: number[] = [];
  let violations = 0;
  const start = performance.now();
  for (const name of classes) {
    const own: number[] = [];
    for (const problem of problemsOf(folder, name).slice(0, first)) {
      const answer = solveContainer(problem, { workLimit: Infinity, timeLimitSeconds: seconds, now: () => performance.now() });
      const wrong = verifyContainer(problem, answer);
      violations += wrong.length;
      if (wrong[0]) say(`${name}: ${wrong[0]}`);
      own.push(answer.utilisation);
    }
    perClass[name] = percent(mean(own));
    all.push(...own);
    say(`${name.padEnd(6)}${perClass[name].toFixed(2)} % over ${own.length}`);
  }
  say(
    JSON.stringify({
      instances: all.length,
      meanUtilisation: percent(mean(all)),
      perClass,
      violations,
      secondsEach: seconds,
      seconds: Number(((performance.now() - start) / 1000).toFixed(1)),
    }),
  );
  return violations === 0 ? 0 : 1;
}

function problemsOf(folder: string, name: string) {
  const file = readdirSync(folder).find((each) => new RegExp(`^${name}(_.*)?\\.txt$`, 'i').test(each));
  if (!file) throw new Trouble(`There is no file of the class ${name} in ${folder}.`);
  return readContainerProblems(readFileSync(join(folder, file), 'utf8'));
}
