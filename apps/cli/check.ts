import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { startEmbeddedDatabase } from '#runtime';
import { dataSourceOptions, migrate } from '../api/src/data-source.js';
import { findViolations } from './layout/boundaries.js';
import { main as generate } from './generate.js';
import { readLayout } from './layout/read-layout.js';

interface Step {
  readonly what: string;
  /** What is wrong, in lines; empty when nothing is. */
  readonly find: (root: string) => string | Promise<string>;
  /** It changes files for a moment that others read: nothing runs beside it. */
  readonly isAlone?: boolean;
}

/** Places that were there before a rule are listed by file and number; more of them fail, and so does a list that is longer than it must be. */
const lintArguments = ['-c', '.config/eslint.config.js', '--suppressions-location', '.config/eslint-suppressions.json'];

/** What takes longest stands first. */
const steps: readonly Step[] = [
  {
    what: 'lint',
    find: (root) => tool(root, 'eslint/bin/eslint.js', [...lintArguments, '--max-warnings', '0', 'apps', 'libs', 'migrations', 'tests']),
  },
  { what: 'types: engines, without Node and DOM', find: (root) => tool(root, 'typescript/bin/tsc', ['-p', 'libs/tsconfig.json']) },
  { what: 'types: API, commands, tests', find: (root) => tool(root, 'typescript/bin/tsc', ['-p', 'tsconfig.json']) },
  { what: 'types: screens', find: (root) => tool(root, 'typescript/bin/tsc', ['-p', 'apps/web/tsconfig.json']) },
  { what: 'format', find: (root) => tool(root, '@biomejs/biome/bin/biome', ['format', '.']) },
  { what: 'dependency rules', find: boundaries },
  { what: 'folders without circles', find: circles },
  { what: 'unused code', find: (root) => tool(root, 'knip/bin/knip.js', ['--config', '.config/knip.json', '--no-progress']) },
  { what: 'generated files fresh', find: stale, isAlone: true },
  { what: 'migrations agree with the entities', find: drift },
  { what: 'no machine paths, no registry addresses', find: leaks },
];

/** Everything that a machine can say about the code without running its tests, two at a time. Exit code 1 and the lines when something is wrong. */
export async function main(args: readonly string[], root: string): Promise<number> {
  const wanted = args.length === 0 ? steps : steps.filter((step) => args.some((word) => step.what.includes(word)));
  let failed = 0;
  const run = async ({ what, find }: Step) => {
    const wrong = await find(root);
    process.stdout.write(wrong === '' ? `ok      ${what}\n` : `WRONG   ${what}\n${wrong.trimEnd()}\n`);
    if (wrong !== '') failed++;
  };
  for (const step of wanted.filter((each) => each.isAlone)) await run(step);
  const left = wanted.filter((each) => !each.isAlone);
  const lane = async () => {
    for (let step = left.shift(); step; step = left.shift()) await run(step);
  };
  await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, lane));
  process.stdout.write(`${wanted.length - failed} checks passed, ${failed} failed\n`);
  return failed > 0 ? 1 : 0;
}

async function tool(root: string, file: string, args: readonly string[]): Promise<string> {
  const child = spawn(process.execPath, [join(root, 'node_modules', file), ...args], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text: string) => (said += text));
  const code = await new Promise<number | null>((resolve, reject) => child.once('error', reject).once('close', resolve));
  return code === 0 ? '' : said || `${file} ended with ${code}\n`;
}

async function boundaries(root: string): Promise<string> {
  const violations = await findViolations(root, root, ['apps', 'libs', 'migrations', 'tests']);
  return violations.map(({ rule, from, to, comment }) => `${from} -> ${to}\n    ${rule}: ${comment}\n`).join('');
}

async function circles(root: string): Promise<string> {
  const layout = await readLayout(root);
  return layout.circles.map((circle) => `these folders need one another: ${circle.join(', ')}\n`).join('');
}

/** Makes the generated files anew and puts back what was there where they differ. */
async function stale(root: string): Promise<string> {
  const folder = join(root, 'libs', 'contracts');
  const before = contentsOf(folder);
  await generate([], root);
  const after = contentsOf(folder);
  const names = [...new Set([...before.keys(), ...after.keys()])].filter((name) => before.get(name) !== after.get(name));
  for (const name of names) {
    const text = before.get(name);
    if (text === undefined) rmSync(join(folder, name));
    else writeFileSync(join(folder, name), text);
  }
  return names.map((name) => `libs/contracts/${name} is not what npm run generate makes\n`).join('');
}

function contentsOf(folder: string): Map<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.\w+$/.test(name));
  return new Map(names.map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
}

/** The statements that would still be needed after all migrations. */
async function drift(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-check-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  try {
    await migrate(database.url);
    const dataSource = await new DataSource(dataSourceOptions(database.url)).initialize();
    const { upQueries } = await dataSource.driver.createSchemaBuilder().log();
    await dataSource.destroy();
    return upQueries.map(({ query }) => `${query}\n`).join('');
  } finally {
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

function leaks(root: string): string {
  const grep = (args: readonly string[]) =>
    spawnSync('git', ['grep', '-nI', ...args, '--', '.'], { cwd: root, encoding: 'utf8' }).stdout ?? '';
  return grep(['-F', `${root}/`]) + grep(['-E', '"resolved": "https?:']);
}
