import { type PossibleVisit, type SeasonCase, type SeasonItem, type SeasonTour, ofCheck } from '#inspection-calendar';
import type { CheckKind } from '#trade';
import { type Queryable, rowsOf } from '../../planning/snapshot/queryable.js';
import type { DatingFacts } from '../register/item-dates.writer.js';

/** Which season is asked for: days, a depot or all; whether what waits at its depot is planned as well; visits that fall away. */
export interface SeasonSubject {
  readonly from: string;
  readonly to: string;
  readonly depot: string | null;
  readonly withIdle: boolean;
  readonly without: readonly string[];
  /** Of which check the visits are: the examination, or one that others make. */
  readonly check: CheckKind;
}

export interface NamedItem {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
}

export interface SeasonSnapshot {
  readonly season: SeasonCase;
  readonly names: readonly NamedItem[];
}

/**
 * The items that may need an examiner in the season: examined, not retired, of the depot, whose last day of use lies before its end or is none, and
 * (unless idle ones are wanted) promised on some day of it. By the kept last day of use and the records kept with it, so that nothing else is read.
 */
const wantedItems = `WITH promised AS MATERIALIZED (SELECT item_id, json_agg(json_build_object('from', lower(period), 'to', upper(period) - 1,
    'tour', CASE WHEN holder_kind = 'tour' THEN holder_id END, 'isHold', holder_kind = 'hold') ORDER BY lower(period), tour_name) AS stays
  FROM booking WHERE period && daterange($1::date, $2::date, '[]') AND (hold_until IS NULL OR hold_until > now()) GROUP BY item_id)
SELECT item.id, item.kind, item.model, item.depot, item_record.facts, promised.stays
FROM item JOIN item_record ON item_record.item_id = item.id LEFT JOIN promised ON promised.item_id = item.id
WHERE item.due_state IS NOT NULL AND item.state IN ('in service', 'quarantined') AND ($3::text IS NULL OR item.depot = $3)
  AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through IS NOT NULL) AND ($4::boolean OR promised.item_id IS NOT NULL)
ORDER BY item.id`;

const tours = `SELECT id, data->>'depot' AS depot, coalesce((SELECT jsonb_agg(jsonb_build_object('id', show->>'id', 'from', show->>'from', 'to', show->>'to') ORDER BY show->>'from')
  FROM jsonb_array_elements(data->'shows') show), '[]') AS shows
FROM tour WHERE prep_from <= $2::date AND return_to >= $1::date`;

const visits = `SELECT id, on_day::text AS on, depot, tour_id AS tour, show_id AS show FROM visit
WHERE state IN ('possible', 'agreed') AND on_day BETWEEN $1::date - 1100 AND $2::date AND on_day >= $3::date AND ($4::text IS NULL OR depot IS NULL OR depot = $4)
ORDER BY on_day, id`;

interface ItemRow extends NamedItem {
  readonly depot: string;
  readonly facts: DatingFacts;
  readonly stays: SeasonItem['stays'] | null;
}

/** Visits before today count for nothing: what was seen there is on record. Dates have been worked out as of today by who asks. */
export async function loadSeason(
  db: Queryable,
  { from, to, depot, withIdle, check }: SeasonSubject,
  today: string,
): Promise<SeasonSnapshot> {
  const items = await rowsOf<ItemRow>(db, wantedItems, [from, to, depot, withIdle]);
  const visitRows = await rowsOf<{ id: string; on: string; depot: string | null; tour: string | null; show: string | null }>(db, visits, [
    from,
    to,
    today,
    depot,
  ]);
  return {
    season: {
      window: { from, to },
      tours: await rowsOf<SeasonTour>(db, tours, [from, to]),
      items: items.map(({ id, depot: at, facts, stays }): SeasonItem => ({ id, depot: at, stays: stays ?? [], ...ofCheck(facts, check) })),
      visits: visitRows.flatMap((row): PossibleVisit[] => {
        if (row.depot !== null) return [{ id: row.id, on: row.on, at: { kind: 'depot', depot: row.depot } }];
        return row.tour !== null && row.show !== null
          ? [{ id: row.id, on: row.on, at: { kind: 'show', tour: row.tour, show: row.show } }]
          : [];
      }),
    },
    names: items.map(({ id, kind, model }) => ({ id, kind, model })),
  };
}
