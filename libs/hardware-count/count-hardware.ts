import { type PlainDate, addDays } from '#kernel';

/** Pieces of one line that are fitted: to the hang, or to a cart. */
export interface FittedPieces {
  readonly key: string;
  /** "front link pin", "shackle", "cart base pin" ... */
  readonly item: string;
  readonly count: number;
  /** What they are fitted to, for the working: "Main left, joints between boxes". */
  readonly where: string;
}

/** Pieces of one line that leave the depot, by what carries them. `load` and `cart` where they ride with a box or cart. */
export interface TravellingPieces {
  readonly key: string;
  readonly count: number;
  readonly travels: 'with its box' | 'with its cart' | 'loose';
  readonly load: string | null;
  readonly cart: string | null;
}

/** A batch, or a thing with a serial (count 1), that may be used on the dates. `trunk` null: kept with the boxes and carts, in no case. */
export interface Lot {
  readonly id: string;
  readonly key: string;
  readonly count: number;
  readonly trunk: string | null;
  /** What of it others hold, within the dates. */
  readonly promises: readonly { readonly from: PlainDate; readonly to: PlainDate; readonly count: number }[];
}

export interface HardwareInput {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** Counted from the design: joints, picks, carts. */
  readonly fitted: readonly FittedPieces[];
  /** Counted from what rolls out: boxes with their pins, carts with theirs, trunks. Spares are not in it. */
  readonly travelling: readonly TravellingPieces[];
  /** Travel and are not fitted: pins of a top box whose grid brings its own. */
  readonly staying: readonly FittedPieces[];
  readonly lots: readonly Lot[];
  /** Pieces that are kept with boxes and carts which stay at the depot, by key. */
  readonly keptAtHome: ReadonlyMap<string, number>;
  readonly spares: ReadonlyMap<string, number>;
}

export interface HardwareCountLine {
  readonly key: string;
  readonly item: string;
  readonly fitted: number;
  readonly withBox: number;
  readonly withCart: number;
  readonly loose: number;
  /** Of those with a box, how many are not fitted. */
  readonly staysInBox: number;
  /** Travelling and loose less what stays in its box, less fitted: 0, or something was counted wrong or is missing. */
  readonly difference: number;
  readonly spares: number;
  /** The fewest on any of the days, what others hold taken off. */
  readonly onHand: number;
  readonly keptAtHome: number;
  /** What travels and the spares, beyond the stock on the worst day. */
  readonly missing: number;
  /** First and last day on which something is missing. */
  readonly shortOn: { readonly from: PlainDate; readonly to: PlainDate } | null;
  /** Which lots the pieces are taken from, spares included. */
  readonly takenFrom: readonly { readonly lot: string; readonly trunk: string | null; readonly count: number }[];
  /** What rides with which cart load. */
  readonly carriers: readonly { readonly load: string; readonly cart: string | null; readonly count: number }[];
  readonly terms: readonly { readonly where: string; readonly count: number }[];
}

/**
 * Counts every line two ways (what the design fits, what rolls out) and holds the two against each other; says what the stock does not cover and on
 * which days. A spare never counts as fitted.
 */
export function countHardware(input: HardwareInput): readonly HardwareCountLine[] {
  return [...new Set(input.fitted.map((each) => each.key))].map((key) => countLine(input, key));
}

function countLine(input: HardwareInput, key: string): HardwareCountLine {
  const mine = <T extends { readonly key: string }>(all: readonly T[]): T[] => all.filter((each) => each.key === key);
  const [fittedHere, travellingHere, staying, lots] = [mine(input.fitted), mine(input.travelling), mine(input.staying), mine(input.lots)];
  const by = (travels: TravellingPieces['travels']): number => sum(travellingHere.filter((each) => each.travels === travels));
  const [fitted, withBox, withCart, loose] = [sum(fittedHere), by('with its box'), by('with its cart'), by('loose')];
  const spares = input.spares.get(key) ?? 0;
  const keptAtHome = input.keptAtHome.get(key) ?? 0;
  const needed = withBox + withCart + loose + spares;
  const stretches = stretchesOf(input, lots);
  const short = stretches.filter(({ from }) => usableOn(lots, keptAtHome, from) < needed);
  return {
    key,
    item: [...new Set(fittedHere.map((each) => each.item))].join(', '),
    fitted,
    withBox,
    withCart,
    loose,
    staysInBox: sum(staying),
    difference: withBox + withCart + loose - sum(staying) - fitted,
    spares,
    onHand: Math.min(...stretches.map(({ from }) => lots.reduce((total, lot) => total + freeOn(lot, from), 0))),
    keptAtHome,
    missing: Math.max(0, ...short.map(({ from }) => needed - usableOn(lots, keptAtHome, from))),
    shortOn: short.length === 0 ? null : { from: short[0]!.from, to: short.at(-1)!.to },
    takenFrom: takeFrom(
      lots.map((lot) => ({ lot, free: Math.min(...stretches.map(({ from }) => freeOn(lot, from))) })),
      withBox + withCart,
      loose + spares,
      Math.max(0, sum(lots.filter((lot) => lot.trunk === null)) - keptAtHome),
    ),
    carriers: carriersOf(travellingHere),
    terms: termsOf(fittedHere),
  };
}

/** Days in a row on which the promises of the lots do not change. */
function stretchesOf({ from, to }: HardwareInput, lots: readonly Lot[]): { from: PlainDate; to: PlainDate }[] {
  const starts = lots.flatMap((lot) => lot.promises.flatMap((each) => [each.from, addDays(each.to, 1)]));
  const days = [...new Set([from, ...starts])].filter((day) => day >= from && day <= to).sort();
  return days.map((day, index) => ({ from: day, to: index + 1 < days.length ? addDays(days[index + 1]!, -1) : to }));
}

const freeOn = (lot: Lot, day: PlainDate): number =>
  Math.max(0, lot.count - sum(lot.promises.filter((each) => each.from <= day && each.to >= day)));

/** Pieces kept with boxes and carts that stay at home are not to be had; those may be the very ones that others hold. */
function usableOn(lots: readonly Lot[], keptAtHome: number, day: PlainDate): number {
  const inTrunks = lots.filter((lot) => lot.trunk !== null).reduce((total, lot) => total + freeOn(lot, day), 0);
  const elsewhere = lots.filter((lot) => lot.trunk === null);
  const free = elsewhere.reduce((total, lot) => total + freeOn(lot, day), 0);
  return inTrunks + Math.min(free, Math.max(0, sum(elsewhere) - keptAtHome));
}

/** What rides with boxes and carts comes from the lots that are kept with them (of which `away` leave the depot), what is loose from the trunks; then from where there is more. */
function takeFrom(
  lots: readonly { readonly lot: Lot; free: number }[],
  carried: number,
  loose: number,
  away: number,
): { lot: string; trunk: string | null; count: number }[] {
  const taken = new Map<Lot, number>();
  let awayLeft = away;
  const take = (wanted: number, first: (lot: Lot) => boolean): void => {
    let left = wanted;
    for (const each of [...lots.filter(({ lot }) => first(lot)), ...lots.filter(({ lot }) => !first(lot))]) {
      const count = Math.min(left, each.free, each.lot.trunk === null ? awayLeft : Infinity);
      if (each.lot.trunk === null) awayLeft -= count;
      each.free -= count;
      left -= count;
      if (count > 0) taken.set(each.lot, (taken.get(each.lot) ?? 0) + count);
    }
  };
  take(carried, (lot) => lot.trunk === null);
  take(loose, (lot) => lot.trunk !== null);
  return [...taken].map(([lot, count]) => ({ lot: lot.id, trunk: lot.trunk, count }));
}

function carriersOf(travelling: readonly TravellingPieces[]): { load: string; cart: string | null; count: number }[] {
  const loads = new Map<string, { load: string; cart: string | null; count: number }>();
  for (const { load, cart, count } of travelling) {
    if (load === null) continue;
    loads.set(load, { load, cart, count: (loads.get(load)?.count ?? 0) + count });
  }
  return [...loads.values()];
}

function termsOf(pieces: readonly FittedPieces[]): { where: string; count: number }[] {
  const terms = new Map<string, number>();
  for (const { where, count } of pieces) terms.set(where, (terms.get(where) ?? 0) + count);
  return [...terms].map(([where, count]) => ({ where, count }));
}

const sum = (pieces: readonly { readonly count: number }[]): number => pieces.reduce((total, each) => total + each.count, 0);
