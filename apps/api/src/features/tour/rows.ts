import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { Show, Tour } from '#tour-file';

@Entity('tour')
@Unique('tour_name_unique', ['name'])
@Check('tour_dates_in_order', `prep_from <= return_to`)
export class TourRow {
  @PrimaryColumn('text', { primaryKeyConstraintName: 'tour_pkey' })
  id: string;

  @Column('text')
  name: string;

  @Column('date', { name: 'prep_from' })
  prepFrom: string;

  @Column('date', { name: 'return_to' })
  returnTo: string;

  /** Counts up with every change: who saves an older one is told so. */
  @Column('int')
  version: number;

  @Column('jsonb')
  data: Tour;

  /** The file that it came from, as it was written; null for a tour made here. */
  @Column('jsonb', { nullable: true })
  written: object | null;

  /** Taken off the list of tours; it stays whole and can be put back. */
  @Column('timestamptz', { name: 'removed_at', nullable: true })
  removedAt?: Date | null;

  @Column('uuid', { name: 'removed_by_id', nullable: true })
  removedById?: string | null;
}

/** A show that was taken off its tour, whole; its plans and revisions stay where they are, under the same id. */
@Entity('removed_show')
export class RemovedShowRow {
  @PrimaryColumn('text', { name: 'tour_id', primaryKeyConstraintName: 'removed_show_pkey' })
  @ForeignKey(() => TourRow, { name: 'removed_show_tour_fkey', onDelete: 'CASCADE' })
  tourId: string;

  @PrimaryColumn('text', { name: 'show_id', primaryKeyConstraintName: 'removed_show_pkey' })
  showId: string;

  @Column('jsonb')
  data: Show;

  @Column('timestamptz', { name: 'removed_at' })
  removedAt: Date;

  @Column('uuid', { name: 'removed_by_id', nullable: true })
  removedById: string | null;
}
