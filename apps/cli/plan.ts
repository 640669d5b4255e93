import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawCode, wholePlanHtml } from '#drawings';
import { type PackPlan, capSeconds, makePackPlan, printedPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { type TourFile, readTourFile } from '#tour-file';
import { planTables } from './plan-tables.js';

const usage = 'npm run plan -- FILE [--show ID] [--out DIR] [--json]';

/** Plans one show of a tour file (the first unless told): files into --out, or the five results as JSON on standard output. */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (typeof options === 'string') return refuse([{ field: 'arguments', value: args.join(' '), wanted: `${options}; ${usage}` }]);
  const read = readFile(options.file);
  if ('faults' in read) return refuse(read.faults);
  const show = options.show ?? read.file.tour.shows[0]!.id;
  if (!read.file.tour.shows.some((each) => each.id === show))
    return refuse([{ field: '--show', value: show, wanted: `one of: ${read.file.tour.shows.map((each) => each.id).join(', ')}` }]);
  const plan = makePackPlan(read.file, show, {
    now: () => performance.now(),
    integerProgram: await loadIntegerProgramSolver(),
    timeLimitSeconds: capSeconds,
  });
  if (options.json) {
    process.stdout.write(`${JSON.stringify(printedPlan(plan))}\n`);
    return 0;
  }
  try {
    writePlan(plan, options.out);
  } catch (fault) {
    return refuse([
      {
        field: '--out',
        value: options.out,
        wanted: `a folder that can be written (${(fault as NodeJS.ErrnoException).code ?? 'unknown'})`,
      },
    ]);
  }
  return 0;
}

function readOptions(args: readonly string[]): { file: string; show: string | undefined; out: string; json: boolean } | string {
  let [file, show, out, json]: [string | undefined, string | undefined, string, boolean] = [undefined, undefined, 'out', false];
  for (let index = 0; index < args.length; index++) {
    const each = args[index]!;
    if (each === '--json') json = true;
    else if (each === '--out' || each === '--show') {
      const value = args[++index];
      if (value === undefined) return `a value after ${each}`;
      if (each === '--out') out = value;
      else show = value;
    } else if (each.startsWith('--')) return `no option ${each}`;
    else if (file === undefined) file = each;
    else return 'one tour file';
  }
  return file === undefined ? 'a tour file' : { file, show, out, json };
}

type Fault = { field: string; value: unknown; wanted: string };
const mostBytes = 50_000_000;

function readFile(path: string): { file: TourFile } | { faults: readonly Fault[] } {
  let bytes: Buffer;
  try {
    if (statSync(path).size > mostBytes) return { faults: [{ field: '(file)', value: path, wanted: 'a file of at most 50 MB' }] };
    bytes = readFileSync(path);
  } catch {
    return { faults: [{ field: '(file)', value: path, wanted: 'a file that can be read' }] };
  }
  if (bytes[0] === 0xff || bytes[0] === 0xfe)
    return { faults: [{ field: '(whole file)', value: 'UTF-16', wanted: 'JSON (RFC 8259) in UTF-8; save it again as UTF-8' }] };
  let input: unknown;
  try {
    input = JSON.parse(bytes.toString('utf8').replace(/^\uFEFF/, ''));
  } catch (fault) {
    return { faults: [{ field: '(whole file)', value: (fault as Error).message.slice(0, 120), wanted: 'JSON (RFC 8259) in UTF-8' }] };
  }
  const read = readTourFile(input);
  return read.ok ? { file: read.value } : { faults: read.error };
}

function refuse(faults: readonly Fault[]): number {
  process.stdout.write(`${JSON.stringify({ error: faults.length > 1 ? { ...faults[0], others: faults.slice(1, 50) } : faults[0] })}\n`);
  return 1;
}

function writePlan(plan: PackPlan, out: string): void {
  // One level only: a folder below one that does not exist is a slip of the pen.
  if (!existsSync(out)) mkdirSync(out);
  const files: [string, string][] = [
    ['plan.json', `${JSON.stringify(plan, null, 1)}\n`],
    ['plan.html', wholePlanHtml({ plan, revision: null }, 'metric', drawCode)],
    ...Object.entries(planTables(plan)).map(([name, text]): [string, string] => [`${name}.csv`, text]),
  ];
  for (const [name, text] of files) writeFileSync(join(out, name), text);
  const stops = plan.findings.filter((each) => each.weight === 'stop').length;
  const looks = plan.findings.filter((each) => each.weight === 'look').length;
  process.stdout.write(
    `${plan.show.name}: ${files.map(([name]) => join(out, name)).join(', ')}\n${stops} to stop for, ${looks} to look at.\n`,
  );
  for (const each of plan.findings)
    if (each.weight !== 'agrees') process.stdout.write(`${each.weight === 'stop' ? '■' : '◐'} ${each.sentence}\n`);
}
