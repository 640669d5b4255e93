import type { TrimMark } from '../comparison/index.js';

/** What changed from one plan to the next, thing by thing. */
export type DifferenceFact =
  | { readonly code: 'hang-new'; readonly hang: string; readonly boxes: number }
  | { readonly code: 'hang-gone'; readonly hang: string }
  | { readonly code: 'hang-length'; readonly hang: string; readonly before: number; readonly after: number }
  | { readonly code: 'hang-tilt'; readonly hang: string; readonly beforeDeg: number; readonly afterDeg: number }
  | { readonly code: 'hang-trim'; readonly hang: string; readonly beforeMm: number; readonly afterMm: number }
  | { readonly code: 'hang-trim-to'; readonly hang: string; readonly before: TrimMark; readonly after: TrimMark }
  | { readonly code: 'splay'; readonly hang: string; readonly position: number; readonly beforeDeg: number; readonly afterDeg: number }
  | { readonly code: 'box-model'; readonly hang: string; readonly position: number; readonly before: string; readonly after: string }
  | {
      readonly code: 'box';
      readonly hang: string;
      readonly position: number;
      readonly before: string | null;
      readonly after: string | null;
    }
  | { readonly code: 'cart'; readonly load: string; readonly before: string | null; readonly after: string | null }
  | { readonly code: 'pick-new'; readonly hang: string; readonly hole: string; readonly hookLoadKg: number }
  | { readonly code: 'hook-load'; readonly hang: string; readonly hole: string; readonly beforeKg: number; readonly afterKg: number }
  | { readonly code: 'hoist'; readonly hang: string; readonly hole: string; readonly before: string | null; readonly after: string | null }
  | { readonly code: 'line-new'; readonly item: string; readonly model: string; readonly fitted: number }
  | {
      readonly code: 'line-count';
      readonly item: string;
      readonly model: string;
      readonly before: { readonly fitted: number; readonly looseWithSpares: number };
      readonly after: { readonly fitted: number; readonly looseWithSpares: number };
    }
  | { readonly code: 'piece-new'; readonly piece: string; readonly truck: string; readonly row: number }
  | {
      readonly code: 'piece-moved';
      readonly piece: string;
      readonly before: { readonly truck: string; readonly row: number };
      readonly after: { readonly truck: string; readonly row: number };
    }
  | { readonly code: 'piece-gone'; readonly piece: string }
  | { readonly code: 'due-state'; readonly item: string; readonly before: string; readonly after: string };
