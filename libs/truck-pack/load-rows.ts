import { type KeepOptions, type PlacementAnswer, type TruckAnswer, type TruckCaseData, type Violation, axleLoads } from './case/index.js';
import { verifyTruckPack } from './check/index.js';
import { type Placed, asPlaced, loadingOrderOf, usedLengthMm } from './space/index.js';

/** A slice of the truck from wall to wall that no piece reaches over; millimetres from the nose. */
export interface LoadRow {
  readonly fromMm: number;
  readonly toMm: number;
  readonly ids: readonly string[];
}

/** A load with its figures, and every rule that it breaks. */
export interface JudgedLoad {
  readonly load: TruckAnswer;
  readonly breaches: readonly Violation[];
}

/** The rows of one truck from nose to door. */
export function loadRowsOf(problem: TruckCaseData, placements: readonly PlacementAnswer[]): readonly LoadRow[] {
  const rows: { fromMm: number; toMm: number; ids: string[] }[] = [];
  const sorted = placedOf(problem, placements).sort((a, b) => a.x - b.x || a.y - b.y || a.z - b.z);
  for (const { piece, x, along } of sorted) {
    const last = rows.at(-1);
    if (!last || x >= last.toMm) rows.push({ fromMm: x, toMm: x + along, ids: [piece.id] });
    else {
      last.ids.push(piece.id);
      last.toMm = Math.max(last.toMm, x + along);
    }
  }
  return rows;
}

/** Mass, centre, axles and loading order of placements in one truck, and what the checker says of them; the pieces of other trucks are not looked at. */
export function judgeLoad(
  problem: TruckCaseData,
  truckId: string,
  placements: readonly PlacementAnswer[],
  { kept = [], waived = [] }: KeepOptions = {},
): JudgedLoad {
  const truck = problem.trucks.find((each) => each.id === truckId);
  if (!truck) throw new RangeError(`no truck ${truckId} in the case`);
  const placed = placedOf(problem, placements);
  const ids = new Set(placed.map((each) => each.piece.id));
  const own = kept.filter((each) => each.truck === truckId && ids.has(each.id));
  const order = loadingOrderOf(placed, new Set(own.flatMap((each) => (each.loaded ? [each.id] : [])))) ?? placed;
  const massKg = placed.reduce((sum, each) => sum + each.piece.massKg, 0);
  const moment = placed.reduce((sum, each) => sum + each.piece.massKg * (each.x + each.along / 2), 0);
  const side = placed.reduce((sum, each) => sum + each.piece.massKg * (each.y + each.across / 2 - truck.innerWidthMm / 2), 0);
  const load: TruckAnswer = {
    id: truckId,
    placements,
    loadingOrder: order.map((each) => each.piece.id),
    usedLengthMm: usedLengthMm(placed),
    massKg,
    sideOffsetMm: massKg > 0 ? side / massKg : 0,
    axles: axleLoads(truck, massKg, moment) ?? {},
  };
  const namedWaived = waived.filter((id) => ids.has(id));
  const breaches = verifyTruckPack(
    { ...problem, trucks: [truck], pieces: problem.pieces.filter((each) => ids.has(each.id)) },
    { status: 'feasible', trucks: [load], leftOver: [], bound: { trucks: 0, usedLengthMm: 0 }, waived: namedWaived },
    { kept: own, waived: namedWaived },
  );
  return { load, breaches };
}

/** The load with rows `i` and `j` (counted from the nose, 0 the first) exchanged; the free space before and after each place in the line of rows stays. */
export function swapRows(problem: TruckCaseData, load: TruckAnswer, i: number, j: number, options: KeepOptions = {}): JudgedLoad {
  const rows = loadRowsOf(problem, load.placements);
  const [low, high] = [Math.min(i, j), Math.max(i, j)];
  if (!Number.isInteger(low) || !Number.isInteger(high) || low < 0 || high >= rows.length)
    throw new RangeError(`rows ${i} and ${j}: wanted two of 0 to ${rows.length - 1}`);
  const order = rows.map((_, at) => rows[at === low ? high : at === high ? low : at]!);
  const shift = new Map<string, number>();
  let x = rows[low]!.fromMm;
  for (let at = low; at <= high; at++) {
    const row = order[at]!;
    for (const id of row.ids) shift.set(id, x - row.fromMm);
    x += row.toMm - row.fromMm + (rows[at + 1] ? rows[at + 1]!.fromMm - rows[at]!.toMm : 0);
  }
  const placements = load.placements.map((each) => ({ ...each, xMm: each.xMm + (shift.get(each.id) ?? 0) }));
  return judgeLoad(problem, load.id, placements, options);
}

function placedOf(problem: TruckCaseData, placements: readonly PlacementAnswer[]): Placed[] {
  const pieces = new Map(problem.pieces.map((each) => [each.id, each]));
  return placements.flatMap((each) => {
    const piece = pieces.get(each.id);
    return piece ? [asPlaced(piece, each)] : [];
  });
}
