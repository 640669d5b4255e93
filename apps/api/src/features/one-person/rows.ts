import { Check, Column, Entity, ForeignKey, PrimaryGeneratedColumn } from 'typeorm';

/** Whether one person judges alone in this house: every word on it is kept, the newest counts. Append only. */
@Entity('one_person')
@Check('one_person_set_by_somebody', 'NOT is_on OR set_by_id IS NOT NULL')
export class OnePersonRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'one_person_pkey' })
  id: string;

  @Column('boolean', { name: 'is_on' })
  isOn: boolean;

  @Column('text')
  reason: string;

  /** Null: it ended by itself, since a second safety officer was on file. */
  @Column('uuid', { name: 'set_by_id', nullable: true })
  @ForeignKey('AccountRow', { name: 'one_person_set_by_fkey' })
  setById: string | null;

  @Column('timestamptz', { name: 'set_at' })
  setAt: Date;
}
