import { boundOf } from '../bound/index.js';
import {
  type KeepOptions,
  type LeftOver,
  type Piece,
  type TruckAnswer,
  type TruckCase,
  type TruckCaseData,
  type TruckPackAnswer,
  cannotRide,
  couldRide,
  isRowless,
  leftOver,
} from '../case/index.js';
import { onDuty } from '../check/index.js';
import { stowOne } from './stow-one.js';

/** Greedy completions for a container, each time it is filled: some tenths of a second for the freight of a tour. */
export const usualStowageWork = 300;

/** What the trucks beside were to keep holds of their part of the load. */
export interface StowageOptions extends KeepOptions {
  /** Completions; equal work gives the equal load. */
  readonly work?: number;
}

/**
 * Loads the sea containers and air pallets of a case, in their order, each as full as it is found to go; with what `before` left over where the case has
 * trucks as well, which are loaded first, in rows. No order of unloading holds inside: what is in is all taken out.
 */
export function solveStowage(
  problem: TruckCase,
  { work = usualStowageWork, ...options }: StowageOptions = {},
  before?: TruckPackAnswer,
): TruckPackAnswer {
  const wanted = new Set((before?.leftOver ?? problem.pieces).map((each) => each.id));
  const spaces = problem.trucks.filter(isRowless);
  let left = problem.pieces.filter((each) => wanted.has(each.id));
  const trucks: TruckAnswer[] = [];
  let spent = before?.work ?? 0;
  for (const space of spaces) {
    const riding = left.filter((each) => couldRide(each, [space]));
    if (riding.length === 0) continue;
    const stowed = stowOne(space, riding, work);
    spent += stowed?.work ?? 0;
    if (!stowed || stowed.pieces.size === 0) continue;
    trucks.push(stowed.load);
    left = left.filter((each) => !stowed.pieces.has(each));
  }
  const loads = [...(before?.trucks ?? []), ...trucks];
  const answer = answerWith(problem, loads, left, spent);
  return onDuty(problem, { ...before, ...answer }, options);
}

function answerWith(problem: TruckCaseData, trucks: readonly TruckAnswer[], left: readonly Piece[], work: number): TruckPackAnswer {
  const behind = left.map((piece): LeftOver => cannotRide(piece, problem.trucks) ?? leftOver(piece, { code: 'no-place' }));
  const bound: TruckPackAnswer['bound'] =
    behind.length > 0 ? { trucks: 0, usedLengthMm: 0, why: { code: 'not-all-ride' } } : boundOf(problem, problem.pieces);
  const used = trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  const isLeast = behind.length === 0 && trucks.length === bound.trucks && used === bound.usedLengthMm;
  return { status: isLeast ? 'optimal' : 'feasible', trucks, leftOver: behind, stoppedBy: isLeast ? 'proof' : 'work', work, bound };
}
