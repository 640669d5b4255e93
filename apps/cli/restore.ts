import pg from 'pg';
import { groupDigits } from '#kernel';
import { Trouble } from '#runtime';
import { type LogVerdict, verifyLog } from '../api/src/platform/seal/verify-log.js';
import { checkIndexes } from './keeping/check-indexes.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';
import { sentencesOf } from './keeping/log-verdict-words.js';
import { restoreBackup } from './keeping/restore-backup.js';
import { plainText } from './keeping/stored-tables.js';

const usage = 'npm run restore -- FILE [--replace]';

/** A backup into an empty house, all or nothing; with --replace in the place of what is there. */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const replace = args.includes('--replace');
    const [path, ...more] = args.filter((each) => each !== '--replace');
    if (path === undefined || path.startsWith('-') || more.length > 0) throw new Trouble(`Wanted: ${usage}`);
    const database = await openHouseDatabase(root, say, true);
    try {
      const { manifest, migrated } = await restoreBackup(database.url, path, replace);
      const rows = manifest.tables.reduce((sum, each) => sum + each.rows, 0);
      say(`Restored as of ${manifest.madeAt}: ${groupDigits(rows)} rows of ${manifest.tables.length} tables, read out again and compared.`);
      if (migrated > 0)
        say(`The backup is of an earlier version: ${migrated} ${migrated === 1 ? 'change' : 'changes'} of shape made since.`);
      const client = new pg.Client({ connectionString: database.url });
      await client.connect();
      const verdict = await verdictOf(client);
      if (verdict) say(`The log: ${sentencesOf(verdict).join(' ')}`);
      const check = await checkIndexes(client).finally(() => client.end());
      if (check.notDone !== undefined) say(`The server's own check of its tables and indexes was not made: ${check.notDone}.`);
      else if (check.faults.length === 0) say(`The server checked ${check.tables} tables and ${check.indexes} indexes: nothing wrong.`);
      else say(`The server's own check FOUND FAULTS:\n  ${check.faults.join('\n  ')}`);
      say('Everybody signs in again. Start it with npm start.');
      return check.faults.length > 0 || verdict?.fault ? 1 : 0;
    } finally {
      await database.close();
    }
  });
}

/** Whether what came back is as it was sealed, before anybody works with it; null: of a version without seals. */
async function verdictOf(client: pg.Client): Promise<LogVerdict | null> {
  await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
  for (const statement of plainText) await client.query(statement);
  try {
    return await verifyLog(async (sql, values) => (await client.query(sql, values)).rows as never);
  } finally {
    await client.query('ROLLBACK');
  }
}
