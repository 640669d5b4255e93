import { setTimeout as pause } from 'node:timers/promises';

/** What somebody does again and again while something else goes on; the round is counted from 0. */
export type Bystander = Readonly<Record<string, (round: number) => Promise<unknown>>>;

/** Milliseconds of each request, one after another, a moment between them, while `more` says so. */
export async function watch(bystander: Bystander, more: (round: number) => boolean): Promise<Readonly<Record<string, readonly number[]>>> {
  const times: Record<string, number[]> = {};
  for (let round = 0; more(round); round++)
    for (const [part, request] of Object.entries(bystander)) {
      const start = performance.now();
      await request(round);
      (times[part] ??= []).push(performance.now() - start);
      await pause(10);
    }
  return times;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return Number((sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? 0).toFixed(1));
}

export const summary = (times: readonly number[]) => ({
  n: times.length,
  p50: quantile(times, 0.5),
  p95: quantile(times, 0.95),
  p99: quantile(times, 0.99),
  most: quantile(times, 1),
});
