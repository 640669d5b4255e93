import { Injectable } from '@nestjs/common';
import { unlogged } from '../../platform/acts/logged-tables.js';
import { connectionsOfOne } from '../../platform/database/server-check.js';
import { SizeDays } from '../../platform/database/size-days.js';
import { type Figure, Metrics } from '../../platform/metrics/metrics.js';
import type { HouseState } from './house.types.js';
import { version } from './version.js';

/** Answers of the door, by status: 401, 403, 408, 413, 429, 503. */
const doorSays = new Set(['401', '403', '408', '413', '429', '503']);

/** The figures of /metrics as one page. */
@Injectable()
export class HouseQuery {
  constructor(
    private readonly metrics: Metrics,
    private readonly sizes: SizeDays,
  ) {}

  async state(): Promise<HouseState> {
    const figures = await this.metrics.figures();
    const monthAgo = await this.sizes.monthAgo();
    const of = (name: string) => figures.filter((each) => each.name === name);
    const one = (name: string): number | null => of(name)[0]?.value ?? null;
    const backup = one('cartwright_last_backup_timestamp_seconds');
    const requests = of('cartwright_http_requests_total');
    const jobs = (state: string) => sum(of('cartwright_jobs').filter(({ labels }) => labels['state'] === state));
    const lag = one('nodejs_eventloop_lag_p99_seconds');
    const waiting = one('cartwright_jobs_oldest_waiting_seconds');
    return {
      version,
      upSince: new Date(1000 * (one('process_start_time_seconds') ?? 0)),
      databaseBytes: one('cartwright_database_bytes'),
      tables: tablesOf(of('cartwright_table_bytes'), of('cartwright_table_rows'), of('cartwright_changes_month'), monthAgo?.tables),
      sizes: [...(await this.sizes.days())],
      grownSince: monthAgo?.day ?? null,
      connections: one('cartwright_server_connections'),
      connectionsLimit: one('cartwright_server_connections_limit'),
      connectionsOfOne: connectionsOfOne(),
      lastBackup: backup === null ? null : new Date(1000 * backup),
      ...{ jobsWaiting: jobs('waiting'), jobsRunning: jobs('running'), jobsFailed: jobs('failed') },
      oldestWaits: waiting === null ? null : Math.round(waiting),
      plans: plansOf(of('cartwright_plan_seconds_count'), of('cartwright_plan_seconds_sum')),
      requests: sum(requests),
      turnedAway: sum(requests.filter(({ labels }) => doorSays.has(String(labels['status'])))),
      faults: sum(of('cartwright_faults_total')),
      eventLoopMs: lag === null || Number.isNaN(lag) ? null : 1000 * lag,
      diskFreeBytes: one('cartwright_disk_free_bytes'),
      processes: one('cartwright_processes_alive'),
    };
  }
}

const sum = (figures: readonly Figure[]): number => figures.reduce((total, { value }) => total + value, 0);

function tablesOf(
  bytes: readonly Figure[],
  rows: readonly Figure[],
  changed: readonly Figure[],
  before: Readonly<Record<string, number>> | undefined,
): HouseState['tables'] {
  const valueOf = (figures: readonly Figure[], table: string) => figures.find(({ labels }) => labels['table'] === table)?.value ?? 0;
  return bytes.map(({ labels, value }) => {
    const name = labels['table'] ?? '';
    const changedInMonth = name in unlogged ? null : valueOf(changed, name);
    return { name, bytes: value, rows: valueOf(rows, name), changedInMonth, grownBytes: before ? value - (before[name] ?? 0) : null };
  });
}

function plansOf(counts: readonly Figure[], sums: readonly Figure[]): HouseState['plans'] {
  const kinds = [...new Set(counts.map(({ labels }) => labels['kind'] ?? ''))];
  const of = (figures: readonly Figure[], kind: string) => sum(figures.filter(({ labels }) => labels['kind'] === kind));
  return kinds.map((kind) => ({ kind, count: of(counts, kind), seconds: of(sums, kind) / Math.max(1, of(counts, kind)) }));
}
