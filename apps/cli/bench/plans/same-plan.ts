import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { Trouble } from '#runtime';
import { MakeService } from '../../../api/src/features/plan/make/make.service.js';
import { theRow } from '../../../api/src/planning/snapshot/queryable.js';
import { JobRunner } from '../../../api/src/planning/jobs/job-runner.js';
import { Jobs } from '../../../api/src/planning/jobs/jobs.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { type House, openHouse } from '../house/house.js';

interface Made {
  readonly hash: string;
  readonly seconds: number;
}

/** The demo's first show planned on the idle machine and beside busy loops, on the command line and as a job of the API: byte for byte the same. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const loops = numberFrom(readArguments(args), 'busy', 4);
  const house = await openHouse(root);
  try {
    house.app.get(JobRunner).start();
    const idle = { printed: await printed(root), job: await asJob(house) };
    const busy = await beside(loops, async () => ({ printed: await printed(root), job: await asJob(house) }));
    const isSame = idle.printed.hash === busy.printed.hash && idle.job.hash === busy.job.hash;
    for (const way of ['printed', 'job'] as const) {
      say(`${way.padEnd(8)} idle ${idle[way].hash.slice(0, 16)} ${idle[way].seconds.toFixed(1)} s`);
      say(`${''.padEnd(8)} busy ${busy[way].hash.slice(0, 16)} ${busy[way].seconds.toFixed(1)} s`);
    }
    say(JSON.stringify({ loops, isSame, idle, busy }));
    return isSame ? 0 : 1;
  } finally {
    await house.close();
  }
}

/** What `npm run plan -- FILE --json` prints. */
async function printed(root: string): Promise<Made> {
  const start = performance.now();
  const file = join(root, 'tests', 'examples', 'demo-tour.json');
  const child = spawn(process.execPath, [join(root, 'apps', 'cli', 'run.mjs'), 'plan', file, '--json'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const hash = createHash('sha256');
  child.stdout.on('data', (chunk: Buffer) => hash.update(chunk));
  const code = await new Promise((ended) => child.once('close', ended));
  if (code !== 0) throw new Trouble(`The plan on the command line ended with ${String(code)}.`);
  return { hash: hash.digest('hex'), seconds: (performance.now() - start) / 1000 };
}

/** The stored plan of a job, made from nothing: without a draft before it, on which a next one leans. */
async function asJob({ app, dataSource }: House): Promise<Made> {
  const start = performance.now();
  await dataSource.query('DELETE FROM pack_plan');
  const id = await app.get(MakeService).make('harbour-lights', 'quayside', { name: 'Bench' });
  const job = await app.get(Jobs).ended(id);
  if (job.state !== 'done') throw new Trouble(`The job ended ${job.state}: ${JSON.stringify(job.answer)}`);
  const { text } = await theRow<{ text: string }>(dataSource.manager, 'SELECT plan::text AS text FROM pack_plan');
  return { hash: createHash('sha256').update(text).digest('hex'), seconds: (performance.now() - start) / 1000 };
}

async function beside<T>(loops: number, work: () => Promise<T>): Promise<T> {
  const children = Array.from({ length: loops }, () => spawn(process.execPath, ['-e', 'for (;;) Math.random()'], { stdio: 'ignore' }));
  try {
    return await work();
  } finally {
    for (const each of children) each.kill('SIGKILL');
  }
}
