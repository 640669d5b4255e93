import type { IntegerProgramSolver, WorkBudget } from '#kernel';
import { type FloorPlan, cartKey, keptBoxes, loadKey, mayCarry } from '../case/index.js';
import { Openings, singleKinds, tally } from './first-event.js';

/** Which cart each load gets, and from how many of the top boxes of other carts are taken. */
export interface Choice {
  /** By load: index of its cart. */
  readonly cartOf: readonly number[];
  /** By cart: how many boxes are taken from its top; only carts that get no load. */
  readonly taken: ReadonlyMap<number, number>;
}

/** What is least among choices with equally many moves. */
export type Tie = 'boxes lifted' | 'carts touched';

export interface BoundAnswer {
  /** No plan has fewer box moves. */
  readonly bound: number;
  readonly choice: Choice | undefined;
}

/** Units of work (see `AllocationLimits`) for a column of the program, and for an iteration on each of its rows. */
const unitsPerColumn = 20;
/** Pairs of cart and load classes that a program may hold; each second of the clock is good for so many. */
const mostPairs = 60_000;
const pairsPerSecond = 12_000;
/** What all ties together may add to the cost, and how far from the least cost the solver may stop: both together less than a move. */
const tiesAtMost = 0.4;

export interface BoundOptions {
  /** Part of the work that is left which this program may use. */
  readonly share: number;
  /** Gives 0 to 1: equal choices weighed anew, for another one of them. */
  readonly vary?: () => number;
  readonly fewest?: Tie;
}

/**
 * The least F + O - D over all choices: F boxes that must come into place, O boxes that must come off, D moves that do both. Carts with the
 * same stack of kinds, and loads of the same kinds, are one class each, so the program stays small however large the fleet is.
 */
export function solveBound(
  floor: FloorPlan,
  integerProgram: IntegerProgramSolver,
  budget: WorkBudget,
  { share, vary = () => 1, fewest = 'boxes lifted' }: BoundOptions,
): BoundAnswer {
  const carts = classesOf(floor.carts.map((cart) => cartKey(floor, cart)));
  const loads = classesOf(floor.loads.map(loadKey));
  const promising = promisingPairs(floor, carts, loads, budget);
  const program = writeProgram(floor, { carts, loads, promising }, vary, fewest);
  const units = unitsPerColumn * program.columns.size;
  budget.spend(units);
  const run = (part: number, relaxed: boolean) => {
    const iterations = Math.max(100, (part * share * budget.workLeft - units) / program.rows);
    const answer = integerProgram.solve(program.text, { timeLimitSeconds: part * budget.secondsLeft(), iterations, relaxed });
    budget.spend(answer.iterations * program.rows);
    if (answer.isCutOff) budget.cutOffByClock();
    return answer;
  };
  const answer = run(0.6, false);
  const choice = answer.values.size > 0 ? readChoice(floor, carts, loads, program.columns, answer.values) : undefined;
  // A program without all its pairs bounds nothing: then only what must come into place counts.
  if (promising) return { bound: leastComingIn(floor, carts, loads), choice };
  if (answer.status === 'optimal') return { bound: Math.floor(answer.objective! + 1e-6), choice };
  const cost = answer.bound ?? run(0.3, true).objective ?? 0;
  return { bound: Math.max(0, Math.ceil(cost - tiesAtMost - 1e-6), leastComingIn(floor, carts, loads)), choice };
}

/**
 * Where there are more pairs of cart and load classes than a program may have: for each load class the carts that need the fewest moves, and some
 * others all around, so that every load can have a cart. undefined: all pairs.
 */
function promisingPairs(
  floor: FloorPlan,
  carts: readonly number[][],
  loads: readonly number[][],
  budget: WorkBudget,
): ReadonlySet<number> | undefined {
  const inTime = Math.round(pairsPerSecond * Math.max(0.1, budget.secondsLeft()));
  const most = Math.min(mostPairs, Math.max(1000, Math.round(budget.workLeft / unitsPerColumn)));
  if (carts.length * loads.length <= Math.min(most, inTime)) return undefined;
  if (inTime < most) budget.cutOffByClock();
  const each = Math.max(4, Math.floor(Math.min(most, inTime) / loads.length / 2));
  const pairs = new Set<number>();
  // Only a cart whose lowest box is the load's lowest can keep any; of the others the lowest stack is best.
  const byLowest = new Map<number, number[]>();
  const byHeight = carts.map((_, cartClass) => cartClass);
  const stackOf = (cartClass: number) => floor.carts[carts[cartClass]![0]!]!.stack;
  byHeight.sort((a, b) => stackOf(a).length - stackOf(b).length);
  for (const cartClass of byHeight) {
    const lowest = floor.kindOf[stackOf(cartClass)[0] ?? -1];
    if (lowest !== undefined) addTo(byLowest, lowest, cartClass);
  }
  loads.forEach(([load], loadClass) => {
    const wanted = floor.loads[load!]!;
    const add = (cartClass: number): boolean => {
      if (!mayCarry(floor.carts[carts[cartClass]![0]!]!, wanted)) return false;
      pairs.add(cartClass * loads.length + loadClass);
      return true;
    };
    const moves = (cartClass: number) => stackOf(cartClass).length - 2 * keptBoxes(floor, stackOf(cartClass), wanted.kinds);
    const keeping = (byLowest.get(wanted.kinds[0]!) ?? []).map((cartClass) => ({ cartClass, moves: moves(cartClass) }));
    let left = each;
    for (const { cartClass } of keeping.sort((a, b) => a.moves - b.moves)) if (left > 0 && add(cartClass)) left--;
    const start = Math.floor((loadClass * byHeight.length) / loads.length);
    left += each;
    for (let step = 0; step < byHeight.length && left > 0; step++) if (add(byHeight[(start + step) % byHeight.length]!)) left--;
  });
  return pairs;
}

/** Boxes that must come into place however the carts are chosen. */
function leastComingIn(floor: FloorPlan, carts: readonly number[][], loads: readonly number[][]): number {
  const byLowest = new Map<number, FloorPlan['carts'][number][]>();
  for (const [first] of carts) {
    const cart = floor.carts[first!]!;
    const lowest = floor.kindOf[cart.stack[0] ?? -1];
    if (lowest !== undefined) addTo(byLowest, lowest, cart);
  }
  return loads.reduce((sum, members) => {
    const wanted = floor.loads[members[0]!]!;
    const most = (byLowest.get(wanted.kinds[0]!) ?? []).reduce(
      (best, cart) => (mayCarry(cart, wanted) ? Math.max(best, keptBoxes(floor, cart.stack, wanted.kinds)) : best),
      0,
    );
    return sum + members.length * (wanted.kinds.length - most);
  }, 0);
}

function addTo<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

/** Members of each class, in order of first appearance. */
function classesOf(keys: readonly string[]): number[][] {
  const classes = new Map<string, number[]>();
  keys.forEach((key, index) => addTo(classes, key, index));
  return [...classes.values()];
}

type Column = { readonly cartClass: number; readonly loadClass: number } | { readonly cartClass: number; readonly taken: number };

interface Program {
  readonly text: string;
  readonly rows: number;
  readonly columns: ReadonlyMap<string, Column>;
}

interface Classes {
  readonly carts: readonly number[][];
  readonly loads: readonly number[][];
  /** Pairs that the program holds; undefined: all. */
  readonly promising: ReadonlySet<number> | undefined;
}

/** Terms of the program as they come together. */
class Terms {
  readonly columns = new Map<string, Column>();
  readonly cost: string[] = [];
  readonly inCart: string[][];
  readonly inLoad: string[][];
  readonly comeIn: string[][];
  readonly comeOff: string[][];
  readonly openPlaces: string[][];
  /** By kind, by the boxes of it that must have gone before: the columns that can open the first later place for it. */
  readonly events: Map<number, string[]>[];

  constructor({ carts, loads }: Classes, kindCount: number) {
    const lists = (length: number) => Array.from({ length }, (): string[] => []);
    this.inCart = lists(carts.length);
    this.inLoad = lists(loads.length);
    this.comeIn = lists(kindCount);
    this.comeOff = lists(kindCount);
    this.openPlaces = lists(kindCount);
    this.events = Array.from({ length: kindCount }, () => new Map<number, string[]>());
  }
}

/** What equal choices are weighed by, each less than a move in all. */
interface Weights {
  readonly lifted: () => number;
  readonly touched: number;
}

function writeProgram(floor: FloorPlan, classes: Classes, vary: () => number, fewest: Tie): Program {
  // Of choices with equally many moves the one that lifts the fewest boxes off leaves the most ways to carry it out; or the one that
  // touches the fewest carts.
  const slack = fewest === 'boxes lifted' ? tiesAtMost / Math.max(1, floor.serials.length) : 0;
  const touched = fewest === 'carts touched' ? tiesAtMost / Math.max(1, floor.carts.length) : 0;
  const weights: Weights = { lifted: () => slack * vary(), touched };
  const terms = new Terms(classes, floor.kindCount);
  const openings = new Openings(floor, singleKinds(floor));
  classes.carts.forEach((_, cartClass) => {
    classes.loads.forEach((__, loadClass) => addPair(terms, floor, classes, openings, weights, cartClass, loadClass));
    addGiving(terms, floor, classes, weights, cartClass);
  });
  return programOf(floor, classes, terms);
}

/** A cart of the class gets a load of the class: what comes off, what comes on, what waits for what. */
function addPair(
  terms: Terms,
  floor: FloorPlan,
  { carts, loads, promising }: Classes,
  openings: Openings,
  weights: Weights,
  cartClass: number,
  loadClass: number,
): void {
  const first = carts[cartClass]![0]!;
  const cart = floor.carts[first]!;
  const wanted = floor.loads[loads[loadClass]![0]!]!;
  if (promising ? !promising.has(cartClass * loads.length + loadClass) : !mayCarry(cart, wanted)) return;
  const column = `x${cartClass}_${loadClass}`;
  terms.columns.set(column, { cartClass, loadClass });
  terms.inCart[cartClass]!.push(column);
  terms.inLoad[loadClass]!.push(column);
  const kept = keptBoxes(floor, cart.stack, wanted.kinds);
  const onKinds = wanted.kinds.slice(kept);
  const offKinds = cart.stack.slice(kept).map((box) => floor.kindOf[box]!);
  const [on, off] = [tally(onKinds), tally(offKinds)];
  // A box that there is once cannot go straight from a cart into another place of the same cart.
  const turned = [...off.keys()].filter((kind) => openings.single.has(kind) && on.has(kind));
  const usable = offKinds.filter((kind) => kind !== 0).length;
  const touch = on.size + off.size > 0 ? weights.touched : 0;
  terms.cost.push(`${onKinds.length + offKinds.length + turned.length + usable * weights.lifted() + touch} ${column}`);
  for (const [kind, count] of on) terms.comeIn[kind]!.push(`${count} ${column}`);
  for (const [kind, count] of off) terms.comeOff[kind]!.push(`${count} ${column}`);
  const { open, later } = openings.of(first, offKinds, onKinds);
  for (const [kind, count] of open) terms.openPlaces[kind]!.push(`${count} ${column}`);
  for (const [kind, gone] of later) {
    if (turned.includes(kind)) continue;
    addTo(terms.events[kind]!, gone, column);
  }
}

/** A cart of the class gets no load and gives its top boxes, 1 to all; the deepest box taken is one that is wanted. */
function addGiving(terms: Terms, floor: FloorPlan, { carts }: Classes, weights: Weights, cartClass: number): void {
  const { stack } = floor.carts[carts[cartClass]![0]!]!;
  for (let taken = 1; taken <= stack.length; taken++) {
    const kinds = stack.slice(-taken).map((box) => floor.kindOf[box]!);
    if (kinds[0] === 0) continue;
    const column = `d${cartClass}_${taken}`;
    terms.columns.set(column, { cartClass, taken });
    terms.cost.push(`${taken + taken * weights.lifted() + weights.touched} ${column}`);
    terms.inCart[cartClass]!.push(column);
    for (const [kind, count] of tally(kinds)) terms.comeOff[kind]!.push(`${count} ${column}`);
  }
}

function programOf(floor: FloorPlan, { carts, loads }: Classes, { columns, cost, ...terms }: Terms): Program {
  const loose = tally(floor.loose.map((box) => floor.kindOf[box]!));
  const rows: string[] = [];
  terms.inLoad.forEach((columnsOf, index) => rows.push(`l${index}: ${sum(columnsOf)} = ${loads[index]!.length}`));
  terms.inCart.forEach((columnsOf, index) => columnsOf.length > 0 && rows.push(`c${index}: ${sum(columnsOf)} <= ${carts[index]!.length}`));
  const both: string[] = [];
  const firsts: string[] = [];
  const most = Math.min(floor.carts.length, floor.loads.length);
  for (let kind = 1; kind < floor.kindCount; kind++) {
    const [ins, offs] = [terms.comeIn[kind]!, terms.comeOff[kind]!];
    if (ins.length === 0) continue;
    const supply = offs.length > 0 ? ` - ${sum(offs, ' - ')}` : '';
    rows.push(`s${kind}: ${sum(ins)}${supply} <= ${loose.get(kind) ?? 0}`);
    if (offs.length === 0) continue;
    cost.push(`-1 b${kind}`);
    both.push(`b${kind}`);
    rows.push(`i${kind}: b${kind} - ${sum(ins, ' - ')} <= 0`, `o${kind}: b${kind} + w${kind} - ${sum(offs, ' - ')} <= 0`);
    both.push(`w${kind}`);
    rows.push(...firstRows(kind, [...terms.events[kind]!], terms.openPlaces[kind]!, most, firsts));
  }
  const integers = [...columns.keys(), ...firsts];
  const text = `Minimize\n${wrapped(`obj: ${sum(cost)}`)}\nSubject To\n${rows.map((row) => wrapped(row)).join('\n')}\nBounds\n${both.map((each) => `${each} >= 0`).join('\n')}\nGeneral\n${integers.join('\n')}\nEnd\n`;
  return { text, rows: rows.length, columns };
}

/**
 * One column opens the first later place for a kind; until then boxes of the kind go straight only into places that were open from the start
 * (`w`: those that find none). y: how many must have gone before it; z: whether there is a later place at all.
 */
function firstRows(
  kind: number,
  events: readonly (readonly [gone: number, columns: readonly string[]])[],
  open: readonly string[],
  most: number,
  integers: string[],
): string[] {
  // An event before which nothing of the kind has to go costs nothing.
  if (events.every(([gone]) => gone === 0)) return [];
  const y = (gone: number) => `y${kind}_${gone}`;
  integers.push(`z${kind}`, ...events.map(([gone]) => y(gone)));
  const all = events.flatMap(([, columns]) => columns);
  return [
    `w${kind}: w${kind} - ${sum(
      events.filter(([gone]) => gone > 0).map(([gone]) => `${gone} ${y(gone)}`),
      ' - ',
    )}${open.length > 0 ? ` + ${sum(open)}` : ''} >= 0`,
    `f${kind}: ${sum(events.map(([gone]) => y(gone)))} - z${kind} >= 0`,
    `z${kind}: z${kind} <= 1`,
    `a${kind}: ${most} z${kind} - ${sum(all, ' - ')} >= 0`,
    ...events.map(([gone, columns]) => `y${kind}_${gone}: ${y(gone)} - ${sum(columns, ' - ')} <= 0`),
  ];
}

const sum = (terms: readonly string[], plus = ' + '): string => (terms.length === 0 ? '0 dummy' : terms.join(plus).replaceAll('+ -', '- '));
/** Lines of LP text are kept short. */
const wrapped = (row: string): string => row.replaceAll(/(.{80,}?) ([+-] )/g, '$1\n $2');

function readChoice(
  floor: FloorPlan,
  carts: readonly number[][],
  loads: readonly number[][],
  columns: Program['columns'],
  values: ReadonlyMap<string, number>,
): Choice | undefined {
  const cartsLeft = carts.map((members) => [...members]);
  const loadsLeft = loads.map((members) => [...members]);
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const taken = new Map<number, number>();
  for (const [name, column] of columns) {
    const value = values.get(name) ?? 0;
    // A solver that was cut off may hold no whole solution.
    if (Math.abs(value - Math.round(value)) > 1e-5) return undefined;
    for (let count = Math.round(value); count > 0; count--) {
      const cart = cartsLeft[column.cartClass]!.shift();
      const load = 'taken' in column ? -1 : loadsLeft[column.loadClass]!.shift();
      if (cart === undefined || load === undefined) return undefined;
      if ('taken' in column) taken.set(cart, column.taken);
      else cartOf[load] = cart;
    }
  }
  return cartOf.every((cart) => cart >= 0) && suffices(floor, cartOf, taken) ? { cartOf, taken } : undefined;
}

/** Whether what comes off and what lies loose fills every place. */
function suffices(floor: FloorPlan, cartOf: readonly number[], taken: ReadonlyMap<number, number>): boolean {
  const left = new Array<number>(floor.kindCount).fill(0);
  for (const box of floor.loose) left[floor.kindOf[box]!]!++;
  for (const [cart, count] of taken) for (const box of floor.carts[cart]!.stack.slice(-count)) left[floor.kindOf[box]!]!++;
  cartOf.forEach((cart, load) => {
    const { kinds } = floor.loads[load]!;
    const { stack } = floor.carts[cart]!;
    const kept = keptBoxes(floor, stack, kinds);
    for (const box of stack.slice(kept)) left[floor.kindOf[box]!]!++;
    for (const kind of kinds.slice(kept)) left[kind]!--;
  });
  return left.every((count, kind) => kind === 0 || count >= 0);
}
