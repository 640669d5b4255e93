import { Check, Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** A write that a client named by an id of its own: what came of it, so that sending it again changes nothing. */
@Entity('request')
@Check('request_state_known', `state IN ('saved', 'given up')`)
export class RequestRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'request_pkey' })
  id: string;

  /** 0 for the first transaction of the request, 1 for the next; nearly all have one. */
  @PrimaryColumn('int', { primaryKeyConstraintName: 'request_pkey' })
  step: number;

  @Column('uuid', { name: 'person_id' })
  personId: string;

  @Column('text')
  operation: string;

  @Column('text', { name: 'values_hash' })
  valuesHash: string;

  /** `given up`: the client asked what became of it before it came; it is not taken any more. */
  @Column('text')
  state: 'saved' | 'given up';

  @Column('jsonb', { nullable: true })
  answer: object | null;

  /** When it was done by the clock of the device, where that said so. */
  @Column('timestamptz', { name: 'done_at', nullable: true })
  doneAt: Date | null;

  @Column('timestamptz')
  @Index('request_at_index')
  at: Date;
}
