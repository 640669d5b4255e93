import { type TourFile, wholeHangs } from '#tour-file';
import type { Mismatch, PackPlan } from '../contract/index.js';
import { checkCarts } from './check-carts.js';
import { checkDue } from './check-due.js';
import { checkHardware } from './check-hardware.js';
import { checkMoves } from './check-moves.js';
import { checkPicks } from './check-picks.js';
import { checkRoom } from './check-room.js';
import { checkTrucks } from './check-trucks.js';
import type { Checking } from './checking.js';

/**
 * Counts and adds up again what a plan says, from the tour file alone: cart loads and their boxes, the moves one by one, masses and sums of every hang,
 * pins by joint, what travels, what is judged and booked. It shares no code with what made the plan but the reading of mirrored hangs. Empty when all agrees.
 */
export function checkPlan(file: TourFile, plan: PackPlan): readonly Mismatch[] {
  const mismatches: Mismatch[] = [];
  const show = file.tour.shows.find((each) => each.id === plan.show.id);
  if (!show) return [{ check: 'plan', subject: plan.show.id, found: 'the tour has no such show' }];
  const checking: Checking = {
    file,
    show,
    hangs: wholeHangs(show),
    items: new Map(file.items.map((each) => [each.id, each])),
    plan,
    wrong: (check, subject, found) => mismatches.push({ check, subject, found }),
  };
  for (const check of [checkCarts, checkMoves, checkPicks, checkRoom, checkHardware, checkTrucks, checkDue]) check(checking);
  return mismatches;
}
