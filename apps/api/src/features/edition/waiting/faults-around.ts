import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import { checkKit } from '#tour-file';
import type { KitReader } from '../../register/kit.reader.js';
import type { TourReader } from '../../tour/tour.reader.js';

/**
 * What does not agree on file, in the register and in the tours, after these items were changed there: judged by what they name and by what names
 * them. `everything`: by the whole register and all tours, where a model or a rule was changed. A fault of an item is told with its serial.
 */
export async function faultsAround(
  manager: EntityManager,
  readers: { readonly kit: KitReader; readonly tours: TourReader },
  changed: ReadonlySet<string> | 'everything',
): Promise<readonly BadInput[]> {
  const isWhole = changed === 'everything';
  const kit = isWhole ? await readers.kit.load(manager) : await readers.kit.aroundChanged(manager, [...changed]);
  const faults = checkKit(kit).map((fault) => ({
    ...fault,
    field: fault.field.replace(/^items\[(\d+)\]\.?/, (_, index) => `${kit.items[Number(index)]?.id ?? 'an item'}: `),
  }));
  const inTours = isWhole ? await readers.tours.faultsWith(manager, kit) : await readers.tours.faultsNaming(manager, kit, changed);
  return [...faults, ...inTours];
}
