import type { HangCase } from './hang-case.js';
import type { HangAnswer } from './solve-hang.js';
import type { StageName } from './stage-cases.js';
import type { LinkDrawn } from './link-drawn.js';
import type { PullBack, PulledHang } from './pull-back.js';
import type { SwungBack } from './swing-back.js';

/** A hang that a force holds aside: a load that is swung back, or the line of a pull-back. */
export interface HeldAside {
  readonly problem: HangCase;
  readonly pull: PullBack;
  readonly hang: PulledHang;
}

/** One moment of building the hang or taking it down, as a case of its own with its answer. */
export interface HangStage {
  readonly name: StageName;
  /** 1 for the first cart load; null at trim. */
  readonly cartLoad: number | null;
  readonly way: 'up' | 'down';
  readonly problem: HangCase;
  /** Of a load that is held aside the picks carry along their inclined chains. */
  readonly answer: HangAnswer;
  readonly swung: SwungBack | null;
  /** Of a load that is swung back the same as `swung`. */
  readonly held: HeldAside | null;
  readonly kick: LinkDrawn | null;
}
