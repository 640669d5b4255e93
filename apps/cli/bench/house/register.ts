import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { AttentionQuery } from '../../../api/src/features/attention/attention.query.js';
import { CountService } from '../../../api/src/features/count/count.service.js';
import { FleetQuery } from '../../../api/src/features/plan/bookings/fleet.query.js';
import { HoldService } from '../../../api/src/features/plan/bookings/hold.service.js';
import { PlanFreshness } from '../../../api/src/features/plan/stored/plan-freshness.reader.js';
import { PlanPartsQuery } from '../../../api/src/features/plan/page/plan-parts.query.js';
import { ShowPageQuery } from '../../../api/src/features/plan/page/show-page.query.js';
import { getTickable } from '../../../api/src/features/plan/page/tickable.query.js';
import { CatalogueQuery } from '../../../api/src/features/register/catalogue.query.js';
import { DatesListQuery } from '../../../api/src/features/register/dates/dates-list.query.js';
import { ItemPageQuery } from '../../../api/src/features/register/item-page.query.js';
import { RecordPageQuery } from '../../../api/src/features/register/records/record-page.query.js';
import { RegisterListQuery, itemSorts } from '../../../api/src/features/register/register-list.query.js';
import { TourListQuery } from '../../../api/src/features/tour/tour-list.query.js';
import { loadDemo } from '../../../api/src/features/transfer/demo.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { writeCursor } from '../../../api/src/platform/graphql/paging.js';
import { makeDemoPlan } from './demo-plan.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { fillHouse } from './made-house.js';

type App = Awaited<ReturnType<typeof createApp>>;
type Screens = Record<string, () => Promise<unknown>>;

const today = '2027-02-26';
const goalMs = 50;

interface Time {
  readonly p50: number;
  readonly p95: number;
}

/** Every screen's query in houses of growing size with ten years of examinations: p50 and p95 in milliseconds. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const sizes = (values.get('items') ?? '1000,10000,100000').split(',').map(Number);
  const rounds = numberFrom(values, 'rounds', 40);
  const table = new Map<string, Map<number, Time>>();
  for (const size of sizes) {
    const times = await measureHouse(size, rounds, root);
    for (const [screen, time] of times) table.set(screen, (table.get(screen) ?? new Map<number, Time>()).set(size, time));
  }
  say(`${'screen'.padEnd(44)}${sizes.map((size) => `${size} p50/p95`.padStart(20)).join('')}`);
  for (const [screen, times] of table)
    say(
      `${screen.padEnd(44)}${sizes.map((size) => `${times.get(size)!.p50.toFixed(1)} / ${times.get(size)!.p95.toFixed(1)}`.padStart(20)).join('')}`,
    );
  const over = [...table].flatMap(([screen, times]) => (times.get(sizes.at(-1)!)!.p95 > goalMs ? [screen] : []));
  const screens = Object.fromEntries([...table].map(([screen, times]) => [screen, Object.fromEntries(times)]));
  say(JSON.stringify({ sizes, rounds, goalMs, over, screens }));
  return over.length > 0 ? 1 : 0;
}

async function measureHouse(size: number, rounds: number, root: string): Promise<Map<string, { p50: number; p95: number }>> {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  await migrate(database.url);
  const app = await createApp({
    config: configOf(database.url),
    clock: { now: () => new Date(`${today}T09:00:00Z`) },
  });
  try {
    await app.init();
    const dataSource = app.get(DataSource);
    await loadDemo(dataSource, app.get(TourFileService), root, today, () => 'bench only 1');
    const planId = await makeDemoPlan(dataSource);
    const start = performance.now();
    await fillHouse(dataSource, size, today);
    const [counted]: { items: number; examinations: number; tours: number }[] = await dataSource.query(
      `SELECT (SELECT count(*)::int FROM item) AS items, (SELECT count(*)::int FROM examination) AS examinations, (SELECT count(*)::int FROM tour) AS tours`,
    );
    say(
      `${size}: ${counted!.items} items, ${counted!.examinations} examinations, ${counted!.tours} tours, filled in ${((performance.now() - start) / 1000).toFixed(1)} s`,
    );
    const times = new Map<string, { p50: number; p95: number }>();
    for (const [screen, ask] of Object.entries(await screensOf(app, dataSource, planId))) times.set(screen, await timesOf(ask, rounds));
    return times;
  } finally {
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function timesOf(ask: () => Promise<unknown>, rounds: number): Promise<{ p50: number; p95: number }> {
  for (let warm = 0; warm < 3; warm++) await ask();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    await ask();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => Number(times[Math.min(times.length - 1, Math.ceil(times.length * share) - 1)]!.toFixed(2));
  return { p50: at(0.5), p95: at(0.95) };
}

async function screensOf(app: App, dataSource: DataSource, planId: string): Promise<Screens> {
  const [middle]: { id: string }[] = await dataSource.query(
    `SELECT id FROM item ORDER BY id OFFSET (SELECT count(*) / 2 FROM item) LIMIT 1`,
  );
  const [late]: { due: string; id: string }[] = await dataSource.query(
    `SELECT due_on::text AS due, id FROM item WHERE state = 'in service' AND due_on IS NOT NULL ORDER BY due_on DESC, id LIMIT 1`,
  );
  const item = 'HOIST-000007';
  const [register, page, dates] = [app.get(RegisterListQuery), app.get(ItemPageQuery), app.get(DatesListQuery)];
  const [show, parts, freshness] = [app.get(ShowPageQuery), app.get(PlanPartsQuery), app.get(PlanFreshness)];
  const [planned]: { tourId: string; showId: string }[] = await dataSource.query(
    `SELECT tour_id AS "tourId", show_id AS "showId" FROM pack_plan WHERE id = $1`,
    [planId],
  );
  const { tourId, showId } = planned!;
  const [hang, truck] = [(await parts.hangs(planId))[0]!, (await parts.trucks(planId))[0]!];
  let touched = 0;
  return {
    'register, first page': () => register.items({}),
    'register, a page in the middle': () => register.items({ after: writeCursor(JSON.stringify(['serial', middle!.id, middle!.id])) }),
    'register, one kind in quarantine': () => register.items({ kind: 'box', state: 'quarantined' }),
    'register, search that finds many': () => register.items({ search: 'Ferry Lane' }),
    'register, search that finds few': () => register.items({ search: '-00042' }),
    'register, search that finds nothing': () => register.items({ search: 'zebra crossing' }),
    'register, search of two letters': () => register.items({ search: 'sh' }),
    ...ordersOf(register, middle!.id),
    'item, head': () => page.head(item),
    'item, records': () => app.get(RecordPageQuery).records(item, 20),
    'item, history': () => page.history(item, 20),
    'dates, first page': () => dates.examined(100),
    'dates, a late page': () => dates.examined(100, writeCursor(JSON.stringify([true, late!.due, late!.id]))),
    catalogue: () => app.get(CatalogueQuery).models(),
    'today, warehouse': () => app.get(AttentionQuery).notes('warehouse', 30),
    'today, system': () => app.get(AttentionQuery).notes('system', 30),
    'today, safety': () => app.get(AttentionQuery).notes('safety', 30),
    'tours, first page': () => app.get(TourListQuery).tours(50),
    'tour, states of its shows': () => show.heads(tourId),
    'fleet, 60 days': () => app.get(FleetQuery).calendar(today, 60, null),
    'fleet, what would free a box': () => app.get(FleetQuery).remedies('Made box 01', today, null),
    holds: () => app.get(HoldService).list(),
    'count sheet': () => app.get(CountService).sheet(tourId, showId),
    'show, head': () => show.page(tourId, showId),
    'show, stale or not': () => freshness.changed([planId]),
    'show, stale or not after an item changed': async () => {
      await dataSource.query(`UPDATE item SET rest = rest || jsonb_build_object('reason', $1::text) WHERE id = 'SHACKLE-000001'`, [
        `worn ${touched++}`,
      ]);
      return freshness.changed([planId]);
    },
    'show, findings': () => parts.findings(planId),
    'show, carts': () => parts.carts(planId),
    'show, one hang': () => parts.hang(planId, hang),
    'show, hardware': () => parts.hardware(planId),
    'show, one truck': () => parts.truck(planId, truck),
    'show, dates': () => parts.due(planId),
    'poll: what version': () => show.version(tourId, showId),
    'tick: what it decides on': () => getTickable(dataSource.manager, planId),
  };
}

/** The register in every order. */
function ordersOf(register: RegisterListQuery, middleId: string): Screens {
  return {
    ...Object.fromEntries(
      itemSorts.flatMap((sort) => [
        [`register, by ${sort}`, () => register.items({ sort })],
        [`register, by ${sort}, the other way`, () => register.items({ sort, descending: true })],
      ]),
    ),
    'register, one kind by last day': () => register.items({ kind: 'shackle', sort: 'last day' }),
    'register, one kind by model': () => register.items({ kind: 'truck', sort: 'model' }),
    'register, one depot in quarantine by last day': () => register.items({ depot: 'Ferry Lane', state: 'quarantined', sort: 'last day' }),
    'register, search by last day': () => register.items({ search: '-00042', sort: 'last day' }),
    'register, by depot, a page in the middle': () =>
      register.items({ sort: 'depot', after: writeCursor(JSON.stringify(['depot', 'Ferry Lane', middleId])) }),
  };
}
