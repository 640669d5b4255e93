import { readHangCase, solveHang } from '#hang-statics';
import { english, tell } from '#words';
import type { EngineCall } from './engine-call.js';

export const answer: EngineCall = (input) => {
  const read = readHangCase(input);
  if (!read.ok) return read;
  const solved = solveHang(read.value);
  return {
    ok: true,
    value: { ...solved, findings: solved.findings.map((each) => ({ ...each, sentence: tell(english.hangRemarks, each) })) },
  };
};
