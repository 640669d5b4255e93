import type { Person } from '../../platform/person.js';
import type { PlanInForce, ShowData } from '../plan/use-show.js';

/** What every screen of the floor is given: who stands there, for which show, by which plan. */
export interface OnFloor {
  readonly me: Person;
  readonly show: ShowData;
  readonly plan: PlanInForce;
  /** Path of the front. */
  readonly home: string;
}
