import { Trouble } from '#runtime';
import { benches } from './benches.js';

/** Without arguments lists the benches; `bench NAME [options]` runs one. */
export async function main(args: readonly string[], root: string): Promise<number> {
  const [name, ...rest] = args;
  const bench = name === undefined || !Object.hasOwn(benches, name) ? undefined : benches[name];
  if (!bench) {
    for (const [each, { does }] of Object.entries(benches)) process.stdout.write(`${each.padEnd(24)}${does}\n`);
    return name === undefined ? 0 : 1;
  }
  const { run } = await bench.load();
  try {
    return await run(rest, root);
  } catch (fault) {
    if (!(fault instanceof Trouble)) throw fault;
    process.stderr.write(`${fault.message}\n`);
    return 1;
  }
}
