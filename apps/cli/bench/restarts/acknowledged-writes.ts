import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { hashOfOperation } from '../../../api/src/platform/door/listed-operations.js';

/** A write, and what the house said of it in the end. */
export interface Write {
  readonly id: string;
  readonly what: string;
  /** The item that it is about. */
  readonly itemId: string;
  said: 'saved' | 'not saved' | 'unknown yet';
  /** Its answer came; otherwise it was asked for afterwards. */
  isAnswered: boolean;
}

export const newWrite = (what: string, itemId: string): Write => ({
  id: randomUUID(),
  what: `bench ${what}`,
  itemId,
  said: 'unknown yet',
  isAnswered: false,
});

/** An incident on the item, under the id of the write: however often it is sent, it is to stand there once. */
export async function sendWrite(address: string, cookie: string, one: Write): Promise<void> {
  const answer = await fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie, 'idempotency-key': `"${one.id}"` },
    body: JSON.stringify({
      variables: { itemId: one.itemId, on: '2026-01-02', what: one.what },
      extensions: { persistedQuery: { version: 1, sha256Hash: hashOfOperation('RecordIncident') } },
    }),
    signal: AbortSignal.timeout(15_000),
  })
    .then(async (response) => (response.ok ? ((await response.json()) as { data?: object | null; errors?: object[] }) : undefined))
    .catch(() => undefined);
  if (!answer?.data || answer.errors) return;
  one.said = 'saved';
  one.isAnswered = true;
}

/** What the house says of a write without an answer: the last word. */
export async function lookUpWrite(address: string, cookie: string, one: Write): Promise<void> {
  if (one.isAnswered) return;
  const response = await fetch(`${address}/api/requests/${one.id}/settle`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-cartwright': '1', cookie },
  });
  if (response.ok) one.said = ((await response.json()) as Pick<Write, 'said'>).said;
}

/** How often each write stands in the database. */
export async function timesOnFile(databaseUrl: string): Promise<ReadonlyMap<string, number>> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  const { rows } = await client.query<{ what: string; times: number }>(
    `SELECT what, count(*)::int AS times FROM incident WHERE what LIKE 'bench %' GROUP BY what`,
  );
  await client.end();
  return new Map(rows.map(({ what, times }) => [what, times]));
}

/** What was said beside what is there. */
export function tallyOf(writes: readonly Write[], onFile: ReadonlyMap<string, number>) {
  const timesOf = (one: Write) => onFile.get(one.what) ?? 0;
  const tally = {
    writes: writes.length,
    acknowledged: writes.filter((each) => each.isAnswered).length,
    lookedUp: writes.filter((each) => !each.isAnswered).length,
    lost: writes.filter((each) => each.said === 'saved' && timesOf(each) === 0).length,
    twice: writes.filter((each) => timesOf(each) > 1).length,
    saidNotSavedButIs: writes.filter((each) => each.said === 'not saved' && timesOf(each) > 0).length,
    notAnswered: writes.filter((each) => each.said === 'unknown yet').length,
  };
  const isTrue = tally.lost + tally.twice + tally.saidNotSavedButIs + tally.notAnswered === 0 && tally.acknowledged > 0;
  return { tally, isTrue };
}
