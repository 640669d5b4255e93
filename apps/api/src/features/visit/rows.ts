import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { SeenItem } from '#inspection-calendar';

/** A day on which an examiner may come (possible) or comes (agreed), to a depot or to a show. */
@Entity('visit')
@Check('visit_state_known', `state IN ('possible', 'agreed', 'cancelled')`)
@Check('visit_at_one_place', `(depot IS NULL) = (tour_id IS NOT NULL) AND (tour_id IS NULL) = (show_id IS NULL)`)
@Check('visit_list_where_agreed', `state <> 'agreed' OR list IS NOT NULL`)
@Index('visit_day_index', ['onDay'])
export class VisitRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'visit_pkey' })
  id: string;

  @Column('date', { name: 'on_day' })
  onDay: string;

  @Column('text', { nullable: true })
  depot: string | null;

  @Column('text', { name: 'tour_id', nullable: true })
  @ForeignKey('TourRow', { name: 'visit_tour_fkey', onDelete: 'CASCADE' })
  tourId: string | null;

  @Column('text', { name: 'show_id', nullable: true })
  showId: string | null;

  @Column('text')
  state: 'possible' | 'agreed' | 'cancelled';

  @Column('text', { nullable: true })
  remark: string | null;

  /** What is seen there, as it was agreed. */
  @Column('jsonb', { nullable: true })
  list: readonly SeenItem[] | null;

  /** Counts up with every change: who saves an older one is told so. */
  @Column('int', { default: 1 })
  version: number;

  @Column('timestamptz', { name: 'changed_at' })
  changedAt: Date;
}

/** A result that was entered on the list of a visit: which record it became. */
@Entity('visit_line')
export class VisitLineRow {
  @PrimaryColumn('uuid', { name: 'visit_id', primaryKeyConstraintName: 'visit_line_pkey' })
  @ForeignKey(() => VisitRow, { name: 'visit_line_visit_fkey' })
  visitId: string;

  @PrimaryColumn('text', { name: 'item_id', primaryKeyConstraintName: 'visit_line_pkey' })
  itemId: string;

  @Column('bigint', { name: 'examination_id' })
  @ForeignKey('ExaminationRow', { name: 'visit_line_examination_fkey' })
  examinationId: string;

  @Column('text', { nullable: true })
  remark: string | null;
}

/** A calendar under a secret address, of which the hash alone is kept. */
@Entity('calendar_feed')
@Unique('calendar_feed_token_unique', ['tokenHash'])
@Index('calendar_feed_account_index', ['accountId'])
export class CalendarFeedRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'calendar_feed_pkey' })
  id: string;

  @Column('uuid', { name: 'account_id' })
  @ForeignKey('AccountRow', { name: 'calendar_feed_account_fkey', onDelete: 'CASCADE' })
  accountId: string;

  /** SHA-256 of the token, hex. */
  @Column('text', { name: 'token_hash' })
  tokenHash: string;

  /** What is kept there alone; null: all depots. */
  @Column('text', { nullable: true })
  depot: string | null;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  @Column('timestamptz', { name: 'withdrawn_at', nullable: true })
  withdrawnAt: Date | null;
}

/** An entry as calendars last got it; it is never taken away, only cancelled. */
@Entity('calendar_entry')
@Index('calendar_entry_day_index', ['onDay'])
export class CalendarEntryRow {
  @PrimaryColumn('text', { primaryKeyConstraintName: 'calendar_entry_pkey' })
  uid: string;

  @Column('text', { nullable: true })
  depot: string | null;

  @Column('date', { name: 'on_day' })
  onDay: string;

  @Column('int')
  sequence: number;

  @Column('jsonb')
  content: { readonly summary: string; readonly description: string; readonly place: string | null; readonly alarmDaysBefore: number };

  @Column('boolean', { name: 'is_cancelled', default: false })
  isCancelled: boolean;

  @Column('timestamptz', { name: 'changed_at' })
  changedAt: Date;
}
