import { verifyAllocation } from '../check/index.js';
import type { TourPlan } from './plan-tour.js';
import { type TourMoves, caseOfShow } from './tour-case.js';

/** What is wrong with a plan of a tour, a sentence each: every show carried out again from where the one before left the boxes, its own loads first, then the sums. */
export function verifyTour(tour: TourMoves, plan: Pick<TourPlan, 'shows' | 'cost' | 'bound'>): readonly string[] {
  const wrong: string[] = [];
  const stacks = new Map(tour.floor.carts.map((cart) => [cart.id, [...cart.stack]]));
  const loose = new Set(tour.floor.loose);
  let cost = 0;
  tour.shows.forEach((show, index) => {
    const planned = plan.shows[index];
    if (!planned || planned.show !== show.id) return void wrong.push(`${show.id} is not planned in its turn`);
    const standing = { carts: tour.floor.carts.map((cart) => ({ ...cart, stack: [...stacks.get(cart.id)!] })), loose: [...loose] };
    const problem = caseOfShow(tour, standing, [...show.loads, ...planned.ahead]);
    if (!problem) return void wrong.push(`${show.id} is no case`);
    for (const each of verifyAllocation(problem, planned.answer)) wrong.push(`${show.id}: ${JSON.stringify(each)}`);
    for (const { box, from, to } of planned.answer.moves) {
      if (from === 'floor') loose.delete(box);
      else if (stacks.get(from)?.[0] !== box) wrong.push(`${show.id}: ${box} is not on top of ${from}`);
      else stacks.get(from)!.shift();
      if (to === 'floor') loose.add(box);
      else stacks.get(to)?.unshift(box);
    }
    cost += show.weight * planned.answer.moves.length;
  });
  if (Math.abs(cost - plan.cost) > 1e-6) wrong.push(`costs ${cost}, not ${plan.cost}`);
  if (plan.bound > cost + 1e-6) wrong.push(`the bound ${plan.bound} is above ${cost}`);
  return wrong;
}
