import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { addDays, isPlainDate } from '#kernel';
import { type FleetInput, designOf, firstDayFor, fleetCalendar, remediesFor } from '#pack-plan';
import type { Booking } from '#tour-file';
import type { Words } from '#words';
import { WORDS } from '../../platform/words.js';
import { BadInputError, NotFoundError } from '../../platform/graphql/fault.js';
import { KitReader } from '../register/kit.reader.js';
import { TourReader } from '../tour/tour.reader.js';
import type { FleetModelView, RemedyView } from './fleet.types.js';

const mostDays = 400;

/** The fleet over a season. */
@Injectable()
export class FleetQueries {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(WORDS) private readonly words: Words,
    private readonly kit: KitReader,
    private readonly tours: TourReader,
  ) {}

  async calendar(from: string, days: number, depot: string | null): Promise<FleetModelView[]> {
    const to = lastDay(from, days);
    return fleetCalendar(await this.input(depot), from, to).map((each) => ({ ...each, days: [...each.days] }));
  }

  async remedies(model: string, day: string, depot: string | null): Promise<RemedyView[]> {
    if (!isPlainDate(day))
      throw new BadInputError([{ field: 'day', value: day.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' }]);
    return [...remediesFor(await this.input(depot), model, day, this.words)];
  }

  async firstDayFor(tourId: string, showId: string, from: string, days: number): Promise<string | null> {
    lastDay(from, days);
    const { data } = await this.tours.tour(this.dataSource.manager, tourId);
    const show = data.shows.find((each) => each.id === showId);
    if (!show) throw new NotFoundError(`The show ${showId}`);
    const calendar = fleetCalendar(await this.input(data.depot), from, addDays(from, mostDays - 1));
    return firstDayFor(calendar, designOf(show), days) ?? null;
  }

  async depots(): Promise<string[]> {
    const rows: { depot: string }[] = await this.dataSource.query(`SELECT DISTINCT depot FROM item WHERE kind = 'box' ORDER BY depot`);
    return rows.map((row) => row.depot);
  }

  private async input(depot: string | null): Promise<FleetInput> {
    const { manager } = this.dataSource;
    const kit = await this.kit.load(manager);
    const rows: (Omit<Booking, 'count' | 'tourId'> & { count: number | null; tourId: string | null })[] = await manager.query(
      `SELECT item_id AS item, count, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour,
         CASE WHEN holder_kind = 'tour' THEN holder_id END AS "tourId"
       FROM booking WHERE hold_until IS NULL OR hold_until > now() ORDER BY lower(period), item_id`,
    );
    const tours = await this.tours.tours(manager);
    return {
      kit,
      ...(depot === null ? {} : { depot }),
      bookings: rows.map(({ count, tourId, ...booking }) => ({
        ...booking,
        ...(tourId === null ? {} : { tourId }),
        ...(count === null ? {} : { count }),
      })),
      tours: tours.map((tour) => tour.data),
    };
  }
}

function lastDay(from: string, days: number): string {
  if (!isPlainDate(from))
    throw new BadInputError([{ field: 'from', value: from.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' }]);
  if (!Number.isInteger(days) || days < 1 || days > mostDays)
    throw new BadInputError([{ field: 'days', value: days, wanted: `1 to ${mostDays} days` }]);
  return addDays(from, days - 1);
}
