import { readFileSync } from 'node:fs';
import type { BadInput, Result } from '#kernel';
import { engines } from './engines.js';

/** Prints one JSON document (or with --lines one JSON line per case); exit code 1 when a case is malformed. */
export async function main(args: readonly string[]): Promise<number> {
  const read = readArguments(args);
  if (!read.ok) return printLine({ error: read.error }, 1);
  const { engine, files, seconds, work, lines } = read.value;
  const solve = await engine();
  let exitCode = 0;
  for (const file of files) {
    const started = performance.now();
    const answer = answerFile(file, (input) => solve(input, { seconds, work }));
    if (!answer.ok) exitCode = 1;
    const body = answer.ok ? { result: answer.value } : { error: firstFault(answer.error) };
    if (lines) printLine({ file, seconds: round((performance.now() - started) / 1000), ...body });
    else printLine(answer.ok ? answer.value : body);
  }
  return exitCode;
}

function answerFile(file: string, solve: (input: unknown) => Result<unknown, readonly BadInput[]>): Result<unknown, readonly BadInput[]> {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch {
    return { ok: false, error: [{ field: '(file)', value: file, wanted: 'a file that can be read' }] };
  }
  if (bytes[0] === 0xff || bytes[0] === 0xfe || bytes.subarray(0, 64).includes(0))
    return { ok: false, error: [{ field: '(whole file)', value: 'UTF-16', wanted: 'JSON (RFC 8259) in UTF-8; save it again as UTF-8' }] };
  let input: unknown;
  try {
    input = JSON.parse(bytes.toString('utf8').replace(/^\uFEFF/, ''));
  } catch (fault) {
    return {
      ok: false,
      error: [{ field: '(whole file)', value: (fault as Error).message.slice(0, 120), wanted: 'JSON (RFC 8259) in UTF-8' }],
    };
  }
  return solve(input);
}

interface Arguments {
  engine: (typeof engines)[string];
  files: string[];
  seconds: number;
  work: number | undefined;
  lines: boolean;
}

function readArguments(args: readonly string[]): Result<Arguments, BadInput> {
  const [name, ...rest] = args;
  const engine = name === undefined || !Object.hasOwn(engines, name) ? undefined : engines[name];
  if (!engine) return { ok: false, error: { field: 'engine', value: name ?? null, wanted: `one of: ${Object.keys(engines).join(', ')}` } };
  const files: string[] = [];
  let seconds = 10;
  let work: number | undefined;
  let lines = false;
  for (let index = 0; index < rest.length; index++) {
    const each = rest[index]!;
    if (each === '--lines') lines = true;
    else if (each === '--seconds') {
      const text = rest[++index];
      seconds = numberIn(text, 0, 86_400);
      if (Number.isNaN(seconds))
        return { ok: false, error: { field: '--seconds', value: text ?? null, wanted: 'a number of seconds from 0 to 86400' } };
    } else if (each === '--work') {
      const text = rest[++index];
      work = numberIn(text, 1, 1e15);
      if (Number.isNaN(work))
        return { ok: false, error: { field: '--work', value: text ?? null, wanted: 'units of work, a number from 1 to 1e15' } };
    } else if (each.startsWith('--'))
      return { ok: false, error: { field: 'option', value: each, wanted: '--work N, --seconds N or --lines' } };
    else files.push(each);
  }
  if (files.length === 0) return { ok: false, error: { field: 'case', value: null, wanted: 'a case file' } };
  if (files.length > 1 && !lines)
    return { ok: false, error: { field: 'case', value: files[1], wanted: 'one case file, or --lines for several' } };
  return { ok: true, value: { engine, files, seconds, work, lines } };
}

/** NaN where the text is no number within these bounds. */
function numberIn(text: string | undefined, least: number, most: number): number {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text);
  return value >= least && value <= most ? value : NaN;
}

const firstFault = (faults: readonly BadInput[]) => (faults.length > 1 ? { ...faults[0], others: faults.slice(1, 20) } : faults[0]);
const round = (seconds: number) => Math.round(seconds * 1e4) / 1e4;

function printLine(body: unknown, exitCode = 0): number {
  process.stdout.write(`${JSON.stringify(body)}\n`);
  return exitCode;
}
