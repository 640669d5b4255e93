import { Check, Column, Entity, ForeignKey, Index, PrimaryGeneratedColumn, Unique } from 'typeorm';

/** One line of a count at return: append only. A correction names the record that it takes the place of, and why. */
@Entity('hardware_count')
@Index('hardware_count_tour_index', ['tourId', 'id'])
@Unique('hardware_count_corrects_unique', ['corrects'])
@Check('hardware_count_adds_up', `0 <= damaged AND damaged <= returned AND returned <= sent AND uses >= 0`)
@Check('hardware_count_reason_with_correction', `(corrects IS NULL) = (reason IS NULL)`)
export class HardwareCountRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'hardware_count_pkey' })
  id: string;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'hardware_count_tour_fkey' })
  tourId: string;

  /** Ids of the shows that the count covers. */
  @Column('text', { array: true })
  shows: string[];

  /** Key of the line in a plan: a model, or a part of a cart model. */
  @Column('text')
  key: string;

  @Column('int')
  sent: number;

  @Column('int')
  returned: number;

  @Column('int')
  damaged: number;

  /** Pieces fitted, summed over the shows. */
  @Column('int')
  uses: number;

  @Column('bigint', { nullable: true })
  @ForeignKey(() => HardwareCountRow, { name: 'hardware_count_corrects_fkey' })
  corrects: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text', { name: 'counted_by' })
  countedBy: string;

  @Column('uuid', { name: 'counted_by_id', nullable: true })
  countedById: string | null;

  @Column('timestamptz', { name: 'counted_at' })
  countedAt: Date;
}
