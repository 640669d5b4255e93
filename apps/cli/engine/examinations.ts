import { readExaminationsCase, solveExaminations } from '#inspection-calendar';
import type { EngineCall } from '../engines.js';

export const answer: EngineCall = (input) => {
  const read = readExaminationsCase(input);
  return read.ok ? { ok: true, value: solveExaminations(read.value) } : read;
};
