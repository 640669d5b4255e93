import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { NotFoundError } from '../../platform/faults/fault.js';
import { PlaceDaysReader } from '../venue/place-days.reader.js';
import { TourRow } from './rows.js';
import type { RemovedShow, RemovedTour, TakenAlong } from './removal.types.js';

const removedTours = `SELECT tour.id, tour.name, prep_from::text AS "prepFrom", return_to::text AS "returnTo", version,
  to_char(removed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD') AS "removedOn", account.name AS "removedBy",
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = tour.id AND state <> 'draft') AS revisions
FROM tour LEFT JOIN account ON account.id = removed_by_id WHERE removed_at IS NOT NULL ORDER BY removed_at DESC, tour.id LIMIT 200`;

const removedShows = `SELECT show_id AS "showId", data->>'name' AS name, data->>'from' AS "from", data->>'to' AS "to",
  to_char(removed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD') AS "removedOn", account.name AS "removedBy",
  ARRAY(SELECT revision FROM pack_plan WHERE tour_id = gone.tour_id AND show_id = gone.show_id AND state <> 'draft' ORDER BY made_at) AS revisions
FROM removed_show gone LEFT JOIN account ON account.id = removed_by_id WHERE tour_id = $1 ORDER BY data->>'from', show_id`;

// Of one show (or all): what stands in the design, what is planned and what is promised by plans that no other show of the tour needs.
const takenAlong = `SELECT count(*)::int AS shows, coalesce(sum(jsonb_array_length(show->'hangs')), 0)::int AS hangs,
  coalesce(sum((SELECT count(*) FROM jsonb_path_query(show, '$.hangs[*].boxes[*]'))), 0)::int AS boxes,
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = $1 AND state = 'draft' AND ($2::text IS NULL OR show_id = $2)) AS drafts,
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = $1 AND state <> 'draft' AND ($2::text IS NULL OR show_id = $2)) AS revisions,
  ARRAY(SELECT plan #>> '{show,name}' || ', revision ' || revision FROM pack_plan
    WHERE tour_id = $1 AND state = 'released' AND ($2::text IS NULL OR show_id = $2) ORDER BY plan #>> '{show,from}') AS "inForce",
  (SELECT count(*)::int FROM booking WHERE holder_kind = 'tour' AND holder_id = $1 AND upper(period) > $3::date AND ($2::text IS NULL OR NOT EXISTS (
    SELECT FROM pack_plan, jsonb_array_elements(plan->'uses') used WHERE tour_id = $1 AND state = 'released' AND show_id <> $2 AND used->>'item' = booking.item_id))) AS "givenBack"
FROM tour, jsonb_array_elements(data->'shows') show WHERE tour.id = $1 AND ($2::text IS NULL OR show->>'id' = $2)`;

/** What was removed, and what a removal would take along. */
@Injectable()
export class RemovalQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly places: PlaceDaysReader,
  ) {}

  tours(): Promise<RemovedTour[]> {
    return this.dataSource.query(removedTours);
  }

  shows(tourId: string): Promise<RemovedShow[]> {
    return this.dataSource.query(removedShows, [tourId]);
  }

  async takenAlong(tourId: string, showId: string | null): Promise<TakenAlong> {
    const tour = await this.dataSource.getRepository(TourRow).findOneBy({ id: tourId });
    const day = (await this.places.now()).at(tour?.data.depot ?? '');
    const [found]: TakenAlong[] = await this.dataSource.query(takenAlong, [tourId, showId, day]);
    if (!found || found.shows === 0) throw new NotFoundError(showId === null ? `The tour ${tourId}` : `The show ${showId}`);
    return found;
  }
}
