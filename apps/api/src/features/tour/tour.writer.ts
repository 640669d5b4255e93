import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import type { Tour } from '#tour-file';
import { TourRow } from './rows.js';

/** Puts a tour on file with the text that it came from; refused where its id or name is taken. */
export async function addTour(manager: EntityManager, tour: Tour, written: object): Promise<readonly BadInput[]> {
  const rows = manager.getRepository(TourRow);
  const { id, name, prepFrom, returnTo } = tour;
  const clash = await rows.findOne({ where: [{ id }, { name }] });
  if (clash)
    return [
      {
        field: 'tour.id',
        value: id,
        wanted: `a tour that is not on file yet; ${clash.name} is. Remove it there or give this one another id and name`,
      },
    ];
  await rows.insert({ id, name, prepFrom, returnTo, version: 1, data: tour as object, written });
  return [];
}
