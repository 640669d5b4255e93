import { type Way, shareOfFloorMm } from '../case/index.js';
import type { Tower } from './towers.js';

/** Towers that are alike to a row: same base, same place in the unloading order, same height where height matters. */
export interface RowKind {
  readonly ways: readonly (Way & { readonly turned: boolean })[];
  /** Place in the unloading order, counted from what comes off last. */
  readonly level: number;
  /** Its unloading order is waived: it may stand in any row. */
  readonly free: boolean;
  readonly high: number;
  /** Least length of floor that one uses up, millimetres: prices of what stands side by side never sum to more than the row is deep; by their shares where no price is asked. */
  readonly price: number;
  readonly towers: readonly Tower[];
}

/** Sorts towers into kinds, last off first. `minded` heights keep kinds apart. */
export function rowKinds(
  towers: readonly Tower[],
  waived: ReadonlySet<string>,
  priceOf: (ways: readonly Way[]) => number,
  room: { readonly lengthMm: number; readonly widthMm: number; readonly heightMatters: boolean; readonly countsShares?: boolean },
): RowKind[] {
  const levels = [...new Set(towers.map((each) => each.firstOff))].sort((a, b) => b - a);
  const kinds = new Map<string, RowKind & { towers: Tower[] }>();
  for (const tower of towers) {
    const free = tower.parts.some(({ piece }) => waived.has(piece.id));
    const key = `${tower.firstOff} ${free} ${tower.along} ${tower.across} ${tower.mayTurn} ${room.heightMatters ? tower.high : ''}`;
    const kind = kinds.get(key);
    if (kind) {
      kind.towers.push(tower);
      continue;
    }
    const ways = [{ along: tower.along, across: tower.across, turned: false }];
    if (tower.mayTurn && tower.along !== tower.across) ways.push({ along: tower.across, across: tower.along, turned: true });
    const fitting = ways.filter((each) => each.along <= room.lengthMm && each.across <= room.widthMm);
    kinds.set(key, {
      ways: fitting,
      level: levels.indexOf(tower.firstOff),
      free,
      high: tower.high,
      price: fitting.length === 0 ? 0 : priceOf(fitting) || (room.countsShares ? shareOfFloorMm(fitting, room.widthMm) : 0),
      towers: [tower],
    });
  }
  return [...kinds.values()].sort((a, b) => a.level - b.level || b.price - a.price);
}

/** Towers one behind the other in a row, nose first; `kinds` and `turned` run alike. */
export interface Lane {
  readonly kinds: readonly number[];
  readonly turned: readonly boolean[];
  readonly along: number;
  readonly across: number;
  readonly value: number;
  readonly high: number;
  readonly lastLevel: number;
}

/** With more kinds than this lanes hold one kind only. */
const mostPaired = 60;

/** All lanes of one tower, several alike, or two different ones, no deeper than `deepestMm`. */
export function lanesOf(kinds: readonly RowKind[], deepestMm: number): Lane[] {
  const lanes: Lane[] = [];
  const add = (members: readonly (readonly [kind: number, way: RowKind['ways'][number]])[]) => {
    const along = members.reduce((sum, [, way]) => sum + way.along, 0);
    if (along > deepestMm) return;
    const sorted = [...members].sort(([a], [b]) => kinds[a]!.level - kinds[b]!.level);
    lanes.push({
      kinds: sorted.map(([kind]) => kind),
      turned: sorted.map(([, way]) => way.turned),
      along,
      across: members.reduce((most, [, way]) => Math.max(most, way.across), 0),
      value: members.reduce((sum, [kind]) => sum + kinds[kind]!.price, 0),
      high: members.reduce((most, [kind]) => Math.max(most, kinds[kind]!.high), 0),
      lastLevel: members.reduce((most, [kind]) => (kinds[kind]!.free ? most : Math.max(most, kinds[kind]!.level)), 0),
    });
  };
  kinds.forEach((kind, a) => {
    for (const way of kind.ways) {
      for (let count = 1; count <= Math.min(4, kind.towers.length); count++) add(Array.from({ length: count }, () => [a, way] as const));
      for (let b = a; b < (kinds.length > mostPaired ? a : kinds.length); b++) {
        if (kinds[b]!.level > kind.level + 1) continue;
        for (const other of kinds[b]!.ways) {
          const alike = a === b && other.turned === way.turned;
          // Two that differ much in width leave more beside the narrow one than they save behind it.
          if (
            !alike &&
            Math.min(way.across, other.across) >= 0.75 * Math.max(way.across, other.across) &&
            (a !== b || kind.towers.length > 1)
          )
            add([
              [a, way],
              [b, other],
            ]);
        }
      }
    }
  });
  return lanes.sort((a, b) => b.value / b.across - a.value / a.across || b.value - a.value);
}
