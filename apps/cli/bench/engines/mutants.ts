import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom } from '#kernel';
import { numberFrom, readArguments, say } from '../arguments.js';
import { type SpecCoverage, coverageOf, specsThatRun } from './covering-specs.js';
import { type Mutant, mutantsOf } from './made-mutants.js';
import { SpecProcess } from './spec-process.js';

/** What is changed, and which specs must see it. */
interface Target {
  readonly folders: readonly string[];
  readonly specs: readonly string[];
  /** Checkers are changed apart from what they check. */
  readonly checkers?: true;
}

const targets: Record<string, Target> = {
  'hang-statics': { folders: ['libs/hang-statics'], specs: ['libs/hang-statics', 'tests/reference/statics', 'tests/reference/slings'] },
  'cart-allocation': {
    folders: ['libs/cart-allocation'],
    specs: ['libs/cart-allocation', 'tests/reference/blocks'],
  },
  'truck-pack': {
    folders: ['libs/truck-pack'],
    specs: ['libs/truck-pack', 'tests/reference/multi-drop', 'tests/reference/vehicles', 'tests/reference/exact-floors'],
  },
  'hardware-count': {
    folders: ['libs/hardware-count'],
    specs: ['libs/hardware-count', 'tests/reference/spares', 'tests/reference/tour-spares'],
  },
  'inspection-calendar': { folders: ['libs/inspection-calendar'], specs: ['libs/inspection-calendar', 'tests/reference/dates'] },
  decisions: {
    folders: ['libs/pack-plan/floor', 'libs/pack-plan/rules', 'libs/pack-plan/inputs', 'libs/pack-plan/release', 'libs/pack-plan/due'],
    specs: ['libs/pack-plan', 'tests/reference/rated-loads'],
  },
  checkers: {
    folders: ['libs'],
    specs: [
      'libs/hang-statics',
      'libs/cart-allocation',
      'libs/truck-pack',
      'libs/hardware-count',
      'libs/inspection-calendar',
      'libs/pack-plan/check',
    ],
    checkers: true,
  },
};

/** A survivor somebody looked at: no test can see it, and why. `line` is the text of its line, so that it stays true when lines move. */
interface Equivalent {
  readonly path: string;
  readonly line: string;
  readonly what: string;
  readonly reason: string;
}

interface Placed extends Mutant {
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly lineText: string;
}

interface Outcome {
  readonly mutants: number;
  readonly killed: number;
  readonly equivalent: number;
  /** Killed of those that are not known to be equivalent. */
  readonly share: number;
  readonly secondsEach: number;
}

/**
 * How many seeded small faults in the engines' cores the tests see. A mutant that outlasts its time counts as seen: the tests would hang.
 * Only the specs that run the changed statement are asked, the quickest first, in one warm process, up to the first failure.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const wanted = (values.get('engines') ?? Object.keys(targets).join(',')).split(',');
  const limits = {
    count: numberFrom(values, 'mutants', 20),
    from: numberFrom(values, 'from', 1),
    seed: numberFrom(values, 'seed', 1),
    at: values.get('at')?.split(','),
  };
  const equivalents = JSON.parse(readFileSync(join(root, 'apps/cli/bench/engines/equivalent-mutants.json'), 'utf8')) as Equivalent[];
  const answer: Record<string, Outcome> = {};
  for (const engine of wanted) {
    const target = targets[engine];
    if (!target) throw new Error(`no engine ${engine}: there is ${Object.keys(targets).join(', ')}`);
    answer[engine] = await tryEngine(root, engine, target, limits, equivalents);
  }
  say(JSON.stringify(answer));
  return 0;
}

interface Limits {
  readonly count: number;
  readonly from: number;
  readonly seed: number;
  /** Only the mutants of these places, `path:line`. */
  readonly at: readonly string[] | undefined;
}

async function tryEngine(
  root: string,
  engine: string,
  target: Target,
  limits: Limits,
  equivalents: readonly Equivalent[],
): Promise<Outcome> {
  const folder = copyOf(root);
  const process = new SpecProcess(folder);
  try {
    const all = target.folders.flatMap((each) => sources(folder, each, target)).flatMap((path) => mutantsIn(folder, path));
    const chosen = choose(all, limits);
    const coverage = await coverageOf(
      target.specs.flatMap((each) => specFiles(folder, each)),
      target.folders,
      process,
      folder,
    );
    const started = performance.now();
    let [killed, equivalent] = [0, 0];
    for (const mutant of chosen) {
      const known = equivalents.find((each) => each.path === mutant.path && each.line === mutant.lineText && each.what === mutant.what);
      if (known) {
        equivalent++;
        say(`equivalent: ${mutant.path}:${mutant.line} ${mutant.what}: ${known.reason}`);
      } else if (await isSeen(folder, mutant, coverage, process)) killed++;
      else say(`survived: ${mutant.path}:${mutant.line} ${mutant.what}  | ${mutant.lineText}`);
    }
    const counted = chosen.length - equivalent;
    const share = counted === 0 ? 0 : Math.round((1000 * killed) / counted) / 10;
    const secondsEach = Math.round((performance.now() - started) / Math.max(1, counted) / 10) / 100;
    say(
      `${engine}: ${killed} of ${counted} seen, ${share} %, and ${equivalent} known to be equivalent (of ${all.length} possible), ${secondsEach} s each`,
    );
    return { mutants: chosen.length, killed, equivalent, share, secondsEach };
  } finally {
    process.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

function choose(all: readonly Placed[], { count, from, seed, at }: Limits): readonly Placed[] {
  if (at) return all.filter((each) => at.includes(`${each.path}:${each.line}`));
  const random = seededRandom(seed);
  const left = [...all];
  const chosen: Placed[] = [];
  while (chosen.length < from - 1 + count && left.length > 0) chosen.push(...left.splice(Math.floor(random() * left.length), 1));
  return chosen.slice(from - 1);
}

async function isSeen(folder: string, mutant: Placed, coverage: readonly SpecCoverage[], process: SpecProcess): Promise<boolean> {
  const asked = specsThatRun(coverage, mutant.path, mutant);
  if (asked.length === 0) return false;
  const file = join(folder, mutant.path);
  const before = readFileSync(file, 'utf8');
  writeFileSync(file, before.slice(0, mutant.start) + mutant.text + before.slice(mutant.end));
  let seen = false;
  for (const { spec, seconds } of asked) {
    seen = (await process.run({ spec }, 5 + 2 * seconds))?.passed !== true;
    if (seen) break;
  }
  writeFileSync(file, before);
  return seen;
}

/** The sources in a folder of their own, the packages by a link: a mutant never touches the repository. */
function copyOf(root: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-mutants-'));
  for (const each of ['libs', 'tests', 'apps', '.config', 'package.json', 'tsconfig.json'])
    cpSync(join(root, each), join(folder, each), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  return folder;
}

const isChecker = (path: string): boolean => /(^|\/)verify-|^libs\/pack-plan\/check\//.test(path);

const sources = (folder: string, under: string, { checkers = false }: { checkers?: boolean }): string[] =>
  readdirSync(join(folder, under), { recursive: true, encoding: 'utf8' })
    .map((each) => `${under}/${each}`)
    .filter((each) => each.endsWith('.ts') && !each.endsWith('.spec.ts') && !each.endsWith('index.ts') && isChecker(each) === checkers)
    .sort();

/** The spec files of a folder, or the one of a name without its ending. */
function specFiles(folder: string, under: string): string[] {
  if (!statSync(join(folder, under), { throwIfNoEntry: false })?.isDirectory()) return [`${under}.spec.ts`];
  return readdirSync(join(folder, under), { recursive: true, encoding: 'utf8' })
    .filter((each) => each.endsWith('.spec.ts'))
    .map((each) => `${under}/${each}`)
    .sort();
}

function mutantsIn(folder: string, path: string): Placed[] {
  const source = readFileSync(join(folder, path), 'utf8');
  const lines = source.split('\n');
  return mutantsOf(source).map((each) => {
    const above = source.slice(0, each.start).split('\n');
    return { ...each, path, line: above.length, column: above.at(-1)?.length ?? 0, lineText: (lines[above.length - 1] ?? '').trim() };
  });
}
