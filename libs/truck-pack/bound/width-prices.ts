import { LinearProgram } from './linear-program.js';

/** A piece that may lie on the floor in any of these ways, and how many times it does (may be a part). Millimetres. */
export interface FloorDemand {
  readonly ways: readonly { readonly along: number; readonly across: number }[];
  readonly count: number;
  /** How many such pieces there are; count where left out. */
  readonly pieces?: number;
}

/** Prices of widths, no set of widths that fits side by side costing more than 1; so the prices of what lies on a floor never sum to more than its length. */
export interface WidthPrices {
  /** Least length of floor, millimetres, that a piece uses up in the cheapest of its ways. */
  readonly lengthOf: (ways: FloorDemand['ways']) => number;
}

/**
 * Dual prices of the bar relaxation: every line across the floor crosses pieces whose widths sum to no more than `width`, each at most as often as there are pieces of that
 * width. The prices maximise what the demand uses up; whatever the search for them finds is divided by what the dearest set that fits costs, so it is valid. With no rounds a width costs its share of the widest sum that
 * fits.
 */
export function widthPrices(width: number, demand: readonly FloorDemand[], rounds = 60): WidthPrices {
  const most = new Map<number, number>();
  for (const { ways, count, pieces = count } of demand)
    for (const across of new Set(ways.map((each) => each.across))) most.set(across, (most.get(across) ?? 0) + Math.ceil(pieces));
  const widths = [...most.keys()].filter((each) => each <= width).sort((a, b) => b - a);
  const at = new Map(widths.map((each, index) => [each, index]));
  const copies = widths.map((each) => Math.min(Math.floor(width / each), most.get(each)!));
  const fill = new Filler(width, widths, copies);
  let best = { prices: widths.map((each) => each / width), dearest: 1 };
  best.dearest = Math.max(fill.dearest(best.prices).cost, tiny);
  let bestUse = use(demand, at, best.prices) / best.dearest;
  const program = rounds === 0 ? undefined : programOf(demand, at, widths, copies);
  for (let round = 0; program && round < rounds; round++) {
    const solved = program.solve(2_000);
    const prices = widths.map((_, index) => program.value(index));
    const { cost, counts } = fill.dearest(prices);
    if (cost > tiny) {
      const used = use(demand, at, prices) / cost;
      if (used > bestUse) [best, bestUse] = [{ prices, dearest: cost }, used];
    }
    if (!solved || cost <= 1 + 1e-7) break;
    program.add(new Map(counts.flatMap((count, index) => (count > 0 ? [[index, count] as const] : []))), 1);
  }
  // A rounding of floating numbers must not lift a price.
  const scale = (1 - 1e-9) / best.dearest;
  return { lengthOf: (ways) => cheapest(ways, at, best.prices) * scale };
}

const tiny = 1e-12;

const cheapest = (ways: FloorDemand['ways'], at: ReadonlyMap<number, number>, prices: readonly number[]): number =>
  ways.reduce((least, { along, across }) => Math.min(least, along * (prices[at.get(across) ?? -1] ?? 0)), Infinity);

const use = (demand: readonly FloorDemand[], at: ReadonlyMap<number, number>, prices: readonly number[]): number =>
  demand.reduce((sum, { ways, count }) => sum + count * cheapest(ways, at, prices), 0);

/** Variables: a price a width, then for each demand with several ways what its cheapest way costs. */
function programOf(
  demand: readonly FloorDemand[],
  at: ReadonlyMap<number, number>,
  widths: readonly number[],
  copies: readonly number[],
): LinearProgram {
  const gain = widths.map(() => 0);
  const rows: [number, FloorDemand][] = [];
  for (const each of demand) {
    if (each.ways.length === 1) {
      const only = each.ways[0]!;
      const index = at.get(only.across);
      if (index !== undefined) gain[index]! += each.count * only.along;
    } else if (each.ways.length > 1) {
      rows.push([gain.length, each]);
      gain.push(each.count);
    }
  }
  const program = new LinearProgram(gain);
  for (const [variable, { ways }] of rows)
    for (const { along, across } of ways) {
      const index = at.get(across);
      if (index !== undefined)
        program.add(
          new Map([
            [variable, 1],
            [index, -along],
          ]),
          1e-7 * along,
        );
    }
  widths.forEach((_, index) => program.add(new Map([[index, copies[index]!]]), 1));
  return program;
}

/** What a knapsack may look at: cells times copies. */
const mostLooks = 2e7;

/**
 * The dearest set of widths that fits: a bounded knapsack over whole multiples of the widths' common divisor. Where that is too fine for many widths, over coarser ones, widths
 * and room rounded down: every set that fits still does, so the dearest is no cheaper than it is.
 */
class Filler {
  private readonly unit: number;
  private readonly room: number;

  constructor(
    width: number,
    private readonly widths: readonly number[],
    private readonly copies: readonly number[],
  ) {
    const fine = widths.reduce(divisor, 0) || 1;
    const looks = (width / fine) * copies.reduce((sum, each) => sum + Math.min(255, each), 0);
    const narrowest = widths.at(-1) ?? fine;
    this.unit = fine * Math.max(1, Math.min(Math.ceil(looks / mostLooks), Math.floor(narrowest / fine)));
    this.room = Math.floor(width / this.unit);
  }

  dearest(prices: readonly number[]): { cost: number; counts: number[] } {
    let now = new Float64Array(this.room + 1);
    const taken: Uint8Array[] = [];
    this.widths.forEach((each, index) => {
      const size = Math.floor(each / this.unit);
      const next = now.slice();
      const count = new Uint8Array(this.room + 1);
      for (let k = 1; k <= Math.min(255, this.copies[index]!); k++)
        for (let room = k * size; room <= this.room; room++) {
          const cost = now[room - k * size]! + k * prices[index]!;
          if (cost > next[room]!) [next[room], count[room]] = [cost, k];
        }
      now = next;
      taken.push(count);
    });
    const counts = this.widths.map(() => 0);
    let room = this.room;
    for (let index = this.widths.length - 1; index >= 0; index--) {
      counts[index] = taken[index]![room]!;
      room -= counts[index]! * Math.floor(this.widths[index]! / this.unit);
    }
    return { cost: now[this.room]!, counts };
  }
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
