import { type FloorPlan, keptBoxes, mayCarry } from '../case/index.js';
import { Openings, singleKinds, tally } from './first-event.js';
import { addTo } from './promising-pairs.js';

/** What all ties together may add to the cost, and how far from the least cost the solver may stop: both together less than a move. */
export const tiesAtMost = 0.4;

/** What is least among choices with equally many moves. */
export type Tie = 'boxes lifted' | 'carts touched';

export type Column = { readonly cartClass: number; readonly loadClass: number } | { readonly cartClass: number; readonly taken: number };

/** A program in LP text; columns: x cart class_load class, d cart class_boxes taken, w kind (boxes of it that cannot go straight). */
export interface Program {
  /** With further rows that every plan keeps, and columns of theirs that are to be whole. */
  readonly textWith: (cuts: readonly string[], whole: readonly string[]) => string;
  readonly rows: number;
  readonly columns: ReadonlyMap<string, Column>;
}

export interface Classes {
  readonly carts: readonly number[][];
  readonly loads: readonly number[][];
  /** By cart class: load classes that the program pairs it with; undefined: all with all. */
  readonly promising: ReadonlyMap<number, readonly number[]> | undefined;
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

export interface ProgramOptions {
  /** Gives 0 to 1: equal choices weighed anew, for another one of them. */
  readonly vary: () => number;
  readonly fewest: Tie;
}

export function writeProgram(floor: FloorPlan, classes: Classes, { vary, fewest }: ProgramOptions): Program {
  // Of choices with equally many moves the one that lifts the fewest boxes off leaves the most ways to carry it out; or the one that
  // touches the fewest carts.
  const slack = fewest === 'boxes lifted' ? tiesAtMost / Math.max(1, floor.serials.length) : 0;
  const touched = fewest === 'carts touched' ? tiesAtMost / Math.max(1, floor.carts.length) : 0;
  const weights: Weights = { lifted: () => slack * vary(), touched };
  const terms = new Terms(classes, floor.kindCount);
  const openings = new Openings(floor, singleKinds(floor));
  const all = classes.loads.map((_, loadClass) => loadClass);
  classes.carts.forEach((_, cartClass) => {
    for (const loadClass of classes.promising ? (classes.promising.get(cartClass) ?? []) : all)
      addPair(terms, floor, classes, openings, weights, cartClass, loadClass);
    addGiving(terms, floor, classes, weights, cartClass);
  });
  return programOf(floor, classes, terms);
}

/** A cart of the class gets a load of the class: what comes off, what comes on, what waits for what. */
function addPair(
  terms: Terms,
  floor: FloorPlan,
  { carts, loads }: Classes,
  openings: Openings,
  weights: Weights,
  cartClass: number,
  loadClass: number,
): void {
  const first = carts[cartClass]![0]!;
  const cart = floor.carts[first]!;
  const wanted = floor.loads[loads[loadClass]![0]!]!;
  if (!mayCarry(cart, wanted)) return;
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
  const objective = wrapped(`obj: ${sum(cost)}`);
  const fixedRows = rows.map((row) => wrapped(row)).join('\n');
  const bounds = both.map((each) => `${each} >= 0`).join('\n');
  const textWith = (cuts: readonly string[], whole: readonly string[]) => {
    const more = cuts.map((cut, index) => `\n${wrapped(`k${index}: ${cut}`)}`).join('');
    return `Minimize\n${objective}\nSubject To\n${fixedRows}${more}\nBounds\n${bounds}\nGeneral\n${[...integers, ...whole].join('\n')}\nEnd\n`;
  };
  return { textWith, rows: rows.length, columns };
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
