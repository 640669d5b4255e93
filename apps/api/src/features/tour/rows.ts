import { Check, Column, Entity, PrimaryColumn, Unique } from 'typeorm';
import type { Tour } from '#tour-file';

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
}
