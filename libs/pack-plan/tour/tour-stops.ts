import type { PlannedShow, TourMoves, TourPlan } from '#cart-allocation';
import type { HowItStands, TourLoad, TourStop } from '../contract/index.js';
import type { ShowWanted } from './tour-moves.js';

/** What stood on a cart, and what it was called there. */
interface Stood {
  readonly boxes: readonly string[];
  /** null: since before prep. */
  readonly since: { readonly show: string; readonly load: string; readonly isReady: boolean } | null;
}

/** Show by show what stands on which cart, and why what is rebuilt is rebuilt. */
export function tourStops(tour: TourMoves, wanted: readonly ShowWanted[], { shows, movesApart }: TourPlan): readonly TourStop[] {
  let standing = new Map<string, Stood>(tour.floor.carts.map(({ id, stack }) => [id, { boxes: stack, since: null }]));
  const names = new Map(wanted.flatMap(({ inputs: { show }, loads }) => [...loads].map(([id, load]) => [id, { show, load }] as const)));
  return shows.map((planned, index) => {
    const { show, weight } = { show: wanted[index]!.inputs.show, weight: tour.shows[index]!.weight };
    const { before, after } = { before: standing, after: stacksAfter(standing, planned) };
    const told = (id: string, of: string, isReady: boolean): TourLoad => {
      const { cart, boxes } = planned.answer.assignments.find((each) => each.load === id)!;
      const its = names.get(of)!;
      const how = howItStands(tour, before, { cart, boxes, grounded: tour.shows[index]!.unusable ?? [] }, planned, names);
      const stands = before.get(cart)!;
      if (stands.boxes.join('\n') !== boxes.join('\n')) after.set(cart, { boxes, since: { show: show.id, load: its.load.name, isReady } });
      else after.set(cart, isReady ? stands : { boxes, since: { show: show.id, load: its.load.name, isReady: false } });
      const setOn = planned.answer.moves.filter((move) => move.to === cart).length;
      return {
        load: its.load.id,
        name: its.load.name,
        show: its.show.id,
        hang: its.load.hang.id,
        positions: its.load.positions,
        cart,
        boxes,
        setOn,
        how,
      };
    };
    const loads = tour.shows[index]!.loads.map(({ id }) => told(id, id, false));
    const ahead = planned.ahead.map(({ load, of }) => told(load.id, of, true));
    standing = after;
    const moves = planned.answer.moves.map(({ box, from, to }) => ({ box, from, to }));
    return { show: show.id, name: show.name, weight, moves, movesApart: movesApart[index]!, loads, ahead, empty: wanted[index]!.empty };
  });
}

function stacksAfter(standing: ReadonlyMap<string, Stood>, { answer }: PlannedShow): Map<string, Stood> {
  const stacks = new Map([...standing].map(([cart, stood]) => [cart, { ...stood, boxes: [...stood.boxes] }]));
  for (const { box, from, to } of answer.moves) {
    stacks.get(from)?.boxes.shift();
    stacks.get(to)?.boxes.unshift(box);
  }
  return new Map(stacks);
}

function howItStands(
  { floor }: TourMoves,
  before: ReadonlyMap<string, Stood>,
  { cart, boxes, grounded }: { readonly cart: string; readonly boxes: readonly string[]; readonly grounded: readonly string[] },
  { answer, ahead }: PlannedShow,
  names: ReadonlyMap<string, { readonly load: { readonly name: string } }>,
): HowItStands {
  const stands = before.get(cart)!;
  const same = (a: readonly string[], b: readonly string[]) => a.length === b.length && a.every((each, slot) => each === b[slot]);
  if (same(stands.boxes, boxes)) {
    if (stands.since === null) return { code: 'stood-already' };
    const { show, load, isReady } = stands.since;
    return isReady ? { code: 'was-made-ready', at: show } : { code: 'rolls-on', since: show, as: load };
  }
  const off = stands.boxes.length - boxes.length;
  if (off > 0 && same(stands.boxes.slice(off), boxes)) return { code: 'cut-down', off };
  const models = (serials: readonly string[]) => serials.map((serial) => floor.boxes[serial] ?? '');
  const alike = [...before].filter(([, stood]) => same(models(stood.boxes), models(boxes)));
  const barred = alike.map(([id, stood]) => ({ cart: id, boxes: stood.boxes.filter((box) => grounded.includes(box)) }));
  const own = barred.find((each) => each.cart === cart && each.boxes.length > 0);
  if (own) return { code: 'box-may-not-fly', ...own };
  const by = alike.flatMap(([id, stood]) => {
    const taken = answer.assignments.find((each) => each.cart === id && same(each.boxes, stood.boxes));
    const of = ahead.find(({ load }) => load.id === taken?.load)?.of ?? taken?.load;
    const name = of === undefined ? undefined : names.get(of)?.load.name;
    return name === undefined ? [] : [name];
  });
  if (by.length > 0) return { code: 'stacks-taken', by };
  const other = barred.find((each) => each.boxes.length > 0);
  return other ? { code: 'box-may-not-fly', ...other } : { code: 'new-stack' };
}
