import { readHangCase, solveHang } from '#hang-statics';
import type { EngineCall } from './engine-call.js';

export const answer: EngineCall = (input) => {
  const read = readHangCase(input);
  return read.ok ? { ok: true, value: solveHang(read.value) } : read;
};
