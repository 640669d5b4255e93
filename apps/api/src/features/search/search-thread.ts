import { parentPort, workerData } from 'node:worker_threads';
import { makePackPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import type { TourFile } from '#tour-file';

/** Runs in a thread of its own, so that it can be stopped: tells its progress as numbers, then the plan. */
const { file, showId, truckWork } = workerData as { file: TourFile; showId: string; truckWork: number };
const plan = makePackPlan(file, showId, {
  now: () => performance.now(),
  integerProgram: await loadIntegerProgramSolver(),
  timeLimitSeconds: 30,
  truckWork,
  onProgress: (part) => parentPort!.postMessage(part),
});
parentPort!.postMessage(plan);
