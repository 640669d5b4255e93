import type { PossibleVisit, SeasonCase, SeasonItem, SeasonStay, SeasonTour } from '#inspection-calendar';
import { type Queryable, rowsOf } from '../../planning/snapshot/queryable.js';
import { asAnswered } from '../../planning/snapshot/kit-snapshot.js';

/** Which season is asked for: days, a depot or all; whether what waits at its depot is planned as well; visits that fall away. */
export interface SeasonSubject {
  readonly from: string;
  readonly to: string;
  readonly depot: string | null;
  readonly withIdle: boolean;
  readonly without: readonly string[];
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
 * (unless idle ones are wanted) promised on some day of it. By the kept last day of use, so that nothing else is read.
 */
const wantedItems = `SELECT item.id, item.kind, item.model, item.depot, item.rest->'intervals' AS intervals, item.rest->>'declaredOn' AS "declaredOn"
FROM item WHERE item.due_state IS NOT NULL AND item.state IN ('in service', 'quarantined') AND ($3::text IS NULL OR item.depot = $3)
  AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through IS NOT NULL)
  AND ($4::boolean OR item.id IN (SELECT item_id FROM booking WHERE period && daterange($1::date, $2::date, '[]') AND (hold_until IS NULL OR hold_until > now())))
ORDER BY item.id`;

const stays = `SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", CASE WHEN holder_kind = 'tour' THEN holder_id END AS tour, holder_kind = 'hold' AS "isHold"
FROM booking WHERE item_id = ANY($1) AND period && daterange($2::date, $3::date, '[]') AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), tour_name`;

/**
 * Of the examinations of an item those that can still set its dates: from the day of the last one on that passed for all intervals. Whatever is older is
 * neither the last, nor the last that passed for some interval.
 */
const records = `SELECT wanted.item, made.examinations FROM unnest($1::text[]) wanted (item), LATERAL
  (SELECT jsonb_agg((${asAnswered}) - '{particulars,examiner,report,reportFile}'::text[] ORDER BY id) AS examinations
   FROM (SELECT id, item_id, data, max(data->>'on') FILTER (WHERE data->>'outcome' = 'pass' AND NOT data ? 'satisfies') OVER () AS passed_on FROM examination
     WHERE item_id = wanted.item AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id)) examination
   WHERE passed_on IS NULL OR data->>'on' >= passed_on) made
WHERE made.examinations IS NOT NULL`;

const happened = `SELECT item_id AS item, jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id) AS events FROM incident WHERE item_id = ANY($1) GROUP BY item_id`;

const tours = `SELECT id, data->>'depot' AS depot, (SELECT jsonb_agg(jsonb_build_object('id', show->>'id', 'from', show->>'from', 'to', show->>'to') ORDER BY show->>'from')
  FROM jsonb_array_elements(data->'shows') show) AS shows
FROM tour WHERE prep_from <= $2::date AND return_to >= $1::date`;

const visits = `SELECT id, on_day::text AS on, depot, tour_id AS tour, show_id AS show FROM visit
WHERE state IN ('possible', 'agreed') AND on_day BETWEEN $1::date - 1100 AND $2::date AND on_day >= $3::date AND ($4::text IS NULL OR depot IS NULL OR depot = $4)
ORDER BY on_day, id`;

interface ItemRow extends NamedItem {
  readonly depot: string;
  readonly intervals: string[] | null;
  readonly declaredOn: string | null;
}

/** Visits before today count for nothing: what was seen there is on record. */
export async function loadSeason(db: Queryable, { from, to, depot, withIdle }: SeasonSubject, today: string): Promise<SeasonSnapshot> {
  const items = await rowsOf<ItemRow>(db, wantedItems, [from, to, depot, withIdle]);
  const ids = items.map((each) => each.id);
  const stayRows = groupBy(await rowsOf<SeasonStay & { item: string }>(db, stays, [ids, from, to]));
  const made = groupBy(await rowsOf<{ item: string; examinations: SeasonItem['examinations'] }>(db, records, [ids]));
  const events = groupBy(await rowsOf<{ item: string; events: SeasonItem['events'] }>(db, happened, [ids]));
  const intervalsOf = await intervalsOnFile(db);
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
      items: items.map(
        (item): SeasonItem => ({
          id: item.id,
          depot: item.depot,
          intervals: item.intervals ?? [...intervalsOf(item.kind)],
          ...(item.declaredOn === null ? {} : { declaredOn: item.declaredOn }),
          examinations: made.get(item.id)?.[0]?.examinations ?? [],
          events: events.get(item.id)?.[0]?.events ?? [],
          stays: (stayRows.get(item.id) ?? []).map(({ item: _item, ...stay }) => stay),
        }),
      ),
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

function groupBy<Row extends { readonly item: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(row.item, [...(groups.get(row.item) ?? []), row]);
  return groups;
}

/** The intervals of all accepted rules for a kind, as the kept last day of use is worked out by. */
async function intervalsOnFile(db: Queryable): Promise<(kind: string) => readonly string[]> {
  const rules = await rowsOf<{ kinds: string[]; intervals: string[] }>(
    db,
    `SELECT data->'kinds' AS kinds, data->'intervals' AS intervals FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`,
  );
  return (kind) => [...new Set(rules.filter((rule) => rule.kinds.includes(kind)).flatMap((rule) => rule.intervals))];
}
