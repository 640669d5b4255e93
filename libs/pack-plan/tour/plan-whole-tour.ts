import { planTour, usualAllocationWork, verifyTour } from '#cart-allocation';
import type { TourFile } from '#tour-file';
import type { TourRefusal } from '#trade';
import { type Words, english } from '#words';
import { preferencesOf } from '../carts/index.js';
import type { MoveWeights, SolveLimits, WholeTour } from '../contract/index.js';
import { notAsKept, plannedAsKept } from './kept-shows.js';
import { type ShowWanted, showsWanted, tourMoves } from './tour-moves.js';
import { tourStops } from './tour-stops.js';

export interface WholeTourAsked {
  readonly weights: MoveWeights;
  /** Shows from the first that stay as `before` has them; with 0 the tour is planned from the floor as it stands. */
  readonly fixedUntil: number;
  readonly before: WholeTour | null;
}

export type WholeTourAnswer =
  | { readonly kind: 'planned'; readonly tour: WholeTour }
  | { readonly kind: 'cannot'; readonly fact: TourRefusal };

/** Other tours that are worked out at most. */
const mostTries = 200;

/** Prep and all load-ins together: every show from where the one before leaves the boxes, loads made ready early where that costs less. */
export function planWholeTour(file: TourFile, asked: WholeTourAsked, limits: SolveLimits, words: Words = english): WholeTourAnswer {
  const wanted = showsWanted(file, limits, words).filter(({ loads }) => loads.size > 0);
  if (wanted.length < 2) return cannot({ code: 'tour-too-short', shows: wanted.length });
  const nameOf = (show: string) => wanted.find(({ inputs }) => inputs.show.id === show)?.inputs.show.name ?? show;
  const { before, fixedUntil, weights } = asked;
  const kept = fixedUntil > 0 ? before : null;
  if (fixedUntil > 0 && (!kept || fixedUntil > wanted.length)) return cannot({ code: 'tour-nothing-to-keep', shows: fixedUntil });
  const tour = tourMoves(wanted, weights, kept);
  for (let index = 0; kept && index < fixedUntil; index++) {
    const not = notAsKept(tour, kept, index);
    if (not) return cannot({ code: 'tour-not-as-kept', show: nameOf(not.show), load: loadName(wanted, not.load), boxes: not.boxes });
  }
  const [first] = wanted;
  const plan = planTour(tour, {
    integerProgram: limits.integerProgram,
    workPerShow: (limits.work ?? usualAllocationWork) / 20,
    tries: mostTries,
    timeLimitSeconds: limits.timeLimitSeconds,
    now: limits.now,
    fixed: kept ? kept.stops.slice(0, fixedUntil).map((stop) => plannedAsKept(tour, stop)) : [],
    prefer: { boxRank: preferencesOf(first!.inputs, [...first!.loads.values()]).boxRank, loadRank: () => 0 },
    ...(limits.onProgress ? { onProgress: limits.onProgress } : {}),
  });
  if (plan.cannot) {
    const { show, short, cartsShort } = plan.cannot;
    return cannot({
      code: 'tour-show-not-served',
      show: nameOf(show),
      models: (short ?? []).map((each) => ({ model: each.model, missing: each.missing })),
      carts: cartsShort ? cartsShort.loads - cartsShort.carts : 0,
    });
  }
  const [fault] = verifyTour(tour, plan);
  if (fault !== undefined) return cannot({ code: 'tour-fails-its-check', fault });
  return {
    kind: 'planned',
    tour: {
      status: plan.status === 'optimal' ? 'optimal' : 'feasible',
      cost: plan.cost,
      bound: plan.bound,
      costApart: plan.showByShow,
      weights,
      fixedUntil,
      floor: { carts: tour.floor.carts.map(({ id, stack }) => ({ cart: id, boxes: stack })), loose: tour.floor.loose },
      stops: tourStops(tour, wanted, plan),
    },
  };
}

const cannot = (fact: TourRefusal): WholeTourAnswer => ({ kind: 'cannot', fact });

const loadName = (wanted: readonly ShowWanted[], id: string): string | null =>
  wanted.flatMap(({ loads }) => loads.get(id)?.name ?? [])[0] ?? null;
