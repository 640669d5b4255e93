import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { addDays, seededRandom } from '#kernel';
import { startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { demoPeople, loadDemo } from '../../../api/src/features/transfer/demo.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { cookieOf } from './house.js';
import { numberFrom, readArguments, say } from '../arguments.js';

const place = `mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename ... on BookingRefusal { sentence clashes { item from to tour } } } }`;
const password = 'bench only 1';

/** Racing attempts to hold overlapping dates of the same 50 boxes through the API, on a database of its own. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const attempts = numberFrom(values, 'attempts', 10_000);
  const atOnce = numberFrom(values, 'at-once', 32);
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  await migrate(database.url);
  const app = await createApp({
    config: configOf(database.url),
  });
  try {
    await app.listen(0, '127.0.0.1');
    const dataSource = app.get(DataSource);
    await loadDemo(dataSource, app.get(TourFileService), root, '2027-02-26', () => password);
    const address = `http://127.0.0.1:${(app.getHttpServer().address() as AddressInfo).port}/graphql`;
    const cookie = await cookieOf(new URL(address).origin, demoPeople.find((each) => each.role === 'warehouse')!.email, password);
    const boxes: { id: string }[] = await dataSource.query(
      `SELECT id FROM item WHERE kind = 'box' AND model = 'Plover' ORDER BY id LIMIT 50`,
    );
    const random = seededRandom(50);
    const holds = Array.from({ length: attempts }, (_, index) => {
      const from = addDays('2027-06-01', Math.floor(random() * 365));
      const items = [
        ...new Set(Array.from({ length: 1 + Math.floor(random() * 4) }, () => boxes[Math.floor(random() * boxes.length)]!.id)),
      ];
      return { name: `Hold ${index + 1}`, from, to: addDays(from, Math.floor(random() * 14)), hours: 24, items };
    });
    const told = { held: 0, refused: 0, unexplained: 0, faults: 0 };
    const start = performance.now();
    let next = 0;
    await Promise.all(
      Array.from({ length: atOnce }, async () => {
        for (let index = next++; index < holds.length; index = next++) {
          const answer = await ask(address, cookie, holds[index]!);
          told[answer]++;
        }
      }),
    );
    const seconds = (performance.now() - start) / 1000;
    const twice: unknown[] = await dataSource.query(
      `SELECT a.item_id FROM booking a JOIN booking b ON a.item_id = b.item_id AND a.id < b.id AND a.period && b.period WHERE a.count IS NULL AND b.count IS NULL`,
    );
    const booked: { n: number }[] = await dataSource.query(
      `SELECT count(DISTINCT tour_name)::int AS n FROM booking WHERE hold_until IS NOT NULL`,
    );
    const waiting: { n: number }[] = await dataSource.query(`SELECT count(*)::int AS n FROM pg_locks WHERE NOT granted`);
    const isRight = twice.length === 0 && told.unexplained === 0 && told.faults === 0 && booked[0]!.n === told.held && waiting[0]!.n === 0;
    say(
      JSON.stringify({
        attempts,
        atOnce,
        ...told,
        heldInDatabase: booked[0]!.n,
        doubleBookings: twice.length,
        locksLeftWaiting: waiting[0]!.n,
        seconds: Number(seconds.toFixed(1)),
        perSecond: Math.round(attempts / seconds),
      }),
    );
    return isRight ? 0 : 1;
  } finally {
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Reply {
  readonly data?: { readonly placeHold: { readonly __typename: string; readonly sentence?: string; readonly clashes?: readonly object[] } };
}

async function ask(address: string, cookie: string, hold: object): Promise<'held' | 'refused' | 'unexplained' | 'faults'> {
  const response = await post(address, cookie, place, { hold });
  const answer = ((await response.json()) as Reply).data?.placeHold;
  if (!answer) return 'faults';
  if (answer.__typename === 'Hold') return 'held';
  return answer.sentence && answer.clashes && answer.clashes.length > 0 ? 'refused' : 'unexplained';
}

function post(address: string, cookie: string, query: string, variables: object): Promise<Response> {
  return fetch(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify({ query, variables }),
  });
}
