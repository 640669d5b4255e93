import pg from 'pg';
import { Trouble } from '#runtime';
import { verifyLog } from '../api/src/platform/seal/verify-log.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';
import { sentencesOf } from './keeping/log-verdict-words.js';
import { plainText } from './keeping/stored-tables.js';

const usage = 'npm run -s verify-log -- [--head HASH]';

/** Verifies the log of a house against its seals and a head from paper. Exit code 1 where a line is not what was sealed, naming the first. */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const wanted = headFrom(args);
    const database = await openHouseDatabase(root, (sentence) => void process.stderr.write(`${sentence}\n`));
    const client = new pg.Client({ connectionString: database.url });
    try {
      await client.connect();
      await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
      for (const statement of plainText) await client.query(statement);
      const verdict = await verifyLog(async (sql, values) => (await client.query(sql, values)).rows as never, wanted);
      for (const sentence of sentencesOf(verdict, wanted)) say(sentence);
      return verdict.fault ? 1 : 0;
    } finally {
      await client.end().catch(() => undefined);
      await database.close();
    }
  });
}

function headFrom(args: readonly string[]): string | undefined {
  if (args.length === 0) return undefined;
  const [flag, head, ...more] = args;
  if (flag !== '--head' || head === undefined || more.length > 0 || !/^[0-9a-fA-F]{64}$/.test(head))
    throw new Trouble(`Wanted: ${usage}, the hash of 64 hexadecimal digits as printed.`);
  return head.toLowerCase();
}
