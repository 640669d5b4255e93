import { Check, Column, Entity, ForeignKey, Generated, Index, PrimaryColumn, PrimaryGeneratedColumn } from 'typeorm';
import type { Examination, ItemKind, ItemState } from '#tour-file';

@Entity('model')
export class ModelRow {
  /** As in the catalogue of a tour file: boxes, grids, hoists ... */
  @PrimaryColumn('text', { primaryKeyConstraintName: 'model_pkey' })
  kind: string;

  @PrimaryColumn('text', { primaryKeyConstraintName: 'model_pkey' })
  model: string;

  @Column('bigint')
  @Generated('increment')
  place: string;

  @Column('jsonb')
  data: object;

  /** False: it waits for the safety officer, and nothing of it is used. */
  @Column('boolean', { name: 'is_accepted', default: true })
  isAccepted: boolean;
}

/** Rigging systems, examination rules and load rules: data of the house, kept whole. */
@Entity('rule')
@Check('rule_kind_known', `kind IN ('system', 'examination', 'load')`)
export class RuleRow {
  @PrimaryColumn('text', { primaryKeyConstraintName: 'rule_pkey' })
  kind: 'system' | 'examination' | 'load';

  @PrimaryColumn('text', { primaryKeyConstraintName: 'rule_pkey' })
  id: string;

  @Column('bigint')
  @Generated('increment')
  place: string;

  @Column('jsonb')
  data: object;

  /** False: it waits for the safety officer, and nothing of it is used. */
  @Column('boolean', { name: 'is_accepted', default: true })
  isAccepted: boolean;
}

@Entity('item')
@Check('item_state_known', `state IN ('in service', 'quarantined', 'in repair', 'retired')`)
@Check('item_slot_with_cart', `(stack_cart IS NULL) = (stack_slot IS NULL)`)
@Check('item_count_positive', `count IS NULL OR count >= 0`)
@Index('item_kind_index', ['kind', 'id'])
@Index('item_slot_unique', ['stackCart', 'stackSlot'], { unique: true, where: 'stack_cart IS NOT NULL' })
@Check('item_due_state_known', `due_state IN ('due', 'failed', 'blocked', 'no record')`)
@Index('item_state_index', ['state', 'id'])
@Index('item_model_index', ['model', 'id'])
@Index('item_due_unknown_index', ['id'], { where: 'NOT due_known' })
@Index('item_due_holds_index', ['dueHoldsThrough'], { where: 'due_holds_through IS NOT NULL' })
@Index('item_due_index', { synchronize: false })
@Index('item_due_depot_index', { synchronize: false })
@Index('item_due_kind_index', { synchronize: false })
@Index('item_serial_index', { synchronize: false })
@Index('item_search_index', { synchronize: false })
@Index('item_depot_index', ['depot', 'id'])
@Index('item_last_day_index', { synchronize: false })
@Index('item_kind_last_day_index', { synchronize: false })
@Index('item_fleet_index', { synchronize: false })
@Index('item_hired_index', { synchronize: false })
export class ItemRow {
  @PrimaryColumn('text', { primaryKeyConstraintName: 'item_pkey' })
  id: string;

  @Column('bigint')
  @Generated('increment')
  place: string;

  @Column('text')
  kind: ItemKind;

  @Column('text')
  model: string;

  @Column('text')
  state: ItemState;

  @Column('text')
  depot: string;

  @Column('int', { nullable: true })
  count: number | null;

  @Column('text', { name: 'in_item', nullable: true })
  inItem: string | null;

  @Column('text', { name: 'stack_cart', nullable: true })
  stackCart: string | null;

  /** 1 at the top. */
  @Column('int', { name: 'stack_slot', nullable: true })
  stackSlot: number | null;

  /** What is neither searched nor joined: reason, owner, hire, uses, intervals ... */
  @Column('jsonb')
  rest: Record<string, unknown>;

  /** False: it waits for the safety officer, and nothing of it is used. */
  @Column('boolean', { name: 'is_accepted', default: true })
  isAccepted: boolean;

  /** Last day of use by the strictest rules of all countries on file; null where it is not examined or may not be used. See `item-dates.ts`. */
  @Column('date', { name: 'due_on', nullable: true })
  dueOn: string | null;

  /** null where no rule wants it examined. */
  @Column('text', { name: 'due_state', nullable: true })
  dueState: 'due' | 'failed' | 'blocked' | 'no record' | null;

  /** What is kept here holds on no later day: a declaration of conformity stands in until then. */
  @Column('date', { name: 'due_holds_through', nullable: true })
  dueHoldsThrough: string | null;

  /** False from the moment that something was written which it depends on; set by triggers. */
  @Column('boolean', { name: 'due_known', default: false })
  dueKnown: boolean;
}

/** Of an item that is examined what its dates follow from, kept with them by the same writer, so that a season is read without all records. */
@Entity('item_record')
export class ItemRecordRow {
  @PrimaryColumn('text', { name: 'item_id', primaryKeyConstraintName: 'item_record_pkey' })
  @ForeignKey(() => ItemRow, { name: 'item_record_item_fkey', onDelete: 'CASCADE' })
  itemId: string;

  @Column('jsonb')
  facts: object;
}

@Entity('examination')
@Index('examination_item_index', ['itemId', 'id'])
@Index('examination_supersedes_index', ['supersedes'], { where: 'supersedes IS NOT NULL' })
export class ExaminationRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'examination_pkey' })
  id: string;

  @Column('text', { name: 'item_id' })
  @ForeignKey(() => ItemRow, { name: 'examination_item_fkey' })
  itemId: string;

  @Column('jsonb')
  data: Examination;

  @Column('text', { name: 'recorded_by' })
  recordedBy: string;

  @Column('uuid', { name: 'recorded_by_id', nullable: true })
  recordedById: string | null;

  @Column('timestamptz', { name: 'recorded_at' })
  recordedAt: Date;

  /** A correction names the record it takes the place of; nothing is ever changed. */
  @Column('bigint', { nullable: true })
  supersedes: string | null;

  /** Why it was corrected. */
  @Column('text', { nullable: true })
  reason: string | null;
}

/** A report as it was handed in: kept whole, never changed. */
@Entity('report_file')
@Check('report_file_hash_agrees', `sha256 = encode(sha256(bytes), 'hex')`)
@Index('report_file_item_index', ['itemId'])
export class ReportFileRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'report_file_pkey' })
  id: string;

  @Column('text', { name: 'item_id' })
  @ForeignKey(() => ItemRow, { name: 'report_file_item_fkey' })
  itemId: string;

  @Column('text')
  name: string;

  @Column('text')
  type: string;

  @Column('bytea')
  bytes: Buffer;

  /** Of the bytes, in hex; the database holds it to them. */
  @Column('text')
  sha256: string;

  @Column('text', { name: 'kept_by' })
  keptBy: string;

  @Column('uuid', { name: 'kept_by_id', nullable: true })
  keptById: string | null;

  @Column('timestamptz', { name: 'kept_at' })
  keptAt: Date;
}

/** Exceptional events of an item: shock load, overload, accident. */
@Entity('incident')
@Index('incident_item_index', ['itemId', 'id'])
export class IncidentRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'incident_pkey' })
  id: string;

  @Column('text', { name: 'item_id' })
  @ForeignKey(() => ItemRow, { name: 'incident_item_fkey' })
  itemId: string;

  @Column('date', { name: 'on_day' })
  onDay: string;

  @Column('text')
  what: string;

  /** The newest examination on file when it was recorded; no examination up to it answers this incident. null: not known. */
  @Column('bigint', { name: 'after_examination', nullable: true })
  afterExamination: string | null;
}
