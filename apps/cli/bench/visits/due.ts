import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { addDays } from '#kernel';
import { startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { AttentionQuery } from '../../../api/src/features/attention/attention.query.js';
import { PlanPartsQuery } from '../../../api/src/features/plan/page/plan-parts.query.js';
import { DatesListQuery } from '../../../api/src/features/register/dates/dates-list.query.js';
import { loadDemo } from '../../../api/src/features/transfer/demo.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { loadSeason } from '../../../api/src/features/visit/season-snapshot.js';
import { VisitQuery } from '../../../api/src/features/visit/visit.query.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import type { Queryable } from '../../../api/src/planning/snapshot/queryable.js';
import { median, numberFrom, readArguments, say } from '../arguments.js';
import { makeDemoPlan } from '../house/demo-plan.js';
import { fillHouse } from '../house/made-house.js';
import { fillSeason } from './fill-season.js';

const today = '2027-02-26';
const goalMs = 100;

interface Asked {
  readonly what: string;
  readonly ask: () => Promise<unknown>;
}

/** The screens of dates and visits in a large house with ten years of records: milliseconds in which the database answers, the median of the rounds. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const items = numberFrom(values, 'items', 100_000);
  const rounds = numberFrom(values, 'rounds', 15);
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  await migrate(database.url);
  const app = await createApp({ config: configOf(database.url), clock: { now: () => new Date(`${today}T09:00:00Z`) } });
  try {
    await app.init();
    const dataSource = app.get(DataSource);
    await loadDemo(dataSource, app.get(TourFileService), root, today, () => 'bench only 1');
    const planId = await makeDemoPlan(dataSource);
    await fillHouse(dataSource, items, today);
    await fillSeason(dataSource, today);
    const spent = timeStatements(dataSource);
    const [counted]: Record<string, number>[] = await dataSource.query(
      `SELECT (SELECT count(*)::int FROM item) AS items, (SELECT count(*)::int FROM examination) AS examinations, (SELECT count(*)::int FROM tour) AS tours,
         (SELECT count(*)::int FROM visit WHERE state = 'agreed') AS "agreedVisits"`,
    );
    const to = addDays(today, 365);
    const season = { from: today, to, depot: null, withIdle: false, without: [], check: 'examination' as const };
    const { season: read } = await loadSeason(dataSource, season, today);
    const visits = app.get(VisitQuery);
    const [agreed]: { id: string }[] = await dataSource.query(`SELECT id FROM visit WHERE state = 'agreed' ORDER BY on_day LIMIT 1`);
    const asked: Asked[] = [
      { what: 'today, safety officer', ask: () => app.get(AttentionQuery).notes('safety', 30) },
      { what: 'dates, first page', ask: () => app.get(DatesListQuery).examined(100) },
      { what: 'due list of a tour', ask: () => app.get(PlanPartsQuery).due(planId) },
      { what: 'visits of a season', ask: () => visits.inSeason(today, to, null) },
      { what: 'work list of a visit', ask: () => visits.list(agreed?.id ?? '') },
      { what: 'season of all depots', ask: () => loadSeason(dataSource, season, today) },
      { what: 'season of one depot', ask: () => loadSeason(dataSource, { ...season, depot: 'Northgate' }, today) },
    ];
    const milliseconds: Record<string, number> = {};
    for (const { what, ask } of asked) {
      milliseconds[what] = await medianOf(ask, spent, rounds);
      say(`${what.padEnd(28)}${milliseconds[what].toFixed(1).padStart(9)} ms`);
    }
    const over = Object.keys(milliseconds).filter((what) => milliseconds[what]! > goalMs);
    const seasonReads = {
      items: read.items.length,
      examinations: read.items.reduce((sum, each) => sum + each.examinations.length, 0),
      visits: read.visits.length,
    };
    say(JSON.stringify({ ...counted, seasonReads, rounds, goalMs, over, milliseconds }));
    return over.length > 0 ? 1 : 0;
  } finally {
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Milliseconds spent waiting for statements, from now on. */
function timeStatements(dataSource: DataSource): () => number {
  let spentMs = 0;
  const create = dataSource.createQueryRunner.bind(dataSource);
  dataSource.createQueryRunner = (mode) => {
    const runner = create(mode);
    const query = runner.query.bind(runner) as Queryable['query'];
    runner.query = (async (text: string, values?: unknown[], ...rest: []) => {
      const start = performance.now();
      try {
        return await query(text, values, ...rest);
      } finally {
        spentMs += performance.now() - start;
      }
    }) as never;
    return runner;
  };
  return () => spentMs;
}

async function medianOf(ask: () => Promise<unknown>, spent: () => number, rounds: number): Promise<number> {
  for (let warm = 0; warm < 2; warm++) await ask();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const before = spent();
    await ask();
    times.push(spent() - before);
  }
  return Number(median(times).toFixed(2));
}
