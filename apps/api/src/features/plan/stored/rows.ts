import { Check, Column, Entity, Exclusion, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import { type EarlierPlan, type PackPlan, type TickKey, wholePlan } from '#pack-plan';
import type { ImprovementFact } from '#trade';

const wholeIfAny = (plan: EarlierPlan | null): PackPlan | null => plan && wholePlan(plan);

@Entity('pack_plan')
@Unique('pack_plan_revision_unique', ['tourId', 'showId', 'revision'])
@Check('pack_plan_state_known', `state IN ('draft', 'released', 'superseded')`)
@Check('pack_plan_revision_when_released', `(state = 'draft') = (revision IS NULL)`)
@Index('pack_plan_show_index', ['tourId', 'showId'])
@Index('pack_plan_one_released', ['tourId', 'showId'], { unique: true, where: `state = 'released'` })
@Index('pack_plan_one_draft', ['tourId', 'showId'], { unique: true, where: `state = 'draft'` })
export class PackPlanRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'pack_plan_pkey' })
  id: string;

  @Column('text', { name: 'tour_id' })
  @ForeignKey('TourRow', { name: 'pack_plan_tour_fkey' })
  tourId: string;

  @Column('text', { name: 'show_id' })
  showId: string;

  @Column('text')
  state: 'draft' | 'released' | 'superseded';

  /** A, B, C ... Z, AA ...; null while it is a draft. */
  @Column('text', { nullable: true })
  revision: string | null;

  @Column('timestamptz', { name: 'made_at' })
  madeAt: Date;

  @Column('text', { name: 'made_by' })
  madeBy: string;

  @Column('uuid', { name: 'made_by_id', nullable: true })
  madeById: string | null;

  @Column('timestamptz', { name: 'released_at', nullable: true })
  releasedAt: Date | null;

  @Column('text', { name: 'released_by', nullable: true })
  releasedBy: string | null;

  @Column('uuid', { name: 'released_by_id', nullable: true })
  releasedById: string | null;

  /** Why it was released although it says stop; null where it does not. */
  @Column('text', { name: 'released_despite', nullable: true })
  releasedDespite: string | null;

  @Column('jsonb', { transformer: { from: wholePlan, to: (plan: PackPlan) => plan } })
  plan: PackPlan;
}

/**
 * A promise of an item to a tour, first prep day to last return day. Two overlapping promises of one serial are impossible here,
 * whatever the code does; a new revision replaces its predecessor's inside one transaction, so the check waits for its end.
 */
@Entity('booking')
@Unique('booking_item_holder_unique', ['itemId', 'holderKind', 'holderId'], { deferrable: 'INITIALLY DEFERRED' })
@Exclusion('booking_no_overlap', `USING gist (item_id WITH =, period WITH &&) WHERE (count IS NULL) DEFERRABLE INITIALLY DEFERRED`)
@Check('booking_period_not_empty', `NOT isempty(period)`)
@Check('booking_holder_known', `holder_kind IN ('tour', 'named', 'hold')`)
@Check('booking_hold_ends', `(holder_kind = 'hold') = (hold_until IS NOT NULL)`)
@Index('booking_period_index', { synchronize: false })
@Index('booking_holder_index', ['holderKind', 'holderId'])
export class BookingRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'booking_pkey' })
  id: string;

  @Column('text', { name: 'item_id' })
  itemId: string;

  /** A tour, by its id; somebody known by name alone; a hold. */
  @Column('text', { name: 'holder_kind' })
  holderKind: 'tour' | 'named' | 'hold';

  /** The tour's id, or the hold's; the name where that is all that is known. */
  @Column('text', { name: 'holder_id' })
  holderId: string;

  /** What people call the holder; it follows the tour's name and decides nothing. */
  @Column('text', { name: 'tour_name' })
  tourName: string;

  @Column('daterange')
  period: string;

  /** Of a batch; null for a serial. */
  @Column('int', { nullable: true })
  count: number | null;

  /** A hold ends by itself at this instant; null for a promise. */
  @Column('timestamptz', { name: 'hold_until', nullable: true })
  holdUntil: Date | null;
}

/** A cart whose boxes were read and agreed with a released plan. */
@Entity('cart_check')
export class CartCheckRow {
  @PrimaryColumn('uuid', { name: 'plan_id', primaryKeyConstraintName: 'cart_check_pkey' })
  @ForeignKey(() => PackPlanRow, { name: 'cart_check_plan_fkey', onDelete: 'CASCADE' })
  planId: string;

  @PrimaryColumn('text', { primaryKeyConstraintName: 'cart_check_pkey' })
  load: string;

  @Column('timestamptz', { name: 'checked_at' })
  checkedAt: Date;

  @Column('text', { name: 'checked_by' })
  checkedBy: string;

  @Column('uuid', { name: 'checked_by_id', nullable: true })
  checkedById: string | null;
}

/** What longer work on a plan came to; `better` is offered, and nobody's until somebody takes it in. */
@Entity('plan_improvement')
@Check('plan_improvement_better_where_shorter', `(fact ->> 'code' = 'shorter') = (better IS NOT NULL)`)
export class PlanImprovementRow {
  @PrimaryColumn('uuid', { name: 'plan_id', primaryKeyConstraintName: 'plan_improvement_pkey' })
  @ForeignKey(() => PackPlanRow, { name: 'plan_improvement_plan_fkey', onDelete: 'CASCADE' })
  planId: string;

  @Column('jsonb')
  fact: ImprovementFact;

  @Column('jsonb', { nullable: true, transformer: { from: wholeIfAny, to: (plan: PackPlan | null) => plan } })
  better: PackPlan | null;

  @Column('timestamptz', { name: 'found_at' })
  foundAt: Date;
}

/** A row of a truck, a step of a lift sequence or a box move that somebody has ticked off: its key part by part (tick-key.ts). */
@Entity('tick')
@Check('tick_kind_known', `kind IN ('row', 'step-up', 'step-down', 'move', 'as written', 'unload', 'load-out')`)
export class TickRow {
  @PrimaryColumn('uuid', { name: 'plan_id', primaryKeyConstraintName: 'tick_pkey' })
  @ForeignKey(() => PackPlanRow, { name: 'tick_plan_fkey', onDelete: 'CASCADE' })
  planId: string;

  /** 'as written': a tick of an early version that matches nothing in its plan; `subject` is its whole text. */
  @PrimaryColumn('text', { primaryKeyConstraintName: 'tick_pkey' })
  kind: TickKey['kind'] | 'as written';

  /** Id of the truck or the hang; empty for a box move. */
  @PrimaryColumn('text', { primaryKeyConstraintName: 'tick_pkey' })
  subject: string;

  /** Number in its list, from 1. */
  @PrimaryColumn('int', { primaryKeyConstraintName: 'tick_pkey' })
  place: number;

  @Column('timestamptz', { name: 'ticked_at' })
  tickedAt: Date;

  @Column('text', { name: 'ticked_by' })
  tickedBy: string;

  @Column('uuid', { name: 'ticked_by_id', nullable: true })
  tickedById: string | null;

  /** Who did it together, or what the paper says that it was entered from. */
  @Column('text', { nullable: true })
  remark: string | null;
}
