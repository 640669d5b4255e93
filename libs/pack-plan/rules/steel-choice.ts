import type { RatedLoad } from '#tour-file';
import { verdictOfCause } from '#trade';
import type { Factor, PickResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { ratedKg } from './rated-load.js';
import { hoistUse } from './hoist-use.js';
import { personsBelowFactors } from './regime.js';

/**
 * The smallest hoist, shackle and sling of the catalogue whose rated load, reduced as the regime asks, is enough for a hook load; null where none is. A
 * hoist holds the load at rest with its reduced, and the worst while lifting with its whole rated load.
 */
export function enoughSteel(
  inputs: PlanInputs,
  hookLoadKg: number,
  hasSecondary: boolean,
  restKg: number = hookLoadKg,
): PickResult['enough'] {
  const { catalogue } = inputs.file;
  const { loadRule, show } = inputs;
  const usable = (rated: RatedLoad, factors: readonly Factor[]) => factors.reduce((left, each) => left * each.factor, ratedKg(rated));
  const hoists = catalogue.hoists.filter((each) => {
    const { code, useCase } = hoistUse(loadRule, show, each, hasSecondary);
    const isTold = [code, useCase?.code].some((cause) => cause && verdictOfCause[cause] === 'over');
    return ratedKg(each.ratedLoad) >= hookLoadKg && !isTold;
  });
  return {
    hoist: smallest(hoists, restKg, (each) => usable(each.ratedLoad, hoistUse(loadRule, show, each, hasSecondary).factors)),
    shackle: smallest(catalogue.shackles, hookLoadKg, (each) => usable(each.ratedLoad, personsBelowFactors(loadRule, show, 'shackle'))),
    sling: smallest(catalogue.slings, hookLoadKg, (each) => usable(each.ratedLoad, personsBelowFactors(loadRule, show, each.material))),
  };
}

/** Of what is accepted. */
function smallest<M extends { readonly model: string; readonly massKg: number; readonly unaccepted?: true | undefined }>(
  models: readonly M[],
  loadKg: number,
  usableKg: (model: M) => number,
): string | null {
  const enough = models.filter((each) => !each.unaccepted && usableKg(each) >= loadKg);
  return enough.sort((a, b) => usableKg(a) - usableKg(b) || a.massKg - b.massKg || (a.model < b.model ? -1 : 1))[0]?.model ?? null;
}
