import type { Comparison } from './comparison.js';
import type { HangClearance } from './room-result.js';

/** Hoist, chain and steel of one pick. */
export interface PickKit {
  readonly by: 'own' | 'lender' | 'rigging contractor' | 'venue';
  /** Who lends it, where somebody does. */
  readonly owner: string | null;
  readonly hoistClass: string | null;
  readonly hoistRatedKg: number;
  /** What the rated load on file is reduced for already; left out where it is the maker's rating. */
  readonly ratedFor?: string;
  /** null where nobody says. */
  readonly hoistBody: 'at the point' | 'at the grid' | null;
  readonly chainOnFileMm: number;
  readonly shackles: readonly string[];
  readonly slings: readonly string[];
  /** Of each leg of a bridle. */
  readonly legs: readonly { readonly shackles: readonly string[]; readonly slings: readonly string[] }[];
  /** What the most loaded link of the chain carries: the hook load, the whole chain, and the hoist where it climbs or nobody says that it does not. */
  readonly chainLoadKg: { readonly rest: number; readonly worst: number };
}

/** A truss or beam with the sum of what hangs on it, all taken at their worst together. */
export interface BeamResult {
  readonly name: string;
  readonly highSteelMm: number | null;
  readonly lowSteelMm: number | null;
  readonly allowedBy: string | null;
  readonly points: readonly string[];
  readonly restN: number;
  readonly worstN: number;
  readonly worstDynamicN: number;
  readonly asideN: number;
  readonly asideDynamicN: number;
  readonly asideDeg: number | null;
  readonly comparisons: readonly Comparison[];
}

/** The place of a show: where measures start, who is below, what the wind does, and its beams. */
export interface SiteResult {
  readonly datum: string | null;
  readonly personsBelow: boolean;
  readonly movesOverPersons: boolean;
  /** The use case of the regime that loads are compared with; left out where the regime has none, null where none fits. */
  readonly useCase?: { readonly name: string; readonly isNamed: boolean } | null;
  readonly isOutdoor: boolean;
  readonly windAction: string | null;
  readonly beams: readonly BeamResult[];
  /** Of hangs that have a place on the stage, and how far apart the show wants them at least; left out in plans made before it was computed. */
  readonly clearances?: readonly HangClearance[];
  readonly leastApartMm?: number;
}
