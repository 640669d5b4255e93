import type { EntityManager } from 'typeorm';
import { type PlainDate, textHash } from '#kernel';

/** What calendars are to show of one thing. */
export interface WantedEntry {
  readonly uid: string;
  readonly depot: string | null;
  readonly on: PlainDate;
  readonly content: {
    readonly summary: string;
    readonly description: string;
    readonly place: string | null;
    readonly alarmDaysBefore: number;
  };
}

const agreedVisits = `SELECT visit.id, on_day::text AS on, visit.depot, coalesce(visit.depot, concat_ws(', ', tour.name, shown.name, shown.venue)) AS place,
  (SELECT coalesce(jsonb_agg(each->>'id'), '[]') FROM jsonb_array_elements(visit.list) each) AS items
FROM visit LEFT JOIN tour ON tour.id = visit.tour_id
LEFT JOIN LATERAL (SELECT each->>'name' AS name, each->>'venue' AS venue FROM jsonb_array_elements(tour.data->'shows') each WHERE each->>'id' = visit.show_id) shown ON true
WHERE visit.state = 'agreed' ORDER BY on_day, visit.id LIMIT 1000`;

// By item_due_index, from today a year ahead; what has run out already is on the list of dates.
const lastDays = `SELECT depot, due_on::text AS on, count(*)::int AS count, (array_agg(id ORDER BY id))[1:40] AS items FROM item
WHERE due_state IS NOT NULL AND state = 'in service' AND due_on BETWEEN $1::date AND $1::date + 366 GROUP BY depot, due_on ORDER BY due_on, depot LIMIT 5000`;

const toAnswer = `SELECT incident.id::text AS id, incident.on_day::text AS on, incident.what, incident.item_id AS item, item.depot FROM item
JOIN LATERAL (SELECT id, on_day, what, item_id FROM incident WHERE item_id = item.id ORDER BY on_day DESC, id DESC LIMIT 1) incident ON true
WHERE item.due_state = 'blocked' AND item.state <> 'retired' ORDER BY incident.on_day, incident.id LIMIT 1000`;

const most = 40;

/** Everything that calendars show now: agreed visits, last days of use by day and depot, incidents that no examination has answered. */
export async function wantedEntries(manager: EntityManager, today: PlainDate): Promise<WantedEntry[]> {
  const visits: { id: string; on: string; depot: string | null; place: string; items: string[] }[] = await manager.query(agreedVisits);
  const days: { depot: string; on: string; count: number; items: string[] }[] = await manager.query(lastDays, [today]);
  const incidents: { id: string; on: string; what: string; item: string; depot: string }[] = await manager.query(toAnswer);
  return [
    ...visits.map(({ id, on, depot, place, items }) => ({
      ...{ uid: `visit-${id}@cartwright`, depot, on },
      content: {
        ...{ summary: `Examiner at ${place}: ${items.length} ${items.length === 1 ? 'item' : 'items'}`, place, alarmDaysBefore: 7 },
        description: listed(items, items.length),
      },
    })),
    ...days.map(({ depot, on, count, items }) => ({
      ...{ uid: `last-day-${on}-${textHash(depot)}@cartwright`, depot, on },
      content: {
        ...{ summary: `Last day of use: ${count} ${count === 1 ? 'item' : 'items'}, ${depot}`, place: depot, alarmDaysBefore: 14 },
        description: `${listed(items, count)}. Computed from the records on file; a competent person decides what may be used.`,
      },
    })),
    ...incidents.map(({ id, on, what, item, depot }) => ({
      ...{ uid: `incident-${id}@cartwright`, depot, on },
      content: {
        summary: `To answer: ${item}, ${what}`,
        description: `${item} is out of use until an examination answers this.`,
        place: depot,
        alarmDaysBefore: 0,
      },
    })),
  ];
}

const listed = (items: readonly string[], count: number): string =>
  `${items.slice(0, most).join(', ')}${count > Math.min(most, items.length) ? ` and ${count - Math.min(most, items.length)} more` : ''}`;
