import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';

export type SearchState = 'waiting' | 'running' | 'done' | 'stopped' | 'failed';

/** A longer search for the trucks of a show, from the press of the button to its end. One at a time for a show. */
@Entity('search')
@Check('search_state_known', `state IN ('waiting', 'running', 'done', 'stopped', 'failed')`)
@Index('search_one_at_a_time', ['tourId', 'showId'], { unique: true, where: `state IN ('waiting', 'running')` })
export class SearchRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'search_pkey' })
  id: string;

  /** Counts up: the newest is the one with the highest. */
  @Column('bigint', { generated: 'increment' })
  number: string;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'search_tour_fkey' })
  tourId: string;

  @Column('text', { name: 'show_id' })
  showId: string;

  @Column('text')
  state: SearchState;

  /** Part of the work that is done, 0 to 1. */
  @Column('double precision')
  progress: number;

  /** How it ended, in words; empty until then. */
  @Column('text')
  sentence: string;

  @Column('text', { name: 'asked_by' })
  askedBy: string;

  @Column('timestamptz', { name: 'asked_at' })
  askedAt: Date;
}
