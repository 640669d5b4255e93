import { type Hash, createHash } from 'node:crypto';
import { Trouble } from '#runtime';
import { type Manifest, manifestName, manifestSchema, partName } from './manifest.js';
import { readPacked } from './packed-file.js';

/** Reads a backup from end to end and compares every table's rows with what it says of itself. Throws Trouble where anything differs. */
export async function readBackup(path: string): Promise<{ readonly manifest: Manifest }> {
  const found = new Map<string, { hash: Hash; bytes: number; parts: number }>();
  let said: unknown;
  await eachPart(path, ({ name, bytes }) => {
    if (name === manifestName) {
      said = JSON.parse(bytes.toString('utf8'));
      return;
    }
    const table = tableOf(name) ?? '';
    const soFar = found.get(table) ?? { hash: createHash('sha256'), bytes: 0, parts: 0 };
    if (said !== undefined || name !== partName(table, soFar.parts + 1)) throw new Error(`the part ${name} is not where it belongs`);
    soFar.hash.update(bytes);
    found.set(table, { hash: soFar.hash, bytes: soFar.bytes + bytes.length, parts: soFar.parts + 1 });
  });
  const read = manifestSchema.safeParse(said);
  if (!read.success)
    throw new Trouble(`${path} is no backup of a house: ${read.error.issues[0]?.path.join('.') || manifestName} is missing.`);
  for (const { name, bytes, sha256 } of read.data.tables) {
    const table = found.get(name);
    found.delete(name);
    const [has, hash] = table ? [table.bytes, table.hash.digest('hex')] : [0, createHash('sha256').digest('hex')];
    if (has !== bytes || hash !== sha256) throw new Trouble(`${path} is damaged: the rows of ${name} are not those that were written.`);
  }
  if (found.size > 0) throw new Trouble(`${path} is damaged: it holds rows of ${[...found.keys()].join(', ')}, of which it says nothing.`);
  return { manifest: read.data };
}

/** The rows of every table that has some, in the order in which they were written. */
export async function* tablesOf(path: string): AsyncGenerator<{ readonly table: string; readonly chunks: AsyncIterable<Buffer> }> {
  const parts = readPacked(path);
  let next = await parts.next();
  while (!next.done && next.value.name !== manifestName) {
    const table = tableOf(next.value.name) ?? '';
    yield {
      table,
      chunks: (async function* () {
        while (!next.done && tableOf(next.value.name) === table) {
          yield next.value.bytes;
          next = await parts.next();
        }
      })(),
    };
  }
}

const tableOf = (part: string): string | undefined => /^tables\/([^/]+)\/\d{6}\.copy$/.exec(part)?.[1];

async function eachPart(path: string, look: (part: { name: string; bytes: Buffer }) => void): Promise<void> {
  try {
    for await (const part of readPacked(path)) look(part);
  } catch (fault) {
    const { code = '', message } = fault as NodeJS.ErrnoException;
    if (code === 'ENOENT') throw new Trouble(`${path} is not there: wanted a file that npm run backup made.`);
    throw new Trouble(`${path} is damaged, or no backup: ${code.startsWith('Z_') ? 'it cannot be unpacked' : message}.`);
  }
}
