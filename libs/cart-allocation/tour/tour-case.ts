import { invariant } from '#kernel';
import { type AllocationAnswer, type AllocationCase, makeAllocationCase } from '../case/index.js';

type Loads = AllocationCase['loads'];

/** What one show wants standing when it loads in; the first is made ready at prep. */
export interface TourShow {
  readonly id: string;
  readonly loads: Loads;
  /** What a box move costs there: depot hands are cheaper than the dock at six in the morning. */
  readonly weight: number;
  /** Boxes that must not fly on its days, beside those of the floor. */
  readonly unusable?: readonly string[];
}

/** The floor before prep, and the shows in their order. Loads are named once over the tour. */
export interface TourMoves {
  readonly floor: Pick<AllocationCase, 'carts' | 'loose' | 'boxes' | 'unusable'>;
  readonly shows: readonly TourShow[];
}

/** Where boxes stand between two shows. */
export type Standing = Pick<AllocationCase, 'carts' | 'loose'>;

/** The case of one show from where boxes stand, with loads that later shows want as well; undefined where the loads cannot all be named in one case. */
export function caseOfShow({ floor }: TourMoves, show: TourShow, standing: Standing, loads: Loads): AllocationCase | undefined {
  const unusable = [...new Set([...floor.unusable, ...(show.unusable ?? [])])];
  const read = makeAllocationCase({ carts: standing.carts, loose: standing.loose, boxes: floor.boxes, unusable, loads });
  return read.ok ? read.value : undefined;
}

/** Where boxes stand once the moves are made. */
export function standingAfter({ carts, loose }: Standing, { moves }: Pick<AllocationAnswer, 'moves'>): Standing {
  const stacks = new Map(carts.map((cart) => [cart.id, [...cart.stack]]));
  const floor = new Set(loose);
  for (const { box, from, to } of moves) {
    if (from === 'floor') floor.delete(box);
    else invariant(stacks.get(from)?.shift() === box, 'only the top box of a cart is lifted');
    if (to === 'floor') floor.add(box);
    else stacks.get(to)!.unshift(box);
  }
  return { carts: carts.map((cart) => ({ ...cart, stack: stacks.get(cart.id)! })), loose: [...floor] };
}
