import type { PlannedShow, TourMoves } from '#cart-allocation';
import type { TourStop, WholeTour } from '../contract/index.js';
import { nameOver } from './tour-moves.js';

/** Why a show cannot stay as an earlier plan has it. */
export interface NotAsKept {
  readonly show: string;
  readonly load: string;
  /** Boxes of it that must not fly; none: the design wants something else. */
  readonly boxes: readonly string[];
}

/** null where the show still wants what the plan gives it. */
export function notAsKept({ shows, floor }: TourMoves, plan: WholeTour, index: number): NotAsKept | null {
  const show = shows[index]!;
  const stop = plan.stops[index];
  if (stop?.show !== show.id) return { show: show.id, load: '', boxes: [] };
  const given = new Map(stop.loads.map((each) => [nameOver(show.id, each.load), each]));
  const grounded = new Set(show.unusable);
  for (const load of show.loads) {
    const boxes = given.get(load.id)?.boxes ?? [];
    const fits = load.boxes.every((wanted, slot) => {
      const box = boxes[slot] ?? '';
      return 'serial' in wanted ? wanted.serial === box : floor.boxes[box] === wanted.model;
    });
    const barred = boxes.filter((box) => grounded.has(box));
    if (boxes.length !== load.boxes.length || !fits || barred.length > 0) return { show: show.id, load: load.id, boxes: barred };
  }
  return given.size === show.loads.length ? null : { show: show.id, load: '', boxes: [] };
}

/** A stop of an earlier plan as the engine has it; what it makes ready for a show that wants something else by now is no load of it any more. */
export function plannedAsKept({ shows }: TourMoves, stop: TourStop): PlannedShow {
  const ahead = stop.ahead.flatMap((each, index) => {
    const of = nameOver(each.show, each.load);
    const wanted = shows.find(({ id }) => id === each.show)?.loads.find(({ id }) => id === of);
    return wanted?.boxes.length === each.boxes.length
      ? [{ each, ahead: { load: { ...wanted, id: `${of} kept ${index}` }, show: each.show, of } }]
      : [];
  });
  const own = stop.loads.map(({ load, cart, boxes }) => ({ load: nameOver(stop.show, load), cart, boxes }));
  return {
    show: stop.show,
    ahead: ahead.map((each) => each.ahead),
    answer: {
      status: 'feasible',
      boxMoves: stop.moves.length,
      bound: 0,
      stoppedBy: 'work',
      assignments: [...own, ...ahead.map(({ each: { cart, boxes }, ahead: { load } }) => ({ load: load.id, cart, boxes }))],
      moves: stop.moves,
      measures: { cartsTouched: 0, work: 0 },
    },
  };
}
