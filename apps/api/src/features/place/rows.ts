import { Check, Column, Entity, ForeignKey, Index, PrimaryGeneratedColumn } from 'typeorm';

/** The safety officer's answer for a place without rules on a tour; the newest of a place counts. Append only. */
@Entity('place_answer')
@Index('place_answer_tour_index', ['tourId', 'place', 'id'])
@Check('place_answer_of_another_place', 'rules_of <> place')
export class PlaceAnswerRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'place_answer_pkey' })
  id: string;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'place_answer_tour_fkey' })
  tourId: string;

  @Column('text')
  place: string;

  /** The place whose rules are taken; null: the answer before was taken back, the place is not judged. */
  @Column('text', { name: 'rules_of', nullable: true })
  rulesOf: string | null;

  @Column('text')
  because: string;

  @Column('text', { name: 'decided_by' })
  decidedBy: string;

  @Column('uuid', { name: 'decided_by_id', nullable: true })
  decidedById: string | null;

  @Column('timestamptz', { name: 'decided_at' })
  decidedAt: Date;
}
