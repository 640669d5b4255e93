import type { Weight } from '#trade';
import type { Person } from '../../../platform/person.js';
import type { PlanInForce, ShowData } from '../../plan/use-show.js';

/** What every screen of the floor is given: who stands there, for which show, by which plan. */
export interface OnFloor {
  readonly me: Person;
  readonly show: ShowData;
  readonly plan: PlanInForce;
  /** Path of the front. */
  readonly home: string;
  /** What came of something that put another plan in force: the screen that asked for it is read anew with that plan. */
  readonly told: Told | null;
  readonly tell: (told: Told | null) => void;
}

export interface Told {
  readonly load: string;
  readonly weight: Weight;
  readonly sentence: string;
}
