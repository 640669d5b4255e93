import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { CLOCK, type Clock, dayIn, today } from '../../platform/config/config.js';

/** Which day it is now, where. */
export interface PlaceDays {
  /** At a depot, in the zone of the place of its name on the list of venues; the day of the house where there is none. */
  readonly at: (depot: string) => string;
  /** The latest and the earliest day of all places on record and of the house. */
  readonly latest: string;
  readonly earliest: string;
}

/** The day at venues and depots. Of two places of one name the later day counts: it lets less pass. */
@Injectable()
export class PlaceDaysReader {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async now(): Promise<PlaceDays> {
    const places: { name: string; zone: string }[] = await this.dataSource.query('SELECT DISTINCT name, time_zone AS zone FROM venue');
    const ofHouse = today(this.clock);
    const days = new Map<string, string>();
    for (const { name, zone } of places) {
      const day = dayIn(this.clock, zone);
      if (day > (days.get(name) ?? '')) days.set(name, day);
    }
    const all = [ofHouse, ...days.values()].sort();
    return { at: (depot) => days.get(depot) ?? ofHouse, latest: all.at(-1) ?? ofHouse, earliest: all[0] ?? ofHouse };
  }
}

/** The latest day that it is now where the house works: its own, that of its venues and of the shows of its tours, and of further zones. */
export async function latestDayAtWork(manager: EntityManager, clock: Clock, further: readonly string[] = []): Promise<string> {
  const zones: { zone: string }[] = await manager.query(
    `SELECT time_zone AS zone FROM venue UNION SELECT show->>'timeZone' FROM tour CROSS JOIN LATERAL jsonb_array_elements(data->'shows') show WHERE removed_at IS NULL`,
  );
  const days = [...zones.map((each) => each.zone), ...further].map((zone) => dayIn(clock, zone));
  return [today(clock), ...days].sort().at(-1) ?? today(clock);
}
