import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { readInput } from '#kernel';
import { venue as venueSchema } from '#tour-file';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { ShowVenueRow, VenueRow } from './rows.js';
import type { VenueView } from './venue.types.js';

const venues = `SELECT venue.id, version, data AS venue,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('tourId', tour_id, 'showId', show_id) ORDER BY tour_id, show_id), '[]')
   FROM show_venue WHERE venue_id = venue.id AND NOT EXISTS (SELECT FROM removed_show gone WHERE (gone.tour_id, gone.show_id) = (show_venue.tour_id, show_venue.show_id))
     AND NOT EXISTS (SELECT FROM tour WHERE tour.id = show_venue.tour_id AND removed_at IS NOT NULL)) AS shows
FROM venue WHERE ($1::uuid IS NULL OR venue.id = $1) AND ($2::text IS NULL OR venue.id = (SELECT venue_id FROM show_venue WHERE tour_id = $2 AND show_id = $3))
ORDER BY name, venue.id`;

/** Venues: read whole, saved whole; an older version is refused. */
@Injectable()
export class VenueService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  list(): Promise<VenueView[]> {
    return this.dataSource.query(venues, [null, null, null]);
  }

  /** The venue of a show; null where none has been chosen. */
  async ofShow(tourId: string, showId: string): Promise<VenueView | null> {
    const [found]: VenueView[] = await this.dataSource.query(venues, [null, tourId, showId]);
    return found ?? null;
  }

  /** A new venue where `id` is null. */
  async save(id: string | null, input: unknown, expectedVersion: number | null, who: SignedIn): Promise<VenueView> {
    const read = readInput(venueSchema, input);
    if (!read.ok) throw new BadInputError(read.error);
    const data = read.value;
    const outcome = await this.unitOfWork.run<string>(async (manager) => {
      const rows = manager.getRepository(VenueRow);
      const before = id === null ? null : await rows.findOneBy({ id });
      if (id !== null && !before) throw new NotFoundError('This venue');
      if ((before?.version ?? null) !== expectedVersion)
        throw new BadInputError([
          {
            field: 'expectedVersion',
            value: expectedVersion,
            wanted: before
              ? `${before.version}: somebody else changed this venue meanwhile; look at it again`
              : 'no version: this venue is new',
          },
        ]);
      const { name, city = null, country = null, timeZone } = data;
      const row = { id: before?.id ?? randomUUID(), name, city, country, timeZone, data, version: (before?.version ?? 0) + 1 };
      await rows.save(row);
      await recordEvents(manager, who, this.clock.now(), [
        { what: before ? 'changed' : 'made', sentence: `${before ? 'Changed' : 'Made'} the venue ${name}.` },
      ]);
      return { ok: true, value: row.id };
    });
    if (!outcome.ok) throw new Error('a venue is never refused');
    const [saved]: VenueView[] = await this.dataSource.query(venues, [outcome.value, null, null]);
    if (!saved) throw new Error(`the venue ${outcome.value} was saved and is not on file`);
    return saved;
  }

  /** Says at which venue a show is, or (null) that nobody has said. */
  async choose(tourId: string, showId: string, venueId: string | null, who: SignedIn): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const [show]: { name: string }[] = await manager.query(
        `SELECT show->>'name' AS name FROM tour, jsonb_array_elements(data->'shows') AS show WHERE tour.id = $1 AND show->>'id' = $2`,
        [tourId, showId],
      );
      if (!show) throw new NotFoundError(`The show ${showId.slice(0, 80)}`);
      const rows = manager.getRepository(ShowVenueRow);
      const venue = venueId === null ? null : await manager.getRepository(VenueRow).findOneBy({ id: venueId });
      if (venueId !== null && !venue) throw new NotFoundError('This venue');
      if (venueId === null) await rows.delete({ tourId, showId });
      else await rows.save({ tourId, showId, venueId });
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'changed', tourId, sentence: `${show.name}: ${venue ? `at ${venue.name}` : 'the venue is not chosen'}.` },
      ]);
      return { ok: true, value: undefined };
    });
  }
}
