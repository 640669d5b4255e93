import type { HowItStands, TourLoad, WholeTour } from '#pack-plan';

const stands: readonly HowItStands['code'][] = ['stood-already', 'rolls-on', 'was-made-ready'];

/** Nothing is lifted for it. */
export const isLeftAlone = ({ how }: TourLoad): boolean => stands.includes(how.code);

const boxes = (count: number): string => `${count} ${count === 1 ? 'box' : 'boxes'}`;

/** In a cell of the table: what happens to the cart at this show. */
export function inShort({ how, setOn }: TourLoad): string {
  if (how.code === 'stood-already') return 'stands already';
  if (how.code === 'rolls-on') return 'rolls on';
  if (how.code === 'was-made-ready') return 'stands ready';
  if (how.code === 'cut-down') return `${boxes(how.off)} off`;
  return `rebuilt, ${boxes(setOn)} set on`;
}

/** Why a load is not left alone, as the end of a sentence. */
export function whyRebuilt({ how }: TourLoad, nameOf: (show: string) => string): string {
  if (how.code === 'cut-down') return `${boxes(how.off)} fewer than stood there`;
  if (how.code === 'new-stack') return 'no cart stood with these models in this order';
  if (how.code === 'stacks-taken')
    return `such stacks go to ${how.by.slice(0, 3).join(', ')}${how.by.length > 3 ? ` and ${how.by.length - 3} other loads` : ''}`;
  if (how.code === 'box-may-not-fly') return `${how.cart} stood so, but ${how.boxes.join(', ')} must not fly on the days of this show`;
  if (how.code === 'was-made-ready') return `made ready at ${nameOf(how.at)}`;
  return 'it stands';
}

export interface CartOverTime {
  readonly cart: string;
  readonly at: readonly { readonly show: string; readonly load: TourLoad | null }[];
}

/** What stands on each cart at each show; a cart that stands for a later show is of that one. */
export function cartsOverTime({ stops }: WholeTour): readonly CartOverTime[] {
  const byShow = stops.map(({ show, loads, ahead }) => ({ show, onCart: new Map([...ahead, ...loads].map((load) => [load.cart, load])) }));
  const carts = [...new Set(byShow.flatMap(({ onCart }) => [...onCart.keys()]))].sort((a, b) =>
    a.localeCompare(b, 'en', { numeric: true }),
  );
  return carts.map((cart) => ({ cart, at: byShow.map(({ show, onCart }) => ({ show, load: onCart.get(cart) ?? null })) }));
}

const movesOf = ({ stops }: WholeTour): { readonly together: number; readonly apart: number } => ({
  together: stops.reduce((sum, stop) => sum + stop.moves.length, 0),
  apart: stops.reduce((sum, stop) => sum + stop.movesApart, 0),
});

/** How good it is, against show by show and against what no tour goes below. */
export function verdictOf(tour: WholeTour): string {
  const { together, apart } = movesOf(tour);
  const { depot, dock } = tour.weights;
  const bound = Math.ceil(tour.bound - 1e-3);
  const against = together === apart && tour.cost === tour.costApart ? 'as many as show by show' : `show by show it would be ${apart}`;
  const weighed = `Weighed (${depot} a move at prep, ${dock} between shows): ${tour.cost}, show by show ${tour.costApart}`;
  return `${together} box moves over prep and ${tour.stops.length - 1} load-ins; ${against}. ${weighed}; ${
    tour.status === 'optimal'
      ? 'no tour costs less.'
      : `no tour is proved to cost less than ${bound}, so up to ${tour.cost - bound} may still be saved.`
  }`;
}
