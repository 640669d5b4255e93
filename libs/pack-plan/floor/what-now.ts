import type { MoveMade } from './move-back.js';

/** How far the floor is with a plan. */
export interface FloorState {
  /** Items of the plan that must not fly as things stand now. */
  readonly barred: readonly string[];
  /** Box moves left, the next first; null where no list can be made. */
  readonly moves: readonly MoveMade[] | null;
  readonly loads: readonly { readonly id: string; readonly cart: string | null; readonly isConfirmed: boolean }[];
  readonly trucks: readonly { readonly id: string; readonly rows: readonly { readonly number: number; readonly isIn: boolean }[] }[];
  /** null where they are not read yet. */
  readonly hangs: readonly { readonly id: string; readonly name: string; readonly holds: number; readonly ticked: number }[] | null;
}

/** Work of one kind: how much is left of it, and what comes next. */
export type FloorJob =
  | { readonly code: 'do-not-load'; readonly left: number; readonly items: readonly string[] }
  | { readonly code: 'moves'; readonly left: number; readonly next: MoveMade | null; readonly isPossible: boolean }
  | {
      readonly code: 'carts';
      readonly left: number;
      readonly of: number;
      readonly next: { readonly load: string; readonly cart: string | null } | null;
    }
  | {
      readonly code: 'rows';
      readonly left: number;
      readonly of: number;
      readonly next: { readonly truck: string; readonly row: number } | null;
    }
  | {
      readonly code: 'lift';
      /** null: not known yet. */
      readonly left: number | null;
      readonly of: number;
      readonly next: { readonly hang: string; readonly name: string } | null;
    }
  | { readonly code: 'return'; readonly left: null };

export interface WhatNow {
  /** In the order of the work. */
  readonly jobs: readonly FloorJob[];
  /** What comes first: the earliest kind of work of which something is left; what is stopped is nobody's next. */
  readonly next: FloorJob['code'];
}

/** What to do now, in the order of the work. */
export function whatNow({ barred, moves, loads, trucks, hangs }: FloorState): WhatNow {
  const open = loads.filter((each) => !each.isConfirmed);
  const rows = trucks.flatMap((truck) => truck.rows.map((row) => ({ truck: truck.id, row: row.number, isIn: row.isIn })));
  const out = rows.filter((each) => !each.isIn);
  const hanging = (hangs ?? []).find((each) => each.ticked < each.holds);
  const jobs: FloorJob[] = [
    ...(barred.length > 0 ? [{ code: 'do-not-load' as const, left: barred.length, items: barred }] : []),
    { code: 'moves', left: moves?.length ?? 0, next: moves?.[0] ?? null, isPossible: moves !== null },
    { code: 'carts', left: open.length, of: loads.length, next: open[0] ? { load: open[0].id, cart: open[0].cart } : null },
    { code: 'rows', left: out.length, of: rows.length, next: out[0] ? { truck: out[0].truck, row: out[0].row } : null },
    {
      code: 'lift',
      left: hangs && sum(hangs.map((each) => each.holds - each.ticked)),
      of: sum((hangs ?? []).map((each) => each.holds)),
      next: hanging ? { hang: hanging.id, name: hanging.name } : null,
    },
    { code: 'return', left: null },
  ];
  const next = jobs.find((each) => each.code !== 'do-not-load' && (each.left ?? 0) > 0);
  return { jobs, next: next?.code ?? 'return' };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0);
