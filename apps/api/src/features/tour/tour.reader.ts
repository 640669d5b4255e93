import { Injectable } from '@nestjs/common';
import { type EntityManager, IsNull } from 'typeorm';
import type { BadInput } from '#kernel';
import { type Kit, type Tour, checkTourFile } from '#tour-file';
import { loadItems } from '../../planning/snapshot/kit-snapshot.js';
import { NotFoundError } from '../../platform/faults/fault.js';
import { TourRow } from './rows.js';

/** Tours as they are on file, for other features to read. */
@Injectable()
export class TourReader {
  /** What would be wrong in the tours on file if the register were this one; empty when nothing. */
  async faultsWith(manager: EntityManager, kit: Kit): Promise<readonly BadInput[]> {
    return faultsIn(await this.tours(manager), kit);
  }

  /** The same of the tours that name one of these items; what else they name is added to the register given. */
  async faultsNaming(manager: EntityManager, kit: Kit, ids: ReadonlySet<string>): Promise<readonly BadInput[]> {
    if (ids.size === 0) return [];
    const rows = (await this.tours(manager)).filter(({ data }) => serialsNamed(data).some((serial) => ids.has(serial)));
    const known = new Set(kit.items.map((item) => item.id));
    const missing = [...new Set(rows.flatMap(({ data }) => serialsNamed(data)))].filter((serial) => !known.has(serial));
    const others = missing.length === 0 ? [] : await loadItems(manager, missing);
    return faultsIn(rows, { ...kit, items: [...kit.items, ...others.map(({ in: _in, stack: _stack, ...item }) => item)] });
  }
  /** Those that have not been removed. */
  async tours(manager: EntityManager): Promise<TourRow[]> {
    return manager.getRepository(TourRow).find({ where: { removedAt: IsNull() }, order: { prepFrom: 'ASC', id: 'ASC' } });
  }

  async tour(manager: EntityManager, id: string): Promise<TourRow> {
    const row = await manager.getRepository(TourRow).findOneBy({ id });
    if (!row) throw new NotFoundError(`The tour ${id}`);
    return row;
  }
}

const faultsIn = (rows: readonly TourRow[], kit: Kit): readonly BadInput[] =>
  rows.flatMap((row) =>
    checkTourFile({ format: 'cartwright tour 1', ...kit, bookings: [], tour: row.data })
      .filter((fault) => fault.field.startsWith('tour.'))
      .map((fault) => ({ ...fault, field: `${row.name}: ${fault.field}` })),
  );

/** Every item that a tour names by its serial. */
function serialsNamed({ trucks, freight, shows }: Tour): readonly string[] {
  const hung = shows
    .flatMap((show) => show.hangs)
    .flatMap((hang) => [hang.gridSerial, ...hang.picks.map((pick) => pick.hoistSerial), ...hang.boxes.map((box) => box.serial)]);
  return [...trucks, ...freight.map((each) => each.case), ...hung.filter((serial) => serial !== undefined)];
}
