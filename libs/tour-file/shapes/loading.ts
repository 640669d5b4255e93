import { z } from 'zod';
import { count, name, plainDate, sentence } from '../forms/index.js';

/** Where a piece stands and is to stay; millimetres, the corner nearest the nose, the left wall and the floor. `loaded`: it is in the truck already. */
const keptPiece = z.strictObject({
  piece: name,
  truck: name,
  xMm: count,
  yMm: count,
  zMm: count,
  turned: z.boolean(),
  loaded: z.boolean().default(false),
});

/** What people at the dock want of the trucks of one show. */
export const loading = z.strictObject({
  kept: z.array(keptPiece).max(5000).default([]),
  /** Pieces that need not come off in the order of the show, by whose word. */
  waived: z
    .array(z.strictObject({ piece: name, reason: sentence, by: name, on: plainDate }))
    .max(500)
    .default([]),
  /** Cases that travel although the tour does not list them. */
  taken: z
    .array(z.strictObject({ case: name, by: name, on: plainDate }))
    .max(500)
    .default([]),
  ends: z
    .array(z.strictObject({ group: name, end: z.enum(['door', 'nose']) }))
    .max(100)
    .default([]),
  /** Pieces that do not travel with this show, by whose word. */
  stays: z
    .array(z.strictObject({ piece: name, reason: sentence, by: name, on: plainDate }))
    .max(500)
    .optional(),
});

export type KeptPiece = z.output<typeof keptPiece>;
export type Loading = z.output<typeof loading>;

export const noLoading: Loading = { kept: [], waived: [], taken: [], ends: [] };

/** One thing that somebody wanted of the trucks, as it is kept on file. */
export type LoadingAct =
  | { readonly kind: 'keep'; readonly pieces: readonly KeptPiece[] }
  | { readonly kind: 'let go'; readonly pieces: readonly string[] }
  | { readonly kind: 'waive'; readonly piece: string; readonly reason: string; readonly by: string; readonly on: string }
  | { readonly kind: 'no waiver'; readonly piece: string }
  | { readonly kind: 'take'; readonly case: string; readonly by: string; readonly on: string }
  | { readonly kind: 'leave'; readonly case: string }
  | { readonly kind: 'stay'; readonly piece: string; readonly reason: string; readonly by: string; readonly on: string }
  | { readonly kind: 'travel'; readonly piece: string }
  | { readonly kind: 'end'; readonly group: string; readonly end: 'door' | 'nose' | null };

/** What is wanted after one act more; the later word counts. */
export function afterAct(wanted: Loading, act: LoadingAct): Loading {
  switch (act.kind) {
    case 'keep':
      return { ...wanted, kept: [...without(wanted.kept, 'piece', ...act.pieces.map((each) => each.piece)), ...act.pieces] };
    case 'let go':
      return { ...wanted, kept: without(wanted.kept, 'piece', ...act.pieces) };
    case 'waive': {
      const { kind: _kind, ...waiver } = act;
      return { ...wanted, waived: [...without(wanted.waived, 'piece', act.piece), waiver] };
    }
    case 'no waiver':
      return { ...wanted, waived: without(wanted.waived, 'piece', act.piece) };
    case 'take': {
      const { kind: _kind, ...taken } = act;
      return { ...wanted, taken: [...without(wanted.taken, 'case', act.case), taken] };
    }
    case 'leave':
      return {
        ...wanted,
        taken: without(wanted.taken, 'case', act.case),
        kept: without(wanted.kept, 'piece', act.case),
        waived: without(wanted.waived, 'piece', act.case),
      };
    case 'stay': {
      const { kind: _kind, ...stay } = act;
      return {
        ...wanted,
        kept: without(wanted.kept, 'piece', act.piece),
        stays: [...without(wanted.stays ?? [], 'piece', act.piece), stay],
      };
    }
    case 'travel':
      return { ...wanted, stays: without(wanted.stays ?? [], 'piece', act.piece) };
    case 'end': {
      const others = without(wanted.ends, 'group', act.group);
      return { ...wanted, ends: act.end === null ? others : [...others, { group: act.group, end: act.end }] };
    }
  }
}

function without<T, K extends keyof T>(list: readonly T[], key: K, ...values: T[K][]): T[] {
  const out = new Set(values);
  return list.filter((each) => !out.has(each[key]));
}

export const isLoadingEmpty = (wanted: Loading | undefined): boolean =>
  wanted === undefined || Object.values(wanted).every((list) => !list || list.length === 0);
