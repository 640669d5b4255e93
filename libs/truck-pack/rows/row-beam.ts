import type { Work } from '../case/index.js';
import { type RowKind, lanesOf } from './row-kinds.js';
import { type RowPattern, RowPatterns } from './row-patterns.js';
import type { Room, RowRooms } from './row-room.js';

/** A row of kinds in its place. */
export interface PlannedRow {
  readonly pattern: RowPattern;
  readonly x: number;
  readonly room: Room;
}

/** Rows from the nose, and how many of each kind they leave out. */
export interface RowPlan {
  readonly rows: readonly PlannedRow[];
  readonly left: Int16Array;
  readonly endMm: number;
  /** Floor length that the rows use less what their towers need, millimetres. */
  readonly lostMm: number;
}

export interface BeamLimits {
  /** Plans kept for each number of towers placed. */
  readonly width: number;
  readonly nodes: number;
  /** Only the row that loses least of its depth goes on. */
  readonly isGreedy?: boolean;
  readonly work: Work;
  /** May the row stand here, with what is kept? */
  readonly allowed?: (row: PlannedRow) => boolean;
}

interface State {
  readonly left: Int16Array;
  readonly x: number;
  readonly needed: number;
  readonly placed: number;
  readonly last: PlannedRow | undefined;
  readonly before: State | undefined;
}

const deepestRowMm = 2600;

/**
 * Rows from nose to door for one truck: a beam by the number of towers placed, each plan judged by its end less the floor that its towers need, plans that leave the same kept once.
 * Returns the shortest plans that leave least, best first.
 */
export function searchRows(kinds: readonly RowKind[], rooms: RowRooms, limits: BeamLimits): RowPlan[] {
  const total = kinds.reduce((sum, each) => sum + each.towers.length, 0);
  const patterns = patternsOf(kinds, rooms, limits);
  const first = firstState(kinds);
  const buckets: (Map<string, State> | undefined)[] = [new Map([['', first]])];
  let partial: State = first;
  for (let placed = 0; placed < total; placed++) {
    const bucket = buckets[placed];
    buckets[placed] = undefined;
    if (!bucket) continue;
    const states = [...bucket.values()].sort((a, b) => lossOf(a) - lossOf(b)).slice(0, limits.width);
    for (const state of states) {
      if (limits.work.isOver) break;
      if (state.needed > partial.needed) partial = state;
      const all = rowsAfter(state, kinds, patterns, rooms, limits);
      for (const next of limits.isGreedy ? leastLost([...all]) : all) {
        const target = (buckets[next.placed] ??= new Map<string, State>());
        const key = String.fromCharCode(...next.left);
        const other = target.get(key);
        if (!other || next.x < other.x) target.set(key, next);
      }
    }
  }
  const complete = [...(buckets[total]?.values() ?? [])].sort((a, b) => a.x - b.x);
  return (complete.length > 0 ? complete : [partial]).map(planOf);
}

/** For each row of a plan what the next best row at its place would have lost, millimetres; undefined where no other could stand there. */
export function nextBestLost(kinds: readonly RowKind[], rooms: RowRooms, limits: BeamLimits, plan: RowPlan): (number | undefined)[] {
  const patterns = patternsOf(kinds, rooms, limits);
  let state = firstState(kinds);
  return plan.rows.map((chosen) => {
    const left = Int16Array.from(state.left);
    for (const lane of chosen.pattern.lanes) for (const kind of lane.kinds) left[kind]! -= 1;
    const mark = left.join();
    let least: number | undefined;
    for (const next of rowsAfter(state, kinds, patterns, rooms, limits))
      if (next.left.join() !== mark) least = Math.min(least ?? Infinity, next.last!.pattern.lost + next.last!.x - state.x);
    state = { ...state, left, x: chosen.x + chosen.pattern.depth };
    return least;
  });
}

/** Of the next rows the one that loses least of its depth. */
function leastLost(states: readonly State[]): readonly State[] {
  const share = ({ last }: State) => last!.pattern.lost / last!.pattern.depth;
  return states.length === 0 ? [] : [states.reduce((a, b) => (share(b) < share(a) ? b : a))];
}

const patternsOf = (kinds: readonly RowKind[], rooms: RowRooms, { nodes, work }: BeamLimits): RowPatterns =>
  new RowPatterns(kinds, lanesOf(kinds, Math.min(deepestRowMm, rooms.truck.innerLengthMm)), nodes, 3, work);

const firstState = (kinds: readonly RowKind[]): State => ({
  left: Int16Array.from(kinds, (each) => each.towers.length),
  x: 0,
  needed: 0,
  placed: 0,
  last: undefined,
  before: undefined,
});

const lossOf = (state: State): number => state.x - state.needed;

function* rowsAfter(state: State, kinds: readonly RowKind[], patterns: RowPatterns, rooms: RowRooms, limits: BeamLimits): Generator<State> {
  for (const x of rooms.starts(state.x)) {
    const seen = new Map<number, readonly Room[]>();
    const roomsAt = (depth: number) => {
      let found = seen.get(depth);
      if (!found) seen.set(depth, (found = x + depth > rooms.truck.innerLengthMm ? [] : rooms.at(x, depth)));
      return found;
    };
    const variants = rooms.heightMatters ? [0, 1] : [0];
    let isWhole = false;
    for (const variant of variants)
      for (const pattern of patterns.best(state.left, (depth) => roomsAt(depth)[variant])) {
        const room = roomsAt(pattern.depth)[variant] ?? roomsAt(pattern.depth)[0];
        if (!room) continue;
        const row: PlannedRow = { pattern, x, room };
        if (limits.allowed && !limits.allowed(row)) continue;
        isWhole ||= room.widthMm === rooms.whole.widthMm;
        const left = Int16Array.from(state.left);
        let [placed, needed] = [state.placed, state.needed];
        for (const lane of pattern.lanes)
          for (const kind of lane.kinds) {
            left[kind]! -= 1;
            placed++;
            needed += kinds[kind]!.price;
          }
        yield { left, x: x + pattern.depth, needed, placed, last: row, before: state };
      }
    if (isWhole) return;
  }
}

function planOf(state: State): RowPlan {
  const rows: PlannedRow[] = [];
  for (let at: State | undefined = state; at?.last; at = at.before) rows.unshift(at.last);
  return { rows, left: state.left, endMm: state.x, lostMm: lossOf(state) };
}
