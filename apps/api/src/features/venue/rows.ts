import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { Venue } from '#tour-file';

/** A venue by its id; what is asked for by column stands in columns, the whole in `data`. */
@Entity('venue')
export class VenueRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'venue_pkey' })
  id: string;

  @Column('text')
  name: string;

  @Column('text', { nullable: true })
  city: string | null;

  @Column('text', { nullable: true })
  country: string | null;

  @Column('text', { name: 'time_zone' })
  timeZone: string;

  @Column('jsonb')
  data: Venue;

  /** Counts up with every change: who saves an older one is told so. */
  @Column('int')
  version: number;
}

/** Which venue a show is at; the tour keeps the venue's name as it was written. */
@Entity('show_venue')
@Index('show_venue_venue_index', ['venueId'])
export class ShowVenueRow {
  @PrimaryColumn('text', { name: 'tour_id', primaryKeyConstraintName: 'show_venue_pkey' })
  @ForeignKey('TourRow', { name: 'show_venue_tour_fkey', onDelete: 'CASCADE' })
  tourId: string;

  @PrimaryColumn('text', { name: 'show_id', primaryKeyConstraintName: 'show_venue_pkey' })
  showId: string;

  @Column('uuid', { name: 'venue_id' })
  @ForeignKey(() => VenueRow, { name: 'show_venue_venue_fkey' })
  venueId: string;
}
