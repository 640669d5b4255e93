import { type Pick, hangName } from '#tour-file';
import type { Whereabouts } from '#trade';
import type { CartsResult } from '../contract/index.js';
import { type PlanInputs, usableItems } from '../inputs/index.js';

/** A serial-numbered lifting item found for a place in the show; null where none is to be had. */
export interface ChosenItem {
  readonly where: Whereabouts;
  readonly hang: string;
  readonly kind: 'grid' | 'hoist';
  readonly model: string;
  readonly item: string | null;
  /** Hole of the pick; null for a grid. */
  readonly hole: string | null;
}

/** Grids and hoists for every hang: first the serials that the design names, then those in date throughout, least used first. */
export function chooseItems(inputs: PlanInputs): readonly ChosenItem[] {
  const taken = new Set(
    inputs.hangs.flatMap((hang) => [hang.gridSerial, ...hang.picks.map((pick) => pick.hoistSerial)]).filter((each) => each !== undefined),
  );
  const take = (kind: 'grid' | 'hoist', model: string, wanted: string | undefined): string | null => {
    if (wanted !== undefined) return inputs.availability.get(wanted)?.reason === null ? wanted : null;
    const found = usableItems(inputs, kind, model).find(({ item }) => !taken.has(item.id));
    if (found) taken.add(found.item.id);
    return found?.item.id ?? null;
  };
  return inputs.hangs.flatMap((hang): ChosenItem[] => [
    {
      where: { code: 'grid', hang: hang.id, name: hangName(hang) },
      hang: hang.id,
      kind: 'grid',
      model: hang.grid!,
      item: take('grid', hang.grid!, hang.gridSerial),
      hole: null,
    },
    ...hang.picks.filter(isOurs).map(
      (pick): ChosenItem => ({
        where: { code: 'hoist', hang: hang.id, name: hangName(hang), hole: pick.hole },
        hang: hang.id,
        kind: 'hoist',
        model: pick.hoist,
        item: take('hoist', pick.hoist, pick.hoistSerial),
        hole: pick.hole,
      }),
    ),
  ]);
}

/** Hoist and steel of a pick are of this kit, and not brought by others. */
export const isOurs = ({ kitBy }: Pick): boolean => kitBy === undefined;

/** Everything the plan counts on, for its bookings: boxes, carts, grids, hoists, travelling cases and trucks, and batches by quantity. */
export function plannedSerials(carts: CartsResult, chosen: readonly ChosenItem[]): readonly string[] {
  const boxes = carts.loads.flatMap((load) => [load.cart, ...load.boxes.map((each) => each.serial)]);
  return [...new Set([...boxes, ...chosen.map((each) => each.item)].filter((each): each is string => each !== null))];
}
