import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { Author } from '../../platform/sign-in/person.js';

export const jobKinds = ['make', 'swap', 'loading', 'search', 'improve', 'tour'] as const;
export type JobKind = (typeof jobKinds)[number];

export type JobState = 'waiting' | 'running' | 'done' | 'refused' | 'failed' | 'cancelled';

/** One piece of planning that somebody asked for, from the press of the button to its answer. */
@Entity('job')
@Check('job_kind_known', `kind IN ('make', 'swap', 'loading', 'search', 'improve', 'tour')`)
@Check('job_state_known', `state IN ('waiting', 'running', 'done', 'refused', 'failed', 'cancelled')`)
@Check('job_lease_while_running', `(state = 'running') = (lease_until IS NOT NULL)`)
@Check('job_ended_when_over', `(state IN ('waiting', 'running')) = (ended_at IS NULL)`)
@Index('job_open_index', ['urgent', 'number'], { where: `state IN ('waiting', 'running')` })
@Index('job_show_index', ['tourId', 'showId', 'number'])
@Index('job_one_search_at_a_time', ['tourId', 'showId'], { unique: true, where: `kind = 'search' AND state IN ('waiting', 'running')` })
export class JobRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'job_pkey' })
  id: string;

  /** Counts up: the newest is the one with the highest. */
  @Column('bigint', { generated: 'increment' })
  number: string;

  @Column('text')
  kind: JobKind;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'job_tour_fkey' })
  tourId: string;

  @Column('text', { name: 'show_id' })
  showId: string;

  /** What is asked, as its task reads it. */
  @Column('jsonb')
  subject: object;

  /** Before those that nobody waits for. */
  @Column('boolean')
  urgent: boolean;

  @Column('text', { name: 'asked_by' })
  askedBy: string;

  @Column('uuid', { name: 'asked_by_id', nullable: true })
  askedById: string | null;

  @Column('text')
  state: JobState;

  /** Part of the work that is done, 0 to 1. */
  @Column('double precision')
  progress: number;

  /** Counts up each time that it is taken: who took it before may not save any more. */
  @Column('int')
  attempt: number;

  /** Until when its worker is taken to be alive, on the database's clock. */
  @Column('timestamptz', { name: 'lease_until', nullable: true })
  leaseUntil: Date | null;

  /** The answer, or why there is none, as its kind writes it. */
  @Column('jsonb', { nullable: true })
  answer: object | null;

  /** Why it was refused or failed. */
  @Column('text', { name: 'error_code', nullable: true })
  errorCode: string | null;

  /** What ended the solver's work: proof, work or clock. */
  @Column('text', { name: 'stopped_by', nullable: true })
  stoppedBy: string | null;

  @Column('timestamptz', { name: 'asked_at' })
  askedAt: Date;

  @Column('timestamptz', { name: 'started_at', nullable: true })
  startedAt: Date | null;

  @Column('timestamptz', { name: 'ended_at', nullable: true })
  endedAt: Date | null;
}

/** Whose turn comes first, the lowest: what somebody waits for, what somebody asked for, what the house looks for by itself. */
export const rankSql = `(CASE WHEN urgent THEN 0 WHEN kind = 'improve' THEN 2 ELSE 1 END)`;
export const rankOf = ({ urgent, kind }: Pick<JobRow, 'urgent' | 'kind'>): number => (urgent ? 0 : kind === 'improve' ? 2 : 1);

export const isOver = ({ state }: Pick<JobRow, 'state'>): boolean => state !== 'waiting' && state !== 'running';

/** Who asked for a job, to be written into what comes of it. */
export const authorOf = ({ askedBy, askedById }: Pick<JobRow, 'askedBy' | 'askedById'>): Author => ({ name: askedBy, id: askedById });
