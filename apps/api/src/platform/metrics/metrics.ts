import { Injectable } from '@nestjs/common';
import { Counter, Gauge, Histogram, Registry, collectDefaultMetrics } from 'prom-client';
import { DataSource } from 'typeorm';
import { gaugesOfHouse } from './house-gauges.js';

/** What became of an operation: as the caller was told. */
export type OperationOutcome = 'done' | 'refused' | 'bad input' | 'not allowed' | 'not found' | 'fault';

/** Of the process itself: memory, processor, event-loop lag, collector pauses. One for all apps in it. */
const processRegistry = new Registry();
collectDefaultMetrics({ register: processRegistry });

const seconds = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60];

/** What is counted while the house is at work, in the open exposition format (OpenMetrics and its text form). Names say units; labels are few and closed. */
@Injectable()
export class Metrics {
  private readonly registry = new Registry();
  private readonly own = { registers: [this.registry] };

  readonly requests = new Counter({
    name: 'cartwright_http_requests_total',
    help: 'Requests by route and status.',
    labelNames: ['method', 'route', 'status'] as const,
    ...this.own,
  });
  readonly requestSeconds = new Histogram({
    name: 'cartwright_http_request_seconds',
    help: 'Seconds from the head of a request to the end of its answer.',
    labelNames: ['method', 'route'] as const,
    buckets: seconds,
    ...this.own,
  });
  readonly operations = new Counter({
    name: 'cartwright_operations_total',
    help: 'Operations by what became of them: done, refused (the world says no), bad input, not allowed, not found, fault (ours).',
    labelNames: ['operation', 'outcome'] as const,
    ...this.own,
  });
  readonly operationSeconds = new Histogram({
    name: 'cartwright_operation_seconds',
    help: 'Seconds of an operation, without what the network takes.',
    labelNames: ['operation'] as const,
    buckets: seconds,
    ...this.own,
  });
  readonly faults = new Counter({
    name: 'cartwright_faults_total',
    help: 'Faults of ours that were masked; each stands in the log with its incident.',
    labelNames: ['where'] as const,
    ...this.own,
  });
  readonly jobSeconds = new Histogram({
    name: 'cartwright_job_seconds',
    help: 'Seconds of a job from its start, by queue and how it ended.',
    labelNames: ['queue', 'outcome'] as const,
    buckets: [...seconds, 120, 300, 600, 1800],
    ...this.own,
  });
  readonly planSeconds = new Histogram({
    name: 'cartwright_plan_seconds',
    help: 'Seconds that a job was planned for until it was saved, by its kind and what ended the search (proof, work, clock, or not said).',
    labelNames: ['kind', 'stopped_by'] as const,
    buckets: [...seconds, 120, 300, 600, 1800],
    ...this.own,
  });

  constructor(private readonly dataSource: DataSource) {
    this.gaugeOfPool();
    this.gaugeOfDatabase();
    this.gaugeOfJobs();
    this.gaugesOfWaiting();
    gaugesOfHouse(this);
  }

  /** A number that is asked for whenever somebody reads: a queue's length, a pool's size. */
  watch(name: string, help: string, read: () => number): void {
    const gauge: Gauge = new Gauge({ name, help, ...this.own, collect: () => gauge.set(read()) });
  }

  /** The same, where the number has to be waited for. */
  watchAsked(name: string, help: string, read: () => Promise<number>): void {
    const gauge: Gauge = new Gauge({ name, help, ...this.own, collect: async () => gauge.set(await read()) });
  }

  /** What the database says, one number or one a label; no row is no number. */
  watchRows(name: string, help: string, sql: string, label?: string): void {
    const gauge: Gauge = new Gauge({
      name,
      help,
      ...(label === undefined ? {} : { labelNames: [label] }),
      ...this.own,
      collect: async () => {
        gauge.reset();
        const rows = await this.ask<{ label?: string; value: number }>(sql);
        if (label === undefined && rows.length === 0) gauge.remove();
        for (const row of rows) gauge.set(label === undefined ? {} : { [label]: row.label ?? '' }, row.value);
      },
    });
  }

  /** Every number as it is now: name, labels, value. */
  async figures(): Promise<readonly Figure[]> {
    const read = await Registry.merge([processRegistry, this.registry]).getMetricsAsJSON();
    return read.flatMap(({ name, values }) =>
      (values as { metricName?: string; labels: object; value: number }[]).map(({ metricName, labels, value }) => ({
        name: metricName ?? name,
        labels: labels as Readonly<Record<string, string>>,
        value,
      })),
    );
  }

  get contentType(): string {
    return this.registry.contentType;
  }

  /** The text of the exposition. What needs the database is left out while it does not answer. */
  async text(): Promise<string> {
    return Registry.merge([processRegistry, this.registry]).metrics();
  }

  private gaugeOfPool(): void {
    const pool = () => (this.dataSource.driver as unknown as { master?: Partial<Record<PoolCount, number>> }).master ?? {};
    this.watch('cartwright_database_connections', 'Open connections of this process.', () => pool().totalCount ?? 0);
    this.watch('cartwright_database_waiting', 'Units of work and reads that wait for a connection.', () => pool().waitingCount ?? 0);
  }

  private gaugeOfDatabase(): void {
    const gauge: Gauge = new Gauge({
      name: 'cartwright_database_bytes',
      help: 'Size of the database.',
      ...this.own,
      collect: async () => {
        gauge.reset();
        const rows = await this.ask<{ bytes: string }>('SELECT pg_database_size(current_database()) AS bytes');
        if (rows[0]) gauge.set(Number(rows[0].bytes));
        else gauge.remove();
      },
    });
  }

  private gaugeOfJobs(): void {
    const gauge: Gauge<'queue' | 'state'> = new Gauge({
      name: 'cartwright_jobs',
      help: 'Jobs in the queue by state.',
      labelNames: ['queue', 'state'] as const,
      ...this.own,
      collect: async () => {
        gauge.reset();
        const rows = await this.ask<{ queue: string; state: string; count: string }>(
          'SELECT kind AS queue, state, count(*) AS count FROM job GROUP BY kind, state',
        );
        for (const { queue, state, count } of rows) gauge.set({ queue, state }, Number(count));
      },
    });
  }

  /** How many jobs wait for a solver, and for how long the oldest does: none and 0 where none waits. */
  private gaugesOfWaiting(): void {
    const sql = `SELECT count(*)::int AS count, coalesce(extract(epoch FROM max(clock_timestamp() - asked_at)), 0)::float AS age
      FROM job WHERE state = 'waiting'`;
    const watchDatabase = (name: string, help: string, read: (row: { count: number; age: number }) => number) => {
      const gauge: Gauge = new Gauge({
        name,
        help,
        ...this.own,
        collect: async () => {
          const [row] = await this.ask<{ count: number; age: number }>(sql);
          if (row) gauge.set(read(row));
          else gauge.remove();
        },
      });
    };
    watchDatabase('cartwright_jobs_waiting', 'Jobs that wait for a solver.', (row) => row.count);
    watchDatabase('cartwright_jobs_oldest_waiting_seconds', 'Seconds that the oldest waiting job has waited.', (row) => row.age);
  }

  /** No row while the database does not answer within a second, or holds no such table yet. */
  private async ask<Row>(sql: string): Promise<Row[]> {
    let patience: NodeJS.Timeout | undefined;
    const late = new Promise<Row[]>((resolve) => (patience = setTimeout(() => resolve([]), 1000)));
    try {
      return await Promise.race([this.dataSource.query<Row[]>(sql), late]);
    } catch {
      return [];
    } finally {
      clearTimeout(patience);
    }
  }
}

export interface Figure {
  readonly name: string;
  readonly labels: Readonly<Record<string, string>>;
  readonly value: number;
}

type PoolCount = 'totalCount' | 'waitingCount';
