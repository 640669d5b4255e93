import type { Placed } from '../space/index.js';
import type { PlannedRow, RowPlan } from './row-beam.js';
import type { RowKind } from './row-kinds.js';
import type { Tower } from './towers.js';

/** Mass and moments of what comes off at one stop: along, kg mm from the row's start; across, kg mm from the wall. */
export interface StopMass {
  readonly firstOff: number;
  readonly massKg: number;
  readonly alongKgMm: number;
}

/** A row of real towers, not yet placed. */
export interface BuiltRow {
  readonly lanes: readonly BuiltLane[];
  readonly depth: number;
  readonly width: number;
  readonly high: number;
  readonly stops: readonly StopMass[];
  readonly planned: PlannedRow;
}

export interface BuiltLane {
  readonly towers: readonly { readonly tower: Tower; readonly turned: boolean; readonly dx: number }[];
  readonly across: number;
}

/** Gives the plan's rows their towers: of towers that are alike, those of one group one after the other. */
export function buildRows(kinds: readonly RowKind[], plan: RowPlan): BuiltRow[] {
  const waiting = kinds.map((kind) => [...kind.towers].sort((a, b) => (groupKey(a) < groupKey(b) ? -1 : 1)));
  return plan.rows.map((planned): BuiltRow => {
    const lanes = planned.pattern.lanes.map((lane): BuiltLane => {
      let dx = 0;
      const towers = lane.kinds.map((kind, index) => {
        const tower = waiting[kind]!.shift()!;
        const turned = lane.turned[index]!;
        const at = { tower, turned, dx };
        dx += turned ? tower.across : tower.along;
        return at;
      });
      return { towers, across: lane.across };
    });
    const parts = lanes.flatMap((lane) => placedLane(lane, 0, 0));
    return {
      lanes,
      depth: planned.pattern.depth,
      width: lanes.reduce((sum, lane) => sum + lane.across, 0),
      high: parts.reduce((most, each) => Math.max(most, each.z + each.high), 0),
      stops: stopsOf(parts),
      planned,
    };
  });
}

const groupKey = (tower: Tower): string => `${tower.parts[0]!.piece.group ?? ''} ${tower.parts[0]!.piece.id}`;

export function stopsOf(placed: readonly Placed[]): StopMass[] {
  const stops = new Map<number, { firstOff: number; massKg: number; alongKgMm: number }>();
  for (const { piece, x, along } of placed) {
    let stop = stops.get(piece.firstOff);
    if (!stop) stops.set(piece.firstOff, (stop = { firstOff: piece.firstOff, massKg: 0, alongKgMm: 0 }));
    stop.massKg += piece.massKg;
    stop.alongKgMm += piece.massKg * (x + along / 2);
  }
  return [...stops.values()];
}

/** The pieces of a row in their places, its lanes in that order from `y`. */
export function placedRow(lanes: readonly BuiltLane[], x: number, fromMm: number): Placed[] {
  let y = fromMm;
  return lanes.flatMap((lane) => {
    const placed = placedLane(lane, x, y);
    y += lane.across;
    return placed;
  });
}

const placedLane = (lane: BuiltLane, x: number, y: number): Placed[] =>
  lane.towers.flatMap(({ tower, turned, dx }) => placedTower(tower, turned, x + dx, y));

export const placedTower = (tower: Tower, turned: boolean, x: number, y: number): Placed[] =>
  tower.parts.map((part): Placed => {
    const isTurned = part.turned !== turned;
    const { piece } = part;
    return {
      piece,
      x: x + (turned ? part.dy : part.dx),
      y: y + (turned ? part.dx : part.dy),
      z: part.dz,
      along: isTurned ? piece.widthMm : piece.lengthMm,
      across: isTurned ? piece.lengthMm : piece.widthMm,
      high: piece.heightMm,
      turned: isTurned,
    };
  });
