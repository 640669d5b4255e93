import type { BadInput } from '#kernel';
import type { Tour } from '#tour-file';
import type { TourRow } from './rows.js';

/** Who saves an older version than is on file is told so. */
export function versionFaults(before: TourRow | null, expected: number | null): BadInput[] {
  if ((before?.version ?? null) === expected) return [];
  if (!before) return [{ field: 'expectedVersion', value: expected, wanted: 'no version: this tour is new' }];
  const wanted =
    expected === null
      ? `${before.version}: a tour of this id is on file already, ${before.name}; give the new one another name`
      : `${before.version}: somebody else changed this tour meanwhile; look at it again, then save`;
  return [{ field: 'expectedVersion', value: expected, wanted }];
}

export const notRemovedFaults = (before: TourRow | null): BadInput[] =>
  before?.removedAt ? [{ field: 'tour.id', value: before.id, wanted: 'a tour that has not been removed; put it back first' }] : [];

/** A show is taken off its tour by an act of its own, which says what it takes along. */
export function droppedFaults(before: TourRow | null, tour: Tour): BadInput[] {
  const ids = new Set(tour.shows.map((each) => each.id));
  return (before?.data.shows ?? [])
    .filter((each) => !ids.has(each.id))
    .map((each) => ({
      field: 'tour.shows',
      value: `without ${each.id}`,
      wanted: `the show ${each.name} among them, or removed as a show first`,
    }));
}
