import { Column, Entity, Index, PrimaryGeneratedColumn } from 'typeorm';
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
