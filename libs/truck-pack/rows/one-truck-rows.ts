import type { WidthPrices } from '../bound/index.js';
import { type Piece, type Truck, type TruckCaseData, headroomOf, isLarge, type RowChoice, Work } from '../case/index.js';
import { type LoadSpace, type Placed, getOn } from '../space/index.js';
import { type BuiltRow, buildRows, placedRow } from './built-row.js';
import { arrangeRows } from './row-arrange.js';
import { type BeamLimits, type PlannedRow, nextBestLost, searchRows } from './row-beam.js';
import { rowChoices } from './row-choices.js';
import { type RowKind, rowKinds } from './row-kinds.js';
import { type Room, RowRooms } from './row-room.js';
import { type Tower, buildTowers } from './towers.js';

export interface RowTask {
  readonly problem: TruckCaseData;
  readonly truck: Truck;
  readonly pieces: readonly Piece[];
  readonly kept: readonly Placed[];
  readonly loaded: ReadonlySet<string>;
  readonly waived: ReadonlySet<string>;
  readonly prices: WidthPrices;
  readonly beam: number;
  /** Lanes tried for a row. */
  readonly nodes: number;
  /** Row after row without looking further ahead: for a load in little time. */
  readonly isGreedy?: boolean;
  readonly work: Work;
  readonly random: () => number;
  /** Towers in a chance order instead of the plain ones. */
  readonly shake: boolean;
}

/** One truck in rows. `over` are pieces that found no room; `outsideKg` is above 0 where no arrangement found is inside the limits. */
export interface TruckRows {
  readonly space: LoadSpace | undefined;
  readonly order: readonly Placed[];
  readonly endMm: number;
  readonly outsideKg: number;
  readonly over: readonly Piece[];
  readonly causes?: LengthCauses;
  /** Why its rows stand where they do; worked out when asked for. */
  readonly why?: () => readonly RowChoice[];
}

/** Where the length of a load goes beyond what its floor needs, millimetres. */
export interface LengthCauses {
  /** Width that rows of one stop leave. */
  readonly inRowsMm: number;
  /** The same of rows in which one stop ends and the next begins, and of the last row. */
  readonly atStopsMm: number;
  /** Free space ahead of rows: for the axles, or behind what is blocked or kept. */
  readonly freeMm: number;
  /** Floor that the towers need, at the prices of the bound. */
  readonly floorMm: number;
}

/**
 * One truck in rows: towers stop by stop (`towers.ts`), sorted into kinds that stand alike (`row-kinds.ts`), rows chosen over the width (`row-patterns.ts`) by a beam from nose to
 * door (`row-beam.ts`), then real towers in them (`built-row.ts`), their order and free space for the axles (`row-arrange.ts`) and the side of each row (`row-sides.ts`).
 */
export function rowsInTruck(task: RowTask): TruckRows {
  const { truck, pieces, kept, waived } = task;
  const rooms = new RowRooms(truck, kept);
  const towers = towersOf(task);
  const kinds = rowKinds(towers, waived, task.prices.lengthOf, {
    lengthMm: truck.innerLengthMm,
    widthMm: truck.innerWidthMm,
    countsShares: isLarge(task.problem),
    heightMatters: rooms.heightMatters || kept.length > 0,
  });
  // A row may still be moved and mirrored in its room: it has to get on with what is kept wherever it stands in it.
  const stand = (placed: readonly Placed[], { fromMm, widthMm }: Room) =>
    placed.every((each) =>
      kept.every((fixed) => getOn({ ...each, y: fromMm, across: widthMm }, fixed, waived, task.loaded.has(fixed.piece.id))),
    );
  const limits: BeamLimits = {
    width: task.beam,
    nodes: task.nodes,
    ...(task.isGreedy ? { isGreedy: true } : {}),
    work: task.work,
    ...(kept.length > 0 ? { allowed: (row: PlannedRow) => stand(likely(kinds, row), row.room) } : {}),
  };
  const plans = searchRows(kinds, rooms, limits);
  let best: TruckRows | undefined;
  for (const plan of plans.slice(0, 4)) {
    const rows = buildRows(kinds, plan);
    const inside = new Set(rows.flatMap((row) => placedRow(row.lanes, 0, 0)).map((each) => each.piece));
    const over = pieces.filter((each) => !inside.has(each));
    const arranged = arrangeRows(rows, {
      problem: task.problem,
      rooms,
      kept,
      loaded: task.loaded,
      allowed: (placed, room) => kept.length === 0 || stand(placed, room),
      random: task.random,
      tries: 3 + task.beam,
      work: task.work,
    });
    if (!arranged) continue;
    if (best && (best.outsideKg < arranged.outsideKg || (best.outsideKg === arranged.outsideKg && best.endMm <= arranged.endMm))) continue;
    best = {
      space: arranged.space,
      order: arranged.order,
      endMm: arranged.endMm,
      outsideKg: arranged.outsideKg,
      over,
      causes: causesOf(rows, arranged.endMm),
      why: () =>
        rowChoices({
          planned: rows,
          nextBestLost: nextBestLost(kinds, rooms, { ...limits, work: new Work() }, plan),
          standing: arranged.rows,
          placed: arranged.space.placed,
          kept,
        }),
    };
    if (best.outsideKg === 0 && best.endMm <= plan.endMm) break;
  }
  return best ?? { space: undefined, order: [], endMm: 0, outsideKg: 0, over: pieces };
}

function causesOf(rows: readonly BuiltRow[], endMm: number): LengthCauses {
  const lost = (mixed: boolean) =>
    rows.reduce(
      (sum, row, index) => sum + (mixed === (row.stops.length > 1 || index === rows.length - 1) ? row.planned.pattern.lost : 0),
      0,
    );
  const depth = rows.reduce((sum, row) => sum + row.depth, 0);
  return { inRowsMm: lost(false), atStopsMm: lost(true), freeMm: endMm - depth, floorMm: depth - lost(false) - lost(true) };
}

const orders: ((a: Piece, b: Piece) => number)[] = [
  (a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.heightMm - a.heightMm || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.massKg - a.massKg || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
];

/** Towers stop by stop, in the order that leaves least on the floor. */
export function towersOf({ truck, pieces, prices, random, shake, work }: RowTask): Tower[] {
  const stops = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const stop = stops.get(piece.firstOff);
    if (stop) stop.push(piece);
    else stops.set(piece.firstOff, [piece]);
  }
  const chances = Array.from({ length: pieces.length > 150 ? 0 : shake ? 12 : 4 }, () => {
    const keys = new Map(pieces.map((each) => [each, each.lengthMm * each.widthMm * (0.6 + random())]));
    return (a: Piece, b: Piece) => keys.get(b)! - keys.get(a)!;
  });
  const tried = [...orders, ...chances];
  const floor = (towers: readonly Tower[]) =>
    towers.reduce((sum, each) => {
      const ways = [{ along: each.along, across: each.across }];
      if (each.mayTurn) ways.push({ along: each.across, across: each.along });
      return sum + prices.lengthOf(ways.filter((way) => way.across <= truck.innerWidthMm));
    }, 0);
  return [...stops.values()].flatMap((stop) => {
    const ways = tried.map((order) => buildTowers(stop, headroomOf(truck), (a, b) => order(a, b) || (a.id < b.id ? -1 : 1), work));
    return ways.reduce((best, each) => (floor(each) < floor(best) - 1e-6 ? each : best));
  });
}

/** The row with the first towers of its kinds: all of a kind stand alike. */
function likely(kinds: readonly RowKind[], { pattern, x, room }: PlannedRow): Placed[] {
  const lanes = pattern.lanes.map((lane) => {
    let dx = 0;
    const towers = lane.kinds.map((kind, index) => {
      const tower = kinds[kind]!.towers[0]!;
      const at = { tower, turned: lane.turned[index]!, dx };
      dx += at.turned ? tower.across : tower.along;
      return at;
    });
    return { towers, across: lane.across };
  });
  return placedRow(lanes, x, room.fromMm);
}
