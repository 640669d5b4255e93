import { type IntegerProgramSolver, invariant } from '#kernel';
import { type FloorPlan, keptBoxes, mayCarry } from './floor-plan.js';

/** Which cart each load gets, and from how many of the top boxes of other carts are taken. */
export interface Choice {
  /** By load: index of its cart. */
  readonly cartOf: readonly number[];
  /** By cart: how many boxes are taken from its top; only carts that get no load. */
  readonly taken: ReadonlyMap<number, number>;
}

export interface BoundAnswer {
  /** No plan has fewer box moves. */
  readonly bound: number;
  readonly choice: Choice | undefined;
}

/**
 * The least F + O - D over all choices: F boxes that must come into place, O boxes that must come off, D moves that do both. Carts with the
 * same stack of kinds, and loads of the same kinds, are one class each, so the program stays small however large the fleet is.
 */
export function solveBound(floor: FloorPlan, integerProgram: IntegerProgramSolver, timeLimitSeconds: number): BoundAnswer {
  const carts = classesOf(
    floor.carts.map(
      (cart) =>
        `${cart.capacity}|${cart.carries ? [...cart.carries].sort().join(',') : '*'}|${cart.stack.map((box) => floor.kindOf[box]).join(',')}`,
    ),
  );
  const loads = classesOf(
    floor.loads.map((load) => load.kinds.join(',') + (load.models.length > 0 ? `|${[...new Set(load.models)].sort().join(',')}` : '')),
  );
  const program = writeProgram(floor, carts, loads);
  const answer = integerProgram.solve(program.text, { timeLimitSeconds });
  if (answer.status === 'optimal' && answer.objective !== undefined)
    return { bound: Math.ceil(answer.objective - 1e-6), choice: readChoice(floor, carts, loads, program.columns, answer.values) };
  const relaxed = integerProgram.solve(program.text, { timeLimitSeconds: Math.max(1, timeLimitSeconds / 2), relaxed: true });
  return { bound: relaxed.objective === undefined ? 0 : Math.max(0, Math.ceil(relaxed.objective - 1e-6)), choice: undefined };
}

/** Members of each class, in order of first appearance. */
function classesOf(keys: readonly string[]): number[][] {
  const classes = new Map<string, number[]>();
  keys.forEach((key, index) => classes.set(key, [...(classes.get(key) ?? []), index]));
  return [...classes.values()];
}

type Column = { readonly cartClass: number; readonly loadClass: number } | { readonly cartClass: number; readonly taken: number };

interface Program {
  readonly text: string;
  readonly columns: ReadonlyMap<string, Column>;
}

function writeProgram(floor: FloorPlan, carts: readonly number[][], loads: readonly number[][]): Program {
  const columns = new Map<string, Column>();
  const cost: string[] = [];
  const inCart = carts.map((): string[] => []);
  const inLoad = loads.map((): string[] => []);
  const comeIn = Array.from({ length: floor.kindCount }, (): string[] => []);
  const comeOff = Array.from({ length: floor.kindCount }, (): string[] => []);
  const openPlaces = Array.from({ length: floor.kindCount }, (): string[] => []);
  /** By what comes off in kinds: the columns of carts that stand closed at first. */
  const closed = new Map<string, { off: ReadonlyMap<number, number>; columns: string[] }>();
  const single = singleKinds(floor);
  carts.forEach(([first], cartClass) => {
    const cart = floor.carts[first!]!;
    loads.forEach(([load], loadClass) => {
      const wanted = floor.loads[load!]!;
      if (!mayCarry(cart, wanted)) return;
      const column = `x${cartClass}_${loadClass}`;
      columns.set(column, { cartClass, loadClass });
      const kept = keptBoxes(floor, cart.stack, wanted.kinds);
      inCart[cartClass]!.push(column);
      inLoad[loadClass]!.push(column);
      const on = tally(wanted.kinds.slice(kept));
      const off = tally(cart.stack.slice(kept).map((box) => floor.kindOf[box]!));
      // A box that there is once cannot go straight from a cart into another place of the same cart.
      const turned = [...off.keys()].filter((kind) => single.has(kind) && on.has(kind));
      cost.push(`${wanted.kinds.length + cart.stack.length - 2 * kept + turned.length} ${column}`);
      for (const [kind, count] of on) comeIn[kind]!.push(`${count} ${column}`);
      for (const [kind, count] of off) comeOff[kind]!.push(`${count} ${column}`);
      if (off.size === 0) for (const [kind, count] of on) openPlaces[kind]!.push(`${count} ${column}`);
      else {
        // Those have been paid for already.
        const free = new Map([...off].filter(([kind]) => !turned.includes(kind)).sort(([a], [b]) => a - b));
        const key = [...free].join(' ');
        const group = closed.get(key) ?? { off: free, columns: [] };
        group.columns.push(column);
        closed.set(key, group);
      }
    });
    for (let taken = 1; taken <= cart.stack.length; taken++) {
      const kinds = cart.stack.slice(-taken).map((box) => floor.kindOf[box]!);
      if (kinds[0] === 0) continue; // the deepest box taken is one that is wanted
      const column = `d${cartClass}_${taken}`;
      columns.set(column, { cartClass, taken });
      cost.push(`${taken} ${column}`);
      inCart[cartClass]!.push(column);
      for (const [kind, count] of tally(kinds)) comeOff[kind]!.push(`${count} ${column}`);
    }
  });
  const loose = tally(floor.loose.map((box) => floor.kindOf[box]!));
  const rows: string[] = [];
  inLoad.forEach((terms, index) => rows.push(`l${index}: ${sum(terms)} = ${loads[index]!.length}`));
  inCart.forEach((terms, index) => terms.length > 0 && rows.push(`c${index}: ${sum(terms)} <= ${carts[index]!.length}`));
  const both: string[] = [];
  const firsts = [...closed.values()];
  for (let kind = 1; kind < floor.kindCount; kind++) {
    const [ins, offs] = [comeIn[kind]!, comeOff[kind]!];
    if (ins.length === 0) continue;
    const supply = offs.length > 0 ? ` - ${sum(offs, ' - ')}` : '';
    rows.push(`s${kind}: ${sum(ins)}${supply} <= ${loose.get(kind) ?? 0}`);
    if (offs.length === 0) continue;
    cost.push(`-1 b${kind}`);
    both.push(`b${kind}`);
    rows.push(`i${kind}: b${kind} - ${sum(ins, ' - ')} <= 0`, `o${kind}: b${kind} + w${kind} - ${sum(offs, ' - ')} <= 0`);
    both.push(`w${kind}`);
    const first = firsts.flatMap(({ off }, group) => (off.has(kind) ? [`${off.get(kind)} y${group}`] : []));
    const open = openPlaces[kind]!;
    if (first.length > 0) rows.push(`w${kind}: w${kind} - ${sum(first, ' - ')}${open.length > 0 ? ` + ${sum(open)}` : ''} >= 0`);
  }
  rows.push(...firstRows(firsts, Math.min(floor.carts.length, floor.loads.length)));
  const integers = [...columns.keys(), ...firsts.map((_, group) => `y${group}`), ...(firsts.length > 0 ? ['anyclosed'] : [])];
  const text = `Minimize\n${wrapped(`obj: ${sum(cost)}`)}\nSubject To\n${rows.map((row) => wrapped(row)).join('\n')}\nBounds\n${both.map((each) => `${each} >= 0`).join('\n')}\nGeneral\n${integers.join('\n')}\nEnd\n`;
  return { text, columns };
}

/**
 * One of the carts that stand closed is the first to stand open: until then what comes off it goes straight only into places that were open
 * from the start (`w`: the boxes of it that find none). y: what comes off the first one.
 */
function firstRows(firsts: readonly { readonly columns: readonly string[] }[], most: number): string[] {
  if (firsts.length === 0) return [];
  return [
    `first: ${sum(firsts.map((_, group) => `y${group}`))} - anyclosed >= 0`,
    'anyclosed: anyclosed <= 1',
    ...firsts.map(({ columns }, group) => `f${group}: y${group} - ${sum(columns, ' - ')} <= 0`),
    ...firsts.map(({ columns }, group) => `a${group}: ${most} anyclosed - ${sum(columns, ' - ')} >= 0`),
  ];
}

/** Kinds of which there is one box only: pinned serials, and models with a single box that may be used. */
function singleKinds(floor: FloorPlan): ReadonlySet<number> {
  const counts = tally(floor.kindOf);
  return new Set([...counts].filter(([kind, count]) => kind !== 0 && count === 1).map(([kind]) => kind));
}

function tally(kinds: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
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
): Choice {
  const cartsLeft = carts.map((members) => [...members]);
  const loadsLeft = loads.map((members) => [...members]);
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const taken = new Map<number, number>();
  for (const [name, column] of columns) {
    for (let count = Math.round(values.get(name) ?? 0); count > 0; count--) {
      const cart = cartsLeft[column.cartClass]!.shift();
      invariant(cart !== undefined, 'the program takes no cart twice');
      if ('taken' in column) taken.set(cart, column.taken);
      else cartOf[loadsLeft[column.loadClass]!.shift()!] = cart;
    }
  }
  invariant(
    cartOf.every((cart) => cart >= 0),
    'every load has a cart',
  );
  return { cartOf, taken };
}
