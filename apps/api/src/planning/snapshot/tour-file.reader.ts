import { Injectable } from '@nestjs/common';
import { type CountRecord, evidenceSince } from '#hardware-count';
import { type Booking, type LoadingAct, type SpareSetting, type Tour, type TourFile, afterAct, noLoading } from '#tour-file';
import { NotFoundError } from '../../platform/faults/fault.js';
import { loadKit } from './kit-snapshot.js';
import { type Queryable, rowsOf } from './queryable.js';
import { loadTours } from './tour-places.js';

/** A tour file of what is on file: what every plan is made from, and what everything else judges a plan against. */
@Injectable()
export class TourFileReader {
  load(db: Queryable, tourId: string, ids?: readonly string[]): Promise<TourFile> {
    return loadTourFile(db, tourId, ids);
  }

  design(db: Queryable, tourId: string, ids: readonly string[]): Promise<TourFile> {
    return loadDesign(db, tourId, ids);
  }
}

/**
 * One load for a plan: the register, the rules, the tour with what is wanted of its trucks, and what other tours hold, in the shape of a tour file.
 * What was counted at return in this house, by whichever tour, is added to what the tour itself says was counted. With `ids` only those items.
 */
export async function loadTourFile(db: Queryable, tourId: string, ids?: readonly string[]): Promise<TourFile> {
  return { ...(await loadDesign(db, tourId, ids)), bookings: await otherBookings(db, tourId) };
}

/** The same without what other tours hold. */
async function loadDesign(db: Queryable, tourId: string, ids?: readonly string[]): Promise<TourFile> {
  const [tour] = await loadTours(db, [tourId]);
  if (!tour) throw new NotFoundError(`The tour ${tourId}`);
  const { catalogue, systems, examinationRules, loadRules, items } = await loadKit(db, ids);
  return {
    format: 'cartwright tour 1',
    catalogue,
    systems,
    examinationRules,
    loadRules,
    items,
    bookings: [],
    tour: {
      ...(await withLoading(db, tour)),
      spares: await learned(db, tour.spares),
    },
  };
}

async function otherBookings(db: Queryable, tourId: string): Promise<Booking[]> {
  const rows = await rowsOf<{ item: string; count: number | null; from: string; to: string; tour: string; tourId: string | null }>(
    db,
    `SELECT item_id AS item, count, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour,
       CASE WHEN holder_kind = 'tour' THEN holder_id END AS "tourId"
     FROM booking WHERE (holder_kind, holder_id) IS DISTINCT FROM ('tour', $1::text) AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), item_id, tour_name`,
    [tourId],
  );
  return rows.map(({ count, tourId: holder, ...booking }) => ({
    ...booking,
    ...(holder === null ? {} : { tourId: holder }),
    ...(count === null ? {} : { count }),
  }));
}

/** The tour with what is wanted of the trucks of each show, act by act on top of what came with its file. */
async function withLoading(db: Queryable, tour: Tour): Promise<Tour> {
  const acts = await rowsOf<{ showId: string; act: LoadingAct }>(
    db,
    'SELECT show_id AS "showId", act FROM loading_act WHERE tour_id = $1 ORDER BY id',
    [tour.id],
  );
  if (acts.length === 0) return tour;
  return {
    ...tour,
    shows: tour.shows.map((show) => {
      const own = acts.filter((each) => each.showId === show.id);
      return own.length === 0
        ? show
        : { ...show, loading: own.reduce((wanted, { act }) => afterAct(wanted, act), show.loading ?? noLoading) };
    }),
  };
}

/**
 * Settings with the counts of this house added to what they say was counted. `through` of a setting marks the counts that its sum holds already, so a
 * tour that was exported with them and comes back counts nothing twice. A filed loss per use is not learned.
 */
async function learned(db: Queryable, settings: readonly SpareSetting[]): Promise<SpareSetting[]> {
  if (settings.length === 0) return [];
  const rows = await rowsOf<Omit<CountRecord, 'at'> & { key: string; countedAt: Date }>(
    db,
    `SELECT id::text AS id, corrects::text AS corrects, key, counted_at AS "countedAt", sent, returned, damaged, uses
     FROM hardware_count ORDER BY hardware_count.id`,
  );
  return settings.map((setting) =>
    withCounts(
      setting,
      rows
        .filter((row) => row.key === setting.item)
        .map(({ id, corrects, countedAt, sent, returned, damaged, uses }) => ({
          id,
          corrects,
          at: countedAt.toISOString(),
          sent,
          returned,
          damaged,
          uses,
        })),
    ),
  );
}

function withCounts(setting: SpareSetting, records: readonly CountRecord[]): SpareSetting {
  const last = records.at(-1);
  if (!setting.prior || !last) return setting;
  const { losses = 0, uses = 0, through = null } = setting.counted ?? {};
  if (through !== null && last.at <= through) return setting;
  const since = evidenceSince(records, through);
  return {
    ...setting,
    counted: { losses: Math.max(0, losses + since.losses), uses: Math.max(0, uses + since.uses), through: last.at },
  };
}
