import { type HoistModel, type Pick as PickOf, legSteel } from '#tour-file';
import type { PickKit } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { ratedKg } from '../rules/index.js';

/** What lifts at a pick and who brings it. */
export function pickKit(
  inputs: PlanInputs,
  pick: PickOf,
  serial: string | null,
  { hoistKg, chainKg }: { readonly hoistKg: number; readonly chainKg: number },
  hookLoadKg: { readonly rest: number; readonly worst: number },
): PickKit {
  const hoist = modelOf(inputs.file.catalogue.hoists, pick.hoist);
  const item = serial === null ? undefined : inputs.items.get(serial);
  const owner = item?.owner ?? null;
  const hoistBody = pick.hoistBody ?? null;
  const onChainKg = chainKg + (hoistBody === 'at the point' ? 0 : hoistKg);
  return {
    by: pick.kitBy ?? item?.lent?.by ?? (owner === null ? 'own' : 'lender'),
    owner,
    hoistClass: hoist.hoistClass ?? null,
    hoistRatedKg: ratedKg(hoist.ratedLoad),
    ...ratedFor(hoist),
    hoistBody,
    chainOnFileMm: hoist.chainLengthM * 1000,
    shackles: pick.shackles,
    slings: pick.slings,
    legs: pick.bridle ? legSteel(pick.bridle).map(({ shackles, slings }) => ({ shackles, slings })) : [],
    chainLoadKg: { rest: hookLoadKg.rest + onChainKg, worst: hookLoadKg.worst + onChainKg },
  };
}

/** The class or use case that a rated load is for. */
function ratedFor({ ratedFor: kind, hoistClass, ratedForUseCase }: HoistModel): Pick<PickKit, 'ratedFor'> {
  const name = kind === 'class' ? hoistClass : kind === 'use case' ? ratedForUseCase : undefined;
  return name === undefined ? {} : { ratedFor: name };
}

/** Who says what the structure may carry there, and the beam it is on, where that is named. */
export const namedAt = ({ structureBy, beam }: PickOf): Partial<Record<'structureBy' | 'beam', string>> => ({
  ...(structureBy === undefined ? {} : { structureBy }),
  ...(beam === undefined ? {} : { beam }),
});
