import { Column, Entity, ForeignKey, Index, PrimaryGeneratedColumn } from 'typeorm';
import type { LoadingAct } from '#tour-file';

/** One thing that somebody wanted of the trucks of a show: append only (a trigger refuses change and removal). */
@Entity('loading_act')
@Index('loading_act_tour_index', ['tourId', 'id'])
export class LoadingActRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'loading_act_pkey' })
  id: string;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'loading_act_tour_fkey' })
  tourId: string;

  @Column('text', { name: 'show_id' })
  showId: string;

  @Column('timestamptz')
  at: Date;

  @Column('text')
  who: string;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('jsonb')
  act: LoadingAct;
}
