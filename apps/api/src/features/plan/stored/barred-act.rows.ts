import { Column, Entity, ForeignKey, Index, PrimaryColumn, PrimaryGeneratedColumn } from 'typeorm';
import type { ReasonAgainst } from '#trade';

/** Done on the way up and out although it was barred meanwhile, by a device that could not know. Append only; never a tick, never a signature. */
@Entity('barred_act')
@Index('barred_act_show_index', ['tourId', 'showId'])
export class BarredActRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'barred_act_pkey' })
  id: string;

  @Column('text', { name: 'tour_id' })
  tourId: string;

  @Column('text', { name: 'show_id' })
  showId: string;

  @Column('uuid', { name: 'plan_id' })
  planId: string;

  /** Of a step of a lift sequence. */
  @Column('text', { nullable: true })
  hang: string | null;

  /** The key of what would have been ticked, or the cart load. */
  @Column('text')
  what: string;

  @Column('text')
  words: string;

  @Column('jsonb')
  items: readonly { readonly item: string; readonly why: ReasonAgainst }[];

  @Column('uuid', { name: 'done_by_id' })
  doneById: string;

  /** By the clock of the device. */
  @Column('timestamptz', { name: 'done_at' })
  doneAt: Date;

  @Column('timestamptz', { name: 'told_at' })
  toldAt: Date;
}

/** What the safety officer, or a deputy, says of it after looking at it: one word for each, append only. */
@Entity('barred_act_answer')
export class BarredActAnswerRow {
  @PrimaryColumn('bigint', { name: 'act_id', primaryKeyConstraintName: 'barred_act_answer_pkey' })
  @ForeignKey('BarredActRow', { name: 'barred_act_answer_act_fkey' })
  actId: string;

  @Column('text')
  because: string;

  @Column('uuid', { name: 'answered_by_id' })
  answeredById: string;

  /** The safety officer in whose place a deputy answered. */
  @Column('uuid', { name: 'answered_for_id', nullable: true })
  answeredForId: string | null;

  @Column('timestamptz', { name: 'answered_at' })
  answeredAt: Date;
}
