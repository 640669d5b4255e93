import { Check, Column, Entity, ForeignKey, Index, PrimaryGeneratedColumn } from 'typeorm';

/** What was seen of an item on the floor. Append only: what was seen later stands beside it. */
@Entity('floor_record')
@Check('floor_record_kind_known', `kind IN ('returned', 'fault', 'bench', 'trunk', 'splays')`)
@Check('floor_record_show_whole', `(tour_id IS NULL) = (show_id IS NULL)`)
@Index('floor_record_show_index', ['tourId', 'showId', 'kind'])
@Index('floor_record_item_index', ['itemId', 'kind', 'id'])
export class FloorRecordRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'floor_record_pkey' })
  id: string;

  @Column('text', { name: 'tour_id', nullable: true })
  tourId: string | null;

  @Column('text', { name: 'show_id', nullable: true })
  showId: string | null;

  @Column('text', { name: 'item_id' })
  @ForeignKey('ItemRow', { name: 'floor_record_item_fkey' })
  itemId: string;

  @Column('text')
  kind: 'returned' | 'fault' | 'bench' | 'trunk' | 'splays';

  @Column('jsonb')
  data: object;

  @Column('timestamptz')
  at: Date;

  /** By the clock of the device, where that said so. */
  @Column('timestamptz', { name: 'done_at', nullable: true })
  doneAt: Date | null;

  @Column('uuid', { name: 'by_id' })
  byId: string;
}
