import { readTruckCase, solveTruckPack } from '#truck-pack';
import type { EngineCall } from '../engine-call.js';

export const answer: EngineCall = (input, { work = 20_000, seconds }) => {
  const read = readTruckCase(input);
  return read.ok
    ? {
        ok: true,
        value: solveTruckPack(read.value, { seed: 1, workLimit: work, timeLimitSeconds: seconds * 0.95, now: () => performance.now() }),
      }
    : read;
};
