import type { Hang, Item, Show, TourFile } from '#tour-file';
import type { PackPlan } from '../contract/index.js';

/** A plan beside the file that it says it was made from. */
export interface Checking {
  readonly file: TourFile;
  readonly show: Show;
  readonly hangs: readonly Hang[];
  readonly items: ReadonlyMap<string, Item>;
  readonly plan: PackPlan;
  /** Notes that something is not as it must be. */
  readonly wrong: (check: string, subject: string, found: string) => void;
}
