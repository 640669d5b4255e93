import { type Why, whyThisBox, whyThisCart } from '#cart-allocation';
import type { TourFile } from '#tour-file';
import type { PlaceReason } from '#trade';
import type { PackPlan, SolveLimits } from '../contract/index.js';
import { gatherInputs } from '../inputs/index.js';
import { allocationCase, wantedLoads } from './allocation-case.js';
import { boxWishes, preferencesOf } from './wishes.js';

/** A place of a plan: a slot of a cart load from 1 at the top, or its cart where `slot` is null. */
export interface Place {
  readonly load: string;
  readonly slot: number | null;
}

/**
 * Why this box, or this cart, stands at a place of a plan and not another. Found on the floor that the plan was made for: the box is barred from every
 * load (the cart from this one), the engine is asked again, and what comes out worse is the reason. `place` has to be one of the plan.
 */
export function whyHere(file: TourFile, plan: Pick<PackPlan, 'carts' | 'show'>, place: Place, limits: SolveLimits): PlaceReason {
  const load = plan.carts.loads.find((each) => each.id === place.load);
  const id = place.slot === null ? load?.cart : load?.boxes[place.slot - 1]?.serial;
  if (load === undefined || id === undefined || id === null) return { code: 'empty' };
  const what = place.slot === null ? 'cart' : 'box';
  const inputs = gatherInputs(onFloorOf(file, plan), plan.show.id);
  const why = inputs.availability.get(id)?.reason ?? (inputs.items.has(id) ? null : { code: 'not-on-file' as const });
  if (why) return { code: 'barred-since', what, id, why };
  const loads = wantedLoads(inputs);
  const problem = allocationCase(inputs, loads, placesWithoutBox(plan));
  const withWishes = { ...limits, prefer: preferencesOf(inputs, loads) };
  const answer = answerOf(plan);
  const wishes = boxWishes(inputs);
  const position = load.boxes.slice(0, place.slot ?? 0).filter((each) => each.serial !== null).length;
  const found =
    place.slot === null
      ? whyThisCart(problem, answer, load.id, wishes, withWishes)
      : whyThisBox(problem, answer, { load: load.id, slot: position }, wishes, withWishes);
  return reasonOf(found, { what, id });
}

/** The register with its carts as they stood when the plan was made: what has been moved since belongs to the plan. */
function onFloorOf(file: TourFile, { carts }: Pick<PackPlan, 'carts'>): TourFile {
  const before = new Map(carts.floorBefore.carts.map(({ cart, boxes, beneath = [] }) => [cart, [...boxes, ...beneath]]));
  const items = file.items.map((item) =>
    item.kind === 'cart' && before.has(item.id) ? { ...item, stack: [...before.get(item.id)!] } : item,
  );
  return { ...file, items };
}

const placesWithoutBox = ({ carts }: Pick<PackPlan, 'carts'>): ReadonlySet<string> =>
  new Set(carts.loads.flatMap((load) => load.boxes.filter((box) => box.serial === null).map((box) => `${load.id}/${box.position}`)));

/** What the plan says, as an answer of the engine. */
function answerOf({ carts }: Pick<PackPlan, 'carts'>): Parameters<typeof whyThisCart>[1] {
  return {
    boxMoves: carts.boxMoves,
    cartsTouched: new Set(carts.moves.flatMap(({ from, to }) => [from, to]).filter((each) => each !== 'floor')).size,
    assignments: carts.loads.flatMap(({ id, cart, boxes }) =>
      cart === null ? [] : [{ load: id, cart, boxes: boxes.flatMap((box) => box.serial ?? []) }],
    ),
  };
}

function reasonOf(why: Why, placed: { readonly what: 'box' | 'cart'; readonly id: string }): PlaceReason {
  if (why.code === 'pinned') return { code: 'pinned', ...placed };
  if (why.code === 'no other') return { code: 'no-other', ...placed };
  const instead = { ...placed, other: why.other };
  const { movesMore: moves, movesMoreAtLeast: atLeast, cartsMore: carts } = why;
  if (moves > 0) return { code: 'more-moves', ...instead, moves, atLeast };
  if (moves < 0) return { code: 'shorter-without', ...instead, moves: -moves };
  if (carts > 0) return { code: 'more-carts', ...instead, carts };
  const more = (code: string): number => why.wishesMore.find((each) => each.code === code)?.more ?? 0;
  if (carts === 0 && more('due soon') > 0) return { code: 'due-sooner', ...instead, boxes: more('due soon') };
  if (carts === 0 && more('due soon') === 0 && more('uses') > 0) return { code: 'more-used', ...instead, uses: more('uses') };
  return { code: 'one-of-several', ...instead };
}
