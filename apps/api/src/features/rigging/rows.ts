import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';

/** What a load cell showed, beside the plan that was hung. Append only: a wrong reading is followed by a right one. */
@Entity('load_reading')
@Check('load_reading_place_known', `place IN ('at the hook', 'above the hoist')`)
@Check('load_reading_positive', `reading_kg >= 0`)
@Index('load_reading_plan_index', ['planId'])
export class LoadReadingRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'load_reading_pkey' })
  id: string;

  @Column('uuid', { name: 'plan_id' })
  @ForeignKey('PackPlanRow', { name: 'load_reading_plan_fkey' })
  planId: string;

  @Column('text')
  hang: string;

  @Column('text')
  hole: string;

  @Column('text')
  place: 'at the hook' | 'above the hoist';

  @Column('double precision', { name: 'reading_kg' })
  readingKg: number;

  @Column('timestamptz', { name: 'read_at' })
  readAt: Date;

  @Column('text', { name: 'read_by' })
  readBy: string;

  @Column('uuid', { name: 'read_by_id', nullable: true })
  readById: string | null;
}

/**
 * The inspection after assembly and the handover of a hang, each with the name that was written under it; and who from outside countersigned one, or the
 * release of the plan (then of no hang). Append only.
 */
@Entity('sign_off')
@Check('sign_off_kind_known', `kind IN ('inspected', 'handed over', 'inspection countersigned', 'release countersigned')`)
@Check(
  'sign_off_outside_whole',
  `(company IS NULL) = (role IS NULL) AND (role IS NULL) = (place IS NULL) AND (kind IN ('inspected', 'handed over') OR company IS NOT NULL)`,
)
@Index('sign_off_plan_index', ['planId'])
export class SignOffRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'sign_off_pkey' })
  id: string;

  @Column('uuid', { name: 'plan_id' })
  @ForeignKey('PackPlanRow', { name: 'sign_off_plan_fkey' })
  planId: string;

  @Column('text')
  hang: string;

  @Column('text')
  kind: 'inspected' | 'handed over' | 'inspection countersigned' | 'release countersigned';

  /** As the person wrote it; `signedBy` is the account. */
  @Column('text')
  name: string;

  @Column('text')
  remark: string;

  /** Of somebody from outside: who they work for, what they are there, and where they stood. */
  @Column('text', { nullable: true })
  company: string | null;

  @Column('text', { nullable: true })
  role: string | null;

  @Column('text', { nullable: true })
  place: string | null;

  @Column('timestamptz', { name: 'signed_at' })
  signedAt: Date;

  @Column('text', { name: 'signed_by' })
  signedBy: string;

  @Column('uuid', { name: 'signed_by_id', nullable: true })
  signedById: string | null;
}
