import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { groupDigits } from '#kernel';
import { Trouble } from '#runtime';
import { checkIndexes } from './keeping/check-indexes.js';
import { atTerminal, openHouseDatabase, sizeOf } from './keeping/house-database.js';
import { sentencesOf } from './keeping/log-verdict-words.js';
import { diskFull, writeBackup } from './keeping/write-backup.js';

const usage = 'npm run backup -- FILE';

/** Everything that is on file into one file, while the house goes on working. Exit code 1 where it was not written, or the server found its own files damaged. */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const [path, ...more] = args;
    if (path === undefined || path.startsWith('-') || more.length > 0) throw new Trouble(`Wanted: ${usage}`);
    const database = await openHouseDatabase(root, say);
    const client = new pg.Client({ connectionString: database.url, application_name: 'cartwright backup' });
    try {
      await client.connect();
      const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
      const { manifest, bytes, notSealed, verdict } = await writeBackup(client, path, version, new Date());
      const rows = manifest.tables.reduce((sum, each) => sum + each.rows, 0);
      say(
        `${path}: ${groupDigits(rows)} rows of ${manifest.tables.length} tables as of ${manifest.madeAt}, ${sizeOf(bytes)}, read back and compared.`,
      );
      say('It holds everything, hashed passwords too: keep it where only you can read it, and not on this machine alone.');
      if (manifest.log)
        say(
          `Head of the log: ${manifest.log.head} (${groupDigits(manifest.log.lines)} lines). Keep it elsewhere too: verify-log takes it.`,
        );
      if (notSealed !== null) say(`The newest lines of the log are NOT SEALED in it: ${notSealed}. Everything else is in it.`);
      if (verdict) say(`The log: ${sentencesOf(verdict).join(' ')}`);
      const check = await checkIndexes(client);
      if (check.notDone !== undefined) say(`The server's own check of its tables and indexes was not made: ${check.notDone}.`);
      else if (check.faults.length === 0) say(`The server checked ${check.tables} tables and ${check.indexes} indexes: nothing wrong.`);
      else
        say(
          `The server's own check of its files FOUND FAULTS; the rows were read, but this house should be restored:\n  ${check.faults.join('\n  ')}`,
        );
      if (check.faults.length > 0) return 1;
      // Where it is told how the house is, the last backup stands.
      await client
        .query(
          `INSERT INTO event (at, who, what, sentence) VALUES (clock_timestamp(), '', 'backed up', 'A backup was written and compared.')`,
        )
        .catch((fault: { code?: string }) => {
          if (fault.code !== diskFull) throw fault;
          say('The backup is whole; that it was made could not be written into the log: the disk of the database is full. Make room.');
        });
      return verdict?.fault ? 1 : 0;
    } finally {
      await client.end().catch(() => undefined);
      await database.close();
    }
  });
}
