import { Check, Column, Entity, ForeignKey, Index, PrimaryGeneratedColumn, Unique } from 'typeorm';
import { ItemRow } from '../rows.js';

/** Pieces taken out of a batch into one of their own. Append only. */
@Entity('lot_split')
@Unique('lot_split_child_unique', ['childId'])
@Check('lot_split_pieces_of_more', 'pieces > 0 AND pieces < of_pieces')
export class LotSplitRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'lot_split_pkey' })
  id: string;

  @Column('text', { name: 'parent_id' })
  @ForeignKey(() => ItemRow, { name: 'lot_split_parent_fkey' })
  @Index('lot_split_parent_index')
  parentId: string;

  @Column('text', { name: 'child_id' })
  @ForeignKey(() => ItemRow, { name: 'lot_split_child_fkey' })
  childId: string;

  @Column('int')
  pieces: number;

  /** What the batch held before. */
  @Column('int', { name: 'of_pieces' })
  ofPieces: number;

  /** Of the new batch from then on. */
  @Column('text')
  state: string;

  @Column('text')
  reason: string;

  @Column('uuid', { name: 'made_by_id', nullable: true })
  madeById: string | null;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  /** The newest event on file then: what happened to the batch up to it happened to both parts. */
  @Column('bigint', { name: 'through_event' })
  throughEvent: string;
}
