import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom } from '#kernel';
import { numberFrom, readArguments, say } from '../arguments.js';
import { type Mutant, mutantsOf } from './made-mutants.js';

/** What is changed, and which specs must see it. */
interface Target {
  readonly folders: readonly string[];
  readonly specs: readonly string[];
}

const targets: Record<string, Target> = {
  'hang-statics': { folders: ['libs/hang-statics'], specs: ['libs/hang-statics', 'tests/reference/statics', 'tests/reference/slings'] },
  'cart-allocation': {
    folders: ['libs/cart-allocation'],
    specs: ['libs/cart-allocation', 'tests/reference/blocks', 'tests/reference/exact-floors'],
  },
  'truck-pack': { folders: ['libs/truck-pack'], specs: ['libs/truck-pack', 'tests/reference/multi-drop', 'tests/reference/vehicles'] },
  'hardware-count': {
    folders: ['libs/hardware-count'],
    specs: ['libs/hardware-count', 'tests/reference/spares', 'tests/reference/tour-spares'],
  },
  'inspection-calendar': { folders: ['libs/inspection-calendar'], specs: ['libs/inspection-calendar', 'tests/reference/dates'] },
  decisions: {
    folders: ['libs/pack-plan/floor', 'libs/pack-plan/rules', 'libs/pack-plan/inputs'],
    specs: ['libs/pack-plan', 'tests/reference/rated-loads', 'tests/pack-plan'],
  },
};

interface Placed extends Mutant {
  readonly path: string;
}

/** How many seeded small faults in the engines' cores the tests see. A mutant that outlasts its time counts as seen: the tests would hang. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const wanted = (values.get('engines') ?? Object.keys(targets).join(',')).split(',');
  const [count, seed, seconds] = [numberFrom(values, 'mutants', 20), numberFrom(values, 'seed', 1), numberFrom(values, 'seconds', 180)];
  const answer: Record<string, { mutants: number; killed: number; share: number }> = {};
  for (const engine of wanted) {
    const target = targets[engine];
    if (!target) throw new Error(`no engine ${engine}: there is ${Object.keys(targets).join(', ')}`);
    answer[engine] = await tryEngine(root, engine, target, { count, seed, seconds });
  }
  say(JSON.stringify(answer));
  return 0;
}

async function tryEngine(
  root: string,
  engine: string,
  target: Target,
  { count, seed, seconds }: { count: number; seed: number; seconds: number },
): Promise<{ mutants: number; killed: number; share: number }> {
  const folder = copyOf(root);
  try {
    const random = seededRandom(seed);
    const all = target.folders.flatMap((each) => sources(folder, each)).flatMap((path) => mutantsIn(folder, path));
    const chosen: Placed[] = [];
    while (chosen.length < Math.min(count, all.length)) chosen.push(...all.splice(Math.floor(random() * all.length), 1));
    if (!(await passes(folder, target.specs, seconds * 4))) throw new Error(`the specs of ${engine} fail without any mutant`);
    let killed = 0;
    for (const mutant of chosen) {
      const before = readFileSync(join(folder, mutant.path), 'utf8');
      writeFileSync(join(folder, mutant.path), before.slice(0, mutant.start) + mutant.text + before.slice(mutant.end));
      const survives = await passes(folder, target.specs, seconds);
      writeFileSync(join(folder, mutant.path), before);
      const line = before.slice(0, mutant.start).split('\n').length;
      if (survives) say(`survived: ${mutant.path}:${line} ${mutant.what}`);
      else killed++;
    }
    const share = chosen.length === 0 ? 0 : Math.round((1000 * killed) / chosen.length) / 10;
    say(`${engine}: ${killed} of ${chosen.length} seen, ${share} % (of ${all.length + chosen.length} possible)`);
    return { mutants: chosen.length, killed, share };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The sources in a folder of their own, the packages by a link: a mutant never touches the repository. */
function copyOf(root: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-mutants-'));
  for (const each of ['libs', 'tests', 'apps', '.config', 'package.json', 'tsconfig.json'])
    cpSync(join(root, each), join(folder, each), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  return folder;
}

const sources = (folder: string, under: string): string[] =>
  readdirSync(join(folder, under), { recursive: true, encoding: 'utf8' })
    .filter((each) => each.endsWith('.ts') && !each.endsWith('.spec.ts') && !each.endsWith('index.ts') && !/(^|\/)verify-/.test(each))
    .map((each) => `${under}/${each}`)
    .sort();

const mutantsIn = (folder: string, path: string): Placed[] =>
  mutantsOf(readFileSync(join(folder, path), 'utf8')).map((each) => ({ ...each, path }));

/** True when every spec passes within the time. */
function passes(folder: string, specs: readonly string[], seconds: number): Promise<boolean> {
  return new Promise((resolve) => {
    const jest = join(folder, 'node_modules', 'jest', 'bin', 'jest.js');
    const args = [
      '--experimental-vm-modules',
      '--no-warnings',
      jest,
      '-c',
      '.config/jest.config.js',
      '--selectProjects',
      'pure',
      '--bail',
      '--silent',
    ];
    const child = spawn(process.execPath, [...args, '--testPathPatterns', ...specs], { cwd: folder, stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), seconds * 1000);
    child.once('exit', (code) => {
      clearTimeout(timer);
      resolve(code === 0);
    });
  });
}
