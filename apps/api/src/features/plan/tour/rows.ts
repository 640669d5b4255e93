import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { WholeTour } from '#pack-plan';

/** A tour planned as a whole, as it was last planned. */
@Entity('tour_plan')
export class TourPlanRow {
  @PrimaryColumn('text', { name: 'tour_id', primaryKeyConstraintName: 'tour_plan_pkey' })
  @ForeignKey('TourRow', { name: 'tour_plan_tour_fkey', onDelete: 'CASCADE' })
  tourId: string;

  @Column('jsonb')
  plan: WholeTour;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  @Column('uuid', { name: 'made_by_id', nullable: true })
  madeById: string | null;
}
