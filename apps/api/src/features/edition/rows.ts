import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, PrimaryGeneratedColumn } from 'typeorm';
import type { ProposedKind } from '#trade';

const kinds = `kind IN ('model', 'item', 'record', 'system', 'load rule', 'examination rule')`;

/** A guarded field before and after; undefined where it said nothing. */
export interface KeptChange {
  readonly field: string;
  readonly was?: unknown;
  readonly wanted?: unknown;
}

/** Guarded things as they changed, with the values before: append only. People are kept by id alone. */
@Entity('edition')
@Check('edition_kind_known', kinds)
@Index('edition_subject_unique', ['kind', 'subject', 'number'], { unique: true })
export class EditionRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'edition_pkey' })
  id: string;

  @Column('text')
  kind: ProposedKind;

  /** An item's serial, a rule's id, a model as `hoists/NAME`. */
  @Column('text')
  subject: string;

  /** 1 for the first change since it came on file. */
  @Column('int')
  number: number;

  @Column('jsonb')
  changes: readonly KeptChange[];

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('uuid', { name: 'made_by_id', nullable: true })
  madeById: string | null;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;
}

/** A permissive change that waits for the safety officer, or was decided; never removed. */
@Entity('proposal')
@Check('proposal_kind_known', kinds)
@Check('proposal_state_known', `state IN ('proposed', 'accepted', 'declined', 'replaced')`)
@Check(
  'proposal_by_two',
  `state <> 'accepted' OR decided_by_id IS NOT NULL AND decided_by_id IS DISTINCT FROM proposed_by_id OR by_one_person AND decided_by_id = proposed_by_id`,
)
@Index('proposal_open_unique', ['kind', 'subject', 'field'], { unique: true, where: `state = 'proposed'` })
@Index('proposal_subject_index', ['subject', 'kind'])
export class ProposalRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'proposal_pkey' })
  id: string;

  @Column('text')
  kind: ProposedKind;

  @Column('text')
  subject: string;

  /** Empty: the thing as a whole. Of a record: what tells it apart. */
  @Column('text')
  field: string;

  @Column('jsonb', { nullable: true })
  was: unknown;

  @Column('jsonb', { nullable: true })
  wanted: unknown;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('uuid', { name: 'proposed_by_id', nullable: true })
  proposedById: string | null;

  @Column('timestamptz', { name: 'proposed_at' })
  proposedAt: Date;

  @Column('text')
  state: 'proposed' | 'accepted' | 'declined' | 'replaced';

  @Column('uuid', { name: 'decided_by_id', nullable: true })
  decidedById: string | null;

  @Column('timestamptz', { name: 'decided_at', nullable: true })
  decidedAt: Date | null;

  @Column('text', { name: 'decided_because', nullable: true })
  decidedBecause: string | null;

  /** Accepted by who proposed it, while one person judged alone in this house. */
  @Column('boolean', { name: 'by_one_person', default: false })
  isByOnePerson: boolean;

  @Column('bigint', { name: 'edition_id', nullable: true })
  @ForeignKey(() => EditionRow, { name: 'proposal_edition_fkey' })
  editionId: string | null;
}

/** An answer over more than one transaction takes: who signed what, and how far it is. Its work stands in its parts. */
@Entity('answering')
@Index('answering_one_at_a_time', ['isGoing'], { unique: true, where: 'is_going' })
export class AnsweringRow {
  /** The act of the log under which all of it stands. */
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'answering_pkey' })
  id: string;

  /** Counts up: the newest is the one with the highest. */
  @Column('bigint', { generated: 'increment' })
  number: string;

  @Column('boolean', { name: 'is_accepted' })
  isAccepted: boolean;

  @Column('text')
  reason: string;

  @Column('uuid', { name: 'asked_by_id' })
  askedById: string;

  /** In whose place, where a deputy signed. */
  @Column('uuid', { name: 'deputy_of_id', nullable: true })
  deputyOfId: string | null;

  @Column('timestamptz', { name: 'asked_at' })
  askedAt: Date;

  @Column('int')
  total: number;

  @Column('boolean', { name: 'is_going' })
  isGoing: boolean;

  /** Until when the process that works on it is taken to be alive, on the database's clock. */
  @Column('timestamptz', { name: 'alive_until' })
  aliveUntil: Date;

  @Column('timestamptz', { name: 'ended_at', nullable: true })
  endedAt: Date | null;
}

/** What is answered in one transaction: the proposals of some things, all of each; `answered` once it is done. */
@Entity('answering_part')
export class AnsweringPartRow {
  @PrimaryColumn('uuid', { name: 'answering_id', primaryKeyConstraintName: 'answering_part_pkey' })
  @ForeignKey(() => AnsweringRow, { name: 'answering_part_answering_fkey' })
  answeringId: string;

  @PrimaryColumn('int', { primaryKeyConstraintName: 'answering_part_pkey' })
  number: number;

  @Column('bigint', { array: true })
  ids: string[];

  @Column('int', { nullable: true })
  answered: number | null;

  /** Of those that stayed as they were: why, the first few. */
  @Column('text', { name: 'left_because', array: true, nullable: true })
  leftBecause: string[] | null;
}
