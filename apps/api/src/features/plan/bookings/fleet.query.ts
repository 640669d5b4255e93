import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { addDays, isPlainDate } from '#kernel';
import { designOf, firstDayFor, remediesFor } from '#pack-plan';
import type { Booking, ExaminationRule, Tour } from '#tour-file';
import { loadItems } from '../../../planning/snapshot/kit-snapshot.js';
import type { Words } from '#words';
import { WORDS } from '../../../platform/config/words.js';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import { PlaceDaysReader } from '../../venue/place-days.reader.js';
import { ItemDates } from '../../register/item-dates.writer.js';
import type { FleetModelView, RemedyView } from './fleet.types.js';

const mostDays = 400;
const mostRemedies = 500;

// A box serves from the first to the last day on which it is hired, in date and where it is wanted; a promise takes it on its days. Boxes that are not
// hired in are counted on item_fleet_index alone.
const usable = `least($2::date, CASE WHEN due_state IS NULL THEN NULL ELSE coalesce(due_on, $1::date - 1) END, due_holds_through)`;
const serves = `state = 'in service' AND ($3::text IS NULL OR depot = $3)`;
const calendar = `WITH grouped AS MATERIALIZED (
  SELECT model, ${serves} AS serves, $1::date AS first, ${usable} AS last, count(*) AS count
  FROM item WHERE kind = 'box' AND state <> 'retired' AND NOT rest ? 'hire' GROUP BY 1, 2, 4
  UNION ALL
  SELECT model, ${serves}, greatest($1::date, (rest->'hire'->>'from')::date), least(${usable}, (rest->'hire'->>'to')::date), 1
  FROM item WHERE kind = 'box' AND state <> 'retired' AND rest ? 'hire'),
held AS (SELECT model, sum(count)::int AS count FROM grouped GROUP BY model),
serving AS (SELECT model, first, last, sum(count) AS count FROM grouped WHERE serves AND first <= last GROUP BY model, first, last),
promise AS MATERIALIZED (
  SELECT model, ${serves} AS serves, greatest($1::date, (rest->'hire'->>'from')::date) AS first, least(${usable}, (rest->'hire'->>'to')::date) AS last,
    greatest($1::date, lower(period)) AS "from", least($2::date, upper(period) - 1) AS "to"
  FROM booking JOIN item ON item.id = booking.item_id AND item.kind = 'box' AND item.state <> 'retired'
  WHERE booking.count IS NULL AND (hold_until IS NULL OR hold_until > now()) AND period && daterange($1::date, $2::date, '[]')),
taken AS (
  SELECT model, "from" + number AS day, count(*)::int AS promised, count(*) FILTER (WHERE serves AND "from" + number BETWEEN first AND last)::int AS served
  FROM promise, generate_series(0, "to" - "from") number GROUP BY model, "from" + number),
able AS (
  SELECT model, first + number AS day, sum(count)::int AS count FROM serving, generate_series(0, last - first) number GROUP BY model, first + number)
SELECT held.model, held.count, ($1::date + number)::text AS day, coalesce(able.count, 0) - coalesce(taken.served, 0) AS free, coalesce(taken.promised, 0) AS promised
FROM held CROSS JOIN generate_series(0, $2::date - $1::date) number
LEFT JOIN able ON able.model = held.model AND able.day = $1::date + number LEFT JOIN taken ON taken.model = held.model AND taken.day = $1::date + number
ORDER BY held.model COLLATE "C", number`;

const wants = `SELECT tour.data, coalesce((SELECT jsonb_object_agg(model, count) FROM (SELECT item.model, count(*) AS count FROM booking JOIN item ON item.id = booking.item_id
  WHERE booking.holder_kind = 'tour' AND booking.holder_id = tour.id AND item.kind = 'box' GROUP BY item.model) own), '{}') AS held
FROM tour WHERE removed_at IS NULL AND prep_from <= $2::date AND return_to >= $1::date AND ($3::text IS NULL OR data->>'depot' = $3)`;

// The quickest remedies first, as the list is ranked.
const heldBack = `SELECT item.id FROM item LEFT JOIN booking ON booking.item_id = item.id AND booking.count IS NULL AND period @> $2::date AND (hold_until IS NULL OR hold_until > now())
WHERE item.kind = 'box' AND item.model = $1 AND item.state <> 'retired' AND (booking.id IS NOT NULL OR item.state <> 'in service' OR item.rest ? 'hire'
  OR item.depot <> coalesce($3, item.depot) OR item.due_state IS NOT NULL AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through < $2::date))
ORDER BY item.rest ? 'hire', booking.id IS NOT NULL, item.depot <> coalesce($3, item.depot), item.state, item.id LIMIT ${mostRemedies}`;

/** The fleet over a season: counts by model and day, and what would free a box. */
@Injectable()
export class FleetQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async calendar(from: string, days: number, depot: string | null): Promise<FleetModelView[]> {
    const to = lastDay(from, days);
    await this.dates.workOut((await this.places.now()).latest);
    const rows: { model: string; count: number; day: string; free: number; promised: number }[] = await this.dataSource.query(calendar, [
      from,
      to,
      depot,
    ]);
    const wanted = await this.wants(from, to, depot);
    const models = new Map<string, FleetModelView>();
    for (const { model, count, day, free, promised } of rows) {
      const view = models.get(model) ?? { model, count, days: [] };
      const short = wanted
        .filter((each) => each.from <= day && day <= each.to)
        .reduce((sum, each) => sum + (each.boxes.get(model) ?? 0), 0);
      view.days.push({ day, free, promised, out: count - free - promised, short: Math.max(0, short - free) });
      models.set(model, view);
    }
    return [...models.values()];
  }

  /** Boxes by model that tours want beyond what they hold: the most of any of their shows. */
  private async wants(from: string, to: string, depot: string | null) {
    const tours: { data: Tour; held: Record<string, number> }[] = await this.dataSource.query(wants, [from, to, depot]);
    return tours.map(({ data, held }) => {
      const boxes = new Map<string, number>();
      for (const show of data.shows) for (const [model, count] of designOf(show)) boxes.set(model, Math.max(count, boxes.get(model) ?? 0));
      for (const [model, count] of boxes) boxes.set(model, Math.max(0, count - (held[model] ?? 0)));
      return { from: data.prepFrom, to: data.returnTo, boxes };
    });
  }

  async remedies(model: string, day: string, depot: string | null): Promise<RemedyView[]> {
    if (!isPlainDate(day))
      throw new BadInputError([{ field: 'day', value: day.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' }]);
    await this.dates.workOut((await this.places.now()).latest);
    const { manager } = this.dataSource;
    const held: { id: string }[] = await manager.query(heldBack, [model, day, depot]);
    const ids = held.map((row) => row.id);
    const rules: { data: ExaminationRule }[] = await manager.query(
      `SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`,
    );
    const bookings: Booking[] = await manager.query(
      `SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour FROM booking
       WHERE item_id = ANY($1) AND count IS NULL AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), item_id`,
      [ids],
    );
    const kit = { items: await loadItems(manager, ids), examinationRules: rules.map((each) => each.data) };
    return [...remediesFor({ kit, bookings, tours: [], ...(depot === null ? {} : { depot }) }, model, day, this.words)];
  }

  async firstDayFor(tourId: string, showId: string, from: string, days: number): Promise<string | null> {
    lastDay(from, days);
    const [tour]: { data: Tour }[] = await this.dataSource.query(`SELECT data FROM tour WHERE id = $1`, [tourId]);
    const show = tour?.data.shows.find((each) => each.id === showId);
    if (!tour || !show) throw new NotFoundError(`The show ${showId}`);
    return firstDayFor(await this.calendar(from, mostDays, tour.data.depot), designOf(show), days) ?? null;
  }

  async depots(): Promise<string[]> {
    const rows: { depot: string }[] = await this.dataSource.query(`SELECT DISTINCT depot FROM item WHERE kind = 'box' ORDER BY depot`);
    return rows.map((row) => row.depot);
  }
}

function lastDay(from: string, days: number): string {
  if (!isPlainDate(from))
    throw new BadInputError([{ field: 'from', value: from.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' }]);
  if (!Number.isInteger(days) || days < 1 || days > mostDays)
    throw new BadInputError([{ field: 'days', value: days, wanted: `1 to ${mostDays} days` }]);
  return addDays(from, days - 1);
}
