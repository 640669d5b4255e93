import type { HangPart, RoomPart, TrimMark } from '../comparison/index.js';
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
  | (Of<
      'leg-does-not-fit',
      { readonly pick: PickSubject; readonly models: readonly ModelSubject[]; readonly unmeasured: readonly ModelSubject[] },
      { readonly leg: number; readonly lengthMm: number; readonly shortestMm: number; readonly longestMm: number }
    > & { readonly fromStock: { readonly slings: readonly string[]; readonly shortestMm: number; readonly longestMm: number } | null })
  | (Of<'hangs-touch', { readonly first: HangSubject; readonly second: HangSubject }, { readonly overlapMm: number }> & NearParts)
  | (Of<
      'hangs-too-close',
      { readonly first: HangSubject; readonly second: HangSubject },
      { readonly apartMm: number; readonly leastMm: number }
    > &
      NearParts)
  | (Of<
      'no-room-for-cart',
      { readonly hang: HangSubject },
      { readonly leftMm: number; readonly freeMm: number; readonly cartMm: number }
    > & { readonly load: string });

interface NearParts {
  readonly firstPart: HangPart;
  readonly secondPart: HangPart;
}
