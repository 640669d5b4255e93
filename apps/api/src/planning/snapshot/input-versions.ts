import { type Queryable, theRow } from './queryable.js';

/** What of the house a plan is made from; `showId` where its earlier plans are an input too. */
export interface InputScope {
  readonly tourId: string;
  readonly showId?: string;
}

/** A row is another one as soon as somebody wrote it: PostgreSQL gives it another place (ctid) and another writer (xmin). */
export const writings = (from: string): string =>
  `(SELECT count(*) || ':' || coalesce(sum(hashtextextended(ctid::text || ' ' || xmin::text, 0)::numeric), 0) FROM ${from})`;

/**
 * The versions of all inputs of a plan as one short text, read without reading the inputs. Equal versions: nobody wrote any of them meanwhile. Other
 * versions may still hold equal inputs; their fingerprint tells.
 */
export async function versionsOf(db: Queryable, { tourId, showId }: InputScope): Promise<string> {
  const parts = [
    writings('model'),
    writings('rule'),
    writings('item'),
    writings('examination'),
    writings('incident'),
    writings('hardware_count'),
    writings('booking'),
    writings('tour WHERE id = $1'),
    writings('venue'),
    writings('show_venue WHERE tour_id = $1'),
    writings('place_answer WHERE tour_id = $1'),
    writings('loading_act WHERE tour_id = $1'),
    writings('tour_plan WHERE tour_id = $1'),
    writings('pack_plan WHERE tour_id = $1 AND show_id = $2'),
  ];
  const { versions } = await theRow<{ versions: string }>(
    db,
    `SELECT concat_ws(' ', $1::text, $2::text, ${parts.join(', ')}) AS versions`,
    [tourId, showId ?? null],
  );
  return versions;
}
