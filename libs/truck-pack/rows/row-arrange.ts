import { type TruckCaseData, type Work, outsideLimitsKg } from '../case/index.js';
import { LoadSpace, type Placed, loadingOrderOf, outsideLoad } from '../space/index.js';
import { type BuiltRow, type StopMass, placedRow, stopsOf } from './built-row.js';
import type { PlannedRow } from './row-beam.js';
import type { Room, RowRooms } from './row-room.js';
import { levelSides } from './row-sides.js';

export interface ArrangeRequest {
  readonly problem: Pick<TruckCaseData, 'minSupport' | 'checkAfterStops'>;
  readonly rooms: RowRooms;
  readonly kept: readonly Placed[];
  readonly loaded: ReadonlySet<string>;
  /** May a row stand like this, wherever it is moved to in its room? */
  readonly allowed: (placed: readonly Placed[], room: Room) => boolean;
  readonly random: () => number;
  /** Orders and gaps that are tried. */
  readonly tries: number;
  readonly work: Work;
}

export interface Arranged {
  readonly space: LoadSpace;
  readonly order: readonly Placed[];
  readonly outsideKg: number;
  readonly endMm: number;
  /** The rows as they stand, from the nose. */
  readonly rows: readonly StandingRow[];
}

/** A row in its place, before its lanes are exchanged or moved across. */
export interface StandingRow {
  readonly row: BuiltRow;
  readonly x: number;
  readonly room: Room;
}

interface Line {
  readonly rows: readonly BuiltRow[];
  readonly at: readonly { readonly x: number; readonly room: PlannedRow['room'] }[];
  readonly endMm: number;
  readonly outsideKg: number;
}

/**
 * Places built rows: their order among rows of one stop, free space ahead of them and between stops where an axle asks for it, then the side of each. Undefined where a row finds no room.
 * The result may still be outside a limit; `outsideKg` says by how much.
 */
export function arrangeRows(rows: readonly BuiltRow[], request: ArrangeRequest): Arranged | undefined {
  const line = lineUp(rows, request);
  if (!line) return undefined;
  const { truck } = request.rooms;
  const standing = line.rows.map((row, index): StandingRow => ({ row, ...line.at[index]! }));
  const placed = levelSides(standing, request.kept, truck, request.problem.checkAfterStops);
  const order = loadingOrderOf([...request.kept, ...placed], request.loaded);
  if (!order) return undefined;
  const space = new LoadSpace(truck, request.problem.minSupport, { nearNose: 0, balance: 0, centred: false, startMm: 0 });
  for (const each of [...order].sort((a, b) => a.z - b.z)) if (!space.putAt(each)) return undefined;
  return { space, order, outsideKg: outsideLoad(space, request.problem.checkAfterStops), endMm: line.endMm, rows: standing };
}

/** The shortest line of rows found whose axles are inside, else the one that is outside least. */
function lineUp(rows: readonly BuiltRow[], request: ArrangeRequest): Line | undefined {
  const { truck } = request.rooms;
  let best = shifted(
    rows,
    rows.map(() => 0),
    request,
  );
  if (best && best.outsideKg === 0) return best;
  if (!truck.semiTrailer && !truck.rigid) return best;
  const note = (line: Line | undefined) => {
    if (line && (!best || line.outsideKg < best.outsideKg || (line.outsideKg === best.outsideKg && line.endMm < best.endMm))) best = line;
  };
  const orders = [rows, sortedInStops(rows, 1), sortedInStops(rows, -1)];
  for (let attempt = 0; attempt < request.tries && !request.work.isOver; attempt++) {
    const order = orders[attempt] ?? shuffledInStops(best?.rows ?? rows, request.random);
    for (const start of startsFor(order, request)) {
      const gaps = order.map((_, index) => (index === 0 ? start : 0));
      if (attempt >= orders.length && request.problem.checkAfterStops) loosen(gaps, order, request);
      note(shifted(order, gaps, request));
    }
    if (best && best.outsideKg === 0 && attempt >= orders.length) break;
  }
  return best;
}

/** Distances from the nose worth trying: none, and finer steps up to all that is spare. */
function startsFor(rows: readonly BuiltRow[], { rooms }: ArrangeRequest): number[] {
  const spare = rooms.truck.innerLengthMm - rows.reduce((sum, row) => sum + row.depth, 0);
  if (spare <= 0) return [0];
  const steps = Math.min(40, Math.max(1, Math.ceil(spare / 50)));
  return Array.from({ length: steps + 1 }, (_, step) => Math.floor((spare * step) / steps));
}

/** Spreads a part of the start over a later change of stop. */
function loosen(gaps: number[], rows: readonly BuiltRow[], { random, rooms }: ArrangeRequest): void {
  const changes = rows.flatMap((row, index) => (index > 0 && stopOf(row) !== stopOf(rows[index - 1]!) ? [index] : []));
  const at = changes[Math.floor(random() * changes.length)];
  if (at === undefined) return;
  const spare = rooms.truck.innerLengthMm - rows.reduce((sum, row) => sum + row.depth, 0) - gaps[0]!;
  gaps[at] = Math.max(0, Math.floor(spare * random()));
}

function shifted(rows: readonly BuiltRow[], gaps: readonly number[], request: ArrangeRequest): Line | undefined {
  const { rooms } = request;
  request.work.add(0.3 * rows.length);
  const at: Line['at'][number][] = [];
  let cursor = 0;
  for (const [index, row] of rows.entries()) {
    const place = firstRoom(row, cursor + gaps[index]!, request);
    if (!place) return undefined;
    at.push(place);
    cursor = place.x + row.depth;
  }
  const keptEnd = request.kept.reduce((far, each) => Math.max(far, each.x + each.along), 0);
  return { rows, at, endMm: Math.max(cursor, keptEnd), outsideKg: outsideAxles(rows, at, request, rooms.truck) };
}

function firstRoom(row: BuiltRow, from: number, { rooms, allowed }: ArrangeRequest): Line['at'][number] | undefined {
  for (const x of rooms.starts(from)) {
    if (x + row.depth > rooms.truck.innerLengthMm) return undefined;
    for (const room of rooms.at(x, row.depth))
      if (room.widthMm >= row.width && room.heightMm >= row.high && allowed(placedRow(row.lanes, x, room.fromMm), room)) return { x, room };
  }
  return undefined;
}

function outsideAxles(rows: readonly BuiltRow[], at: Line['at'], { kept, problem }: ArrangeRequest, truck: RowRooms['truck']): number {
  const all: (StopMass & { x: number })[] = [
    ...rows.flatMap((row, index) => row.stops.map((stop) => ({ ...stop, x: at[index]!.x }))),
    ...stopsOf(kept).map((stop) => ({ ...stop, x: 0 })),
  ];
  const outside = (staying: typeof all) =>
    outsideLimitsKg(
      truck,
      staying.reduce((sum, each) => sum + each.massKg, 0),
      staying.reduce((sum, each) => sum + each.alongKgMm + each.massKg * each.x, 0),
    );
  if (!problem.checkAfterStops) return outside(all);
  const stops = [...new Set(all.map((each) => each.firstOff))].sort((a, b) => a - b);
  return outside(all) + stops.slice(0, -1).reduce((sum, stop) => sum + outside(all.filter((each) => each.firstOff > stop)), 0);
}

/** The stop of a row whose pieces all come off together; undefined for a row of several. */
const stopOf = (row: BuiltRow): number | undefined => (row.stops.length === 1 ? row.stops[0]!.firstOff : undefined);

/** Runs of rows that may change places: all of one stop. */
function runsOf(rows: readonly BuiltRow[]): BuiltRow[][] {
  const runs: BuiltRow[][] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && stopOf(row) !== undefined && stopOf(last[0]!) === stopOf(row)) last.push(row);
    else runs.push([row]);
  }
  return runs;
}

const massPerMm = (row: BuiltRow): number => row.stops.reduce((sum, each) => sum + each.massKg, 0) / row.depth;

const sortedInStops = (rows: readonly BuiltRow[], sign: 1 | -1): BuiltRow[] =>
  runsOf(rows).flatMap((run) => [...run].sort((a, b) => sign * (massPerMm(a) - massPerMm(b))));

const shuffledInStops = (rows: readonly BuiltRow[], random: () => number): BuiltRow[] =>
  runsOf(rows).flatMap((run) =>
    run
      .map((row) => [random(), row] as const)
      .sort(([a], [b]) => a - b)
      .map(([, row]) => row),
  );
