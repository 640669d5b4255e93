import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Trouble } from '#runtime';

/** Reads `--name value` pairs; a flag without a value is "true". */
export function readArguments(args: readonly string[]): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  for (let index = 0; index < args.length; index++) {
    const name = /^--([a-z-]+)$/.exec(args[index]!)?.[1];
    if (name === undefined) throw new Trouble(`"${args[index]}" is no option: wanted --name value.`);
    const next = args[index + 1];
    const hasValue = next !== undefined && !next.startsWith('--');
    values.set(name, hasValue ? next : 'true');
    if (hasValue) index++;
  }
  return values;
}

export function folderFrom(values: ReadonlyMap<string, string>): string {
  const folder = values.get('data');
  if (folder === undefined || !existsSync(resolve(folder)))
    throw new Trouble(`--data is ${folder ?? 'missing'}: wanted a folder that exists.`);
  return resolve(folder);
}

export function numberFrom(values: ReadonlyMap<string, string>, name: string, otherwise: number): number {
  const text = values.get(name);
  const value = text === undefined ? otherwise : Number(text);
  if (!Number.isFinite(value) || value <= 0) throw new Trouble(`--${name} is ${text}: wanted a number above 0.`);
  return value;
}

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? 0 : sorted[Math.floor((sorted.length - 1) / 2)]!;
};

export const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Time on the wall, or, on a machine that is shared, of the processor: all threads of the process, so never less than a core alone would need. */
export function clockFrom(value: string | undefined) {
  if (value === undefined || value === 'wall') return { clock: 'wall', now: () => performance.now() };
  if (value !== 'processor') throw new Trouble(`--clock is ${value}: wanted wall or processor.`);
  const now = () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
  return { clock: value, now };
}
