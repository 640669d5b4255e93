import type { HangCase } from './hang-case.js';
import type { HangAnswer } from './solve-hang.js';
import type { StageName } from './stage-cases.js';
import type { SwungBack } from './swing-back.js';

/** One moment of building the hang, as a case of its own with its answer. */
export interface HangStage {
  readonly name: StageName;
  /** 1 for the first cart load; null at trim. */
  readonly cartLoad: number | null;
  readonly problem: HangCase;
  /** Of a load that is held aside the picks carry along their inclined chains. */
  readonly answer: HangAnswer;
  readonly swung: SwungBack | null;
}
