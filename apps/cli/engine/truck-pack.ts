import { readTruckCase, solveTruckPack } from '#truck-pack';
import { breachOf, english, tell } from '#words';
import type { EngineCall } from './engine-call.js';

/** Steps for each second of the limit where no work is given: an idle machine does them in about three quarters of it, so that the clock seldom decides. */
const stepsPerSecond = 700_000;

export const answer: EngineCall = (input, { seconds, work = Math.round(seconds * stepsPerSecond) }) => {
  const startedAt = performance.now();
  const read = readTruckCase(input);
  if (!read.ok) return read;
  const answer = solveTruckPack(read.value, { seed: 1, work, timeLimitSeconds: seconds * 0.95, now: () => performance.now(), startedAt });
  const { leftOver, bound, mismatch } = answer;
  return {
    ok: true,
    value: {
      ...answer,
      leftOver: leftOver.map((each) => ({ ...each, reason: tell(english.leftOver, each) })),
      bound: { ...bound, reason: tell(english.loadBounds, bound.why) },
      ...(mismatch ? { mismatch: mismatch.map((each) => ({ ...each, sentence: breachOf(english.breaches, each) })) } : {}),
    },
  };
};
