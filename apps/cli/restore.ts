import pg from 'pg';
import { groupDigits } from '#kernel';
import { Trouble } from '#runtime';
import { checkIndexes } from './keeping/check-indexes.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';
import { restoreBackup } from './keeping/restore-backup.js';

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
      const check = await checkIndexes(client).finally(() => client.end());
      if (check.notDone !== undefined) say(`The server's own check of its tables and indexes was not made: ${check.notDone}.`);
      else if (check.faults.length === 0) say(`The server checked ${check.tables} tables and ${check.indexes} indexes: nothing wrong.`);
      else say(`The server's own check FOUND FAULTS:\n  ${check.faults.join('\n  ')}`);
      say('Everybody signs in again. Start it with npm start.');
      return check.faults.length > 0 ? 1 : 0;
    } finally {
      await database.close();
    }
  });
}
