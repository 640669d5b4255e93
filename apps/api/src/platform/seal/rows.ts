import { Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';

/** A batch of lines of the log, sealed: `head` is a hash over the head before it and the leaves of its lines. Append only. */
@Entity('seal')
@Unique('seal_head_unique', ['head'])
export class SealRow {
  @PrimaryColumn('bigint', { primaryKeyConstraintName: 'seal_pkey' })
  number: string;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  /** Lines of this batch, and of all batches to its end. */
  @Column('int')
  lines: number;

  @Column('bigint')
  total: string;

  /** The head before, empty for the first. */
  @Column('text')
  previous: string;

  @Column('text')
  head: string;

  /** The newest line sealed before this, and the transaction after which all lines up to it are there or never will be. */
  @Column('bigint', { name: 'settled_id' })
  settledId: string;

  @Column('bigint', { name: 'settled_by' })
  settledBy: string;
}

/** A line in its place of the chain: the hash of what it says, and of its words alone, which lose the name of a person who leaves. */
@Entity('sealed_line')
@Unique('sealed_line_event_unique', ['eventId'])
export class SealedLineRow {
  @PrimaryColumn('bigint', { primaryKeyConstraintName: 'sealed_line_pkey' })
  place: string;

  @Column('bigint', { name: 'seal_number' })
  @ForeignKey(() => SealRow, { name: 'sealed_line_seal_fkey' })
  sealNumber: string;

  @Column('bigint', { name: 'event_id' })
  eventId: string;

  @Column('text')
  leaf: string;

  @Column('text')
  words: string;
}
