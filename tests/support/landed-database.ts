import { readFileSync } from 'node:fs';
import pg from 'pg';
import { prepareDatabase } from '../../apps/api/src/prepare-database.js';

/**
 * Loads the text dump of a database as it once stood (schema and rows) into an empty database, then brings it to today's shape by the migrations that
 * it has not seen. Gives back how many ran.
 */
export async function loadLanded(databaseUrl: string, day: string): Promise<number> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query(readFileSync(`tests/database/landed/${day}.sql`, 'utf8'));
  } finally {
    await client.end();
  }
  return (await prepareDatabase({ databaseUrl, ownerUrl: null })).ran;
}
