import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Trouble } from '#runtime';
import {
  type ContainerCase,
  type ContainerPlacement,
  liesAsItMay,
  readContainerProblems,
  solveContainer,
  verifyContainer,
} from '#truck-pack';
import { clockFrom, folderFrom, numberFrom, readArguments, say } from '../arguments.js';
import { generalPackers } from './general-packers.js';

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
const percent = (part: number): number => Number((100 * part).toFixed(3));

/**
 * Published single-container problems: files named after their class below --data DIR, the first N of each, S seconds an instance, optionally with
 * every box supported, by the wall clock or by processor time. Then the general-purpose packages on the same problems, under the same checker.
 */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const folder = folderFrom(values);
  const seconds = numberFrom(values, 'seconds', 10);
  const first = numberFrom(values, 'first', 10);
  const support = supportFrom(values.get('support'));
  const { clock, now } = clockFrom(values.get('clock'));
  const classes = (values.get('classes') ?? 'BR1,BR3,BR5,BR7').split(',');
  const perClass: Record<string, number> = {};
  const all: number[] = [];
  let violations = 0;
  const start = performance.now();
  const problems = classes.map((name) => ({ name, problems: problemsOf(folder, name).slice(0, first) }));
  for (const { name, problems: own } of problems) {
    const utilisations = own.map((problem) => {
      const given = { ...problem, support };
      const answer = solveContainer(given, { workLimit: Infinity, timeLimitSeconds: seconds, now });
      const wrong = verifyContainer(given, answer);
      violations += wrong.length;
      if (wrong[0]) say(`${name}: ${wrong[0]}`);
      return answer.utilisation;
    });
    perClass[name] = percent(mean(utilisations));
    all.push(...utilisations);
    say(`${name.padEnd(6)}${perClass[name].toFixed(2)} % over ${own.length}`);
  }
  const ours = {
    instances: all.length,
    meanUtilisation: percent(mean(all)),
    perClass,
    violations,
    support: support ?? 'none',
    secondsEach: seconds,
    clock,
    seconds: Number(((performance.now() - start) / 1000).toFixed(1)),
  };
  say(JSON.stringify({ ...ours, others: others(problems.flatMap((each) => each.problems)) }));
  return violations === 0 ? 0 : 1;
}

/** What the general-purpose packages make of the problems; boxes that lie in a way they may not are counted apart from other violations. */
function others(problems: readonly ContainerCase[]) {
  return Object.fromEntries(
    Object.entries(generalPackers).map(([name, pack]) => {
      const start = performance.now();
      const packings = problems.map((problem) => ({ problem, placements: pack(problem) }));
      const milliseconds = (performance.now() - start) / problems.length;
      const utilisations = packings.map(({ problem, placements }) => utilisationOf(problem, placements));
      const wrong = packings.flatMap(({ problem, placements }, index) =>
        verifyContainer(problem, { placements, utilisation: utilisations[index]!, bound: 1 }),
      );
      const wrongWay = packings.flatMap(({ problem, placements }) =>
        placements.filter((each) => problem.boxes[each.box] && !liesAsItMay(problem.boxes[each.box]!, each)),
      ).length;
      const meanUtilisation = percent(mean(utilisations));
      say(`${name.padEnd(16)}${meanUtilisation.toFixed(2)} %, ${wrongWay} boxes the wrong way`);
      return [name, { meanUtilisation, milliseconds: Number(milliseconds.toFixed(1)), wrongWay, violations: wrong.length - wrongWay }];
    }),
  );
}

const utilisationOf = ({ length, width, height }: ContainerCase, placements: readonly ContainerPlacement[]): number =>
  placements.reduce((sum, { dx, dy, dz }) => sum + dx * dy * dz, 0) / (length * width * height);

function supportFrom(value: string | undefined): 'full' | undefined {
  if (value !== undefined && value !== 'full' && value !== 'none') throw new Trouble(`--support is ${value}: wanted full or none.`);
  return value === 'full' ? value : undefined;
}

function problemsOf(folder: string, name: string) {
  const file = readdirSync(folder).find((each) => new RegExp(`^${name}(_.*)?\\.txt$`, 'i').test(each));
  if (!file) throw new Trouble(`There is no file of the class ${name} in ${folder}.`);
  return readContainerProblems(readFileSync(join(folder, file), 'utf8'));
}
