import type { Work } from '../case/index.js';
import type { Lane, RowKind } from './row-kinds.js';

/** Lanes side by side; `lost` is the depth less what its towers use up of the floor, millimetres. */
export interface RowPattern {
  readonly lanes: readonly Lane[];
  readonly depth: number;
  readonly lost: number;
}

/** Lanes looked at for one depth, those of best use of their width first. */
const mostLanes = 80;

export interface RowRoom {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * The rows of least loss that can be built from what is left, for every depth that a lane has: lanes are chosen by a bounded branch-and-bound over the width. A lane of a later
 * place in the unloading order joins only when nothing of an earlier one is left outside the row.
 */
export class RowPatterns {
  private readonly byKind: Lane[];
  private readonly depths: number[];

  constructor(
    private readonly kinds: readonly RowKind[],
    lanes: readonly Lane[],
    private readonly nodes: number,
    private readonly perDepth: number,
    private readonly work: Work,
  ) {
    this.byKind = [...lanes];
    this.depths = [...new Set(lanes.map((each) => each.along))].sort((a, b) => a - b);
  }

  /** `left`: how many of each kind are left; `roomAt` gives the room of a row of a depth, undefined where there is none. */
  best(left: Int16Array, roomAt: (depthMm: number) => RowRoom | undefined): RowPattern[] {
    const levels = this.leftOfLevels(left);
    const reach = reachable(levels);
    const lanes = this.byKind.filter((lane) => lane.lastLevel <= reach && lane.kinds.every((kind) => left[kind]! > 0));
    // With many kinds the depths of single towers do: others come with their lanes.
    const many = lanes.length > mostLanes;
    const present = new Set(lanes.flatMap((each) => (many && each.kinds.length > 1 ? [] : [each.along])));
    const found = new Map<string, RowPattern>();
    this.work.add(0.05 * this.byKind.length);
    for (const depth of this.depths) {
      if (!present.has(depth)) continue;
      if (this.work.isOver) break;
      this.work.add(1 + 0.02 * lanes.length);
      const room = roomAt(depth);
      if (!room) continue;
      const usable: Lane[] = [];
      for (const lane of lanes) {
        if (lane.along <= depth && lane.across <= room.widthMm && lane.high <= room.heightMm) usable.push(lane);
        if (usable.length >= mostLanes) break;
      }
      if (!usable.some((lane) => lane.along === depth))
        usable.push(
          ...lanes.filter((lane) => lane.along === depth && lane.across <= room.widthMm && lane.high <= room.heightMm).slice(0, 2),
        );
      for (const pattern of this.fill(usable, depth, room.widthMm, Int16Array.from(left), levels)) {
        const key = keyOf(pattern);
        const other = found.get(key);
        if (!other || pattern.depth < other.depth) found.set(key, pattern);
      }
    }
    return [...found.values()];
  }

  private leftOfLevels(left: Int16Array): number[] {
    const levels: number[] = [];
    this.kinds.forEach((kind, index) => {
      while (levels.length <= kind.level) levels.push(0);
      if (!kind.free) levels[kind.level]! += left[index]!;
    });
    return levels;
  }

  private fill(lanes: readonly Lane[], depth: number, width: number, left: Int16Array, levelsLeft: readonly number[]): RowPattern[] {
    const levels = [...levelsLeft];
    const kept: { lanes: Lane[]; value: number; along: number }[] = [];
    const chosen: Lane[] = [];
    let nodes = this.nodes;
    const density = lanes.map((lane) => lane.value / lane.across);
    const worst = () => (kept.length < this.perDepth ? -1 : kept.at(-1)!.value);
    const keep = (value: number) => {
      if (chosen.length === 0 || value <= worst() || kept.some((each) => each.value === value)) return;
      const along = chosen.reduce((most, lane) => Math.max(most, lane.along), 0);
      if (along < depth) return;
      kept.push({ lanes: [...chosen], value, along });
      kept.sort((a, b) => b.value - a.value);
      if (kept.length > this.perDepth) kept.pop();
    };
    const search = (from: number, room: number, value: number): void => {
      keep(value);
      for (let index = from; index < lanes.length && nodes > 0; index++) {
        if (value + room * density[index]! <= worst()) return;
        const lane = lanes[index]!;
        if (lane.across > room || !this.take(lane, left, levels)) continue;
        nodes--;
        chosen.push(lane);
        // A lane that closes a level opens lanes of the next, which may stand earlier in the list.
        search(lane.lastLevel > 0 || this.closes(lane, levels) ? 0 : index, room - lane.across, value + lane.value);
        chosen.pop();
        this.giveBack(lane, left, levels);
      }
    };
    search(0, width, 0);
    this.work.add(0.1 * lanes.length + 0.5 * (this.nodes - nodes));
    return kept.map((each) => ({ lanes: each.lanes, depth: each.along, lost: each.along - each.value }));
  }

  private closes(lane: Lane, levels: readonly number[]): boolean {
    return lane.kinds.some((kind) => levels[this.kinds[kind]!.level] === 0);
  }

  private take(lane: Lane, left: Int16Array, levels: number[]): boolean {
    let possible = true;
    for (const kind of lane.kinds) {
      left[kind]! -= 1;
      if (!this.kinds[kind]!.free) levels[this.kinds[kind]!.level]! -= 1;
      if (left[kind]! < 0) possible = false;
    }
    for (let level = 0; possible && level < lane.lastLevel; level++) if (levels[level]! > 0) possible = false;
    if (!possible) this.giveBack(lane, left, levels);
    return possible;
  }

  private giveBack(lane: Lane, left: Int16Array, levels: number[]): void {
    for (const kind of lane.kinds) {
      left[kind]! += 1;
      if (!this.kinds[kind]!.free) levels[this.kinds[kind]!.level]! += 1;
    }
  }
}

/** The last level that a row could reach: it takes all of the earlier ones, and a row holds few. */
function reachable(levels: readonly number[]): number {
  let before = 0;
  for (let level = 0; level < levels.length; level++) {
    before += levels[level]!;
    if (before > 8) return level;
  }
  return levels.length;
}

const keyOf = (pattern: RowPattern): string =>
  pattern.lanes
    .flatMap((lane) => lane.kinds)
    .sort((a, b) => a - b)
    .join(' ');
