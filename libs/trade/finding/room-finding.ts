import type { RoomPart, TrimMark } from '../comparison/index.js';
import type { HangSubject, ModelSubject, PickSubject } from '../subject/index.js';
import type { Of } from './shape.js';

/** Height and length: what does not fit between floor and point, and what nobody can tell because a length is not on file. */
export type RoomFinding =
  | (Of<
      'no-headroom',
      { readonly pick: PickSubject },
      { readonly leftMm: number; readonly pointHeightMm: number; readonly trimHeightMm: number }
    > & { readonly trimTo: TrimMark; readonly parts: readonly { readonly part: RoomPart; readonly mm: number | null }[] })
  | Of<'headroom-not-known', { readonly hang: HangSubject; readonly models: readonly ModelSubject[] }, { readonly atMostMm: number | null }>
  | Of<
      'below-floor',
      { readonly hang: HangSubject },
      { readonly clearanceMm: number; readonly lowestMm: number; readonly deckHeightMm: number; readonly trimHeightMm: number }
    >
  | Of<
      'leg-does-not-fit',
      { readonly pick: PickSubject; readonly models: readonly ModelSubject[]; readonly unmeasured: readonly ModelSubject[] },
      { readonly leg: number; readonly lengthMm: number; readonly shortestMm: number; readonly longestMm: number }
    >;
