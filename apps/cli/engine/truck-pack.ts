import { readTruckCase, solveTruckPack } from '#truck-pack';
import type { EngineCall } from '../engine-call.js';

export const answer: EngineCall = (input, seconds) => {
  const read = readTruckCase(input);
  return read.ok
    ? {
        ok: true,
        value: solveTruckPack(read.value, { seed: 1, workLimit: 20_000, timeLimitSeconds: seconds * 0.95, now: () => performance.now() }),
      }
    : read;
};
