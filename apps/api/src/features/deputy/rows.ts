import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';

/**
 * Somebody in the place of a safety officer, for some days; of one depot, of one tour, or everywhere. People are kept by id alone. Who named whom
 * stays; it is signed once and withdrawn once.
 */
@Entity('deputy')
@Index('deputy_account_index', ['accountId'])
@Check('deputy_days_in_order', 'from_day <= until_day')
@Check('deputy_is_another', 'account_id <> officer_id AND account_id <> named_by_id AND account_id IS DISTINCT FROM signed_by_id')
@Check('deputy_of_one_part', 'depot IS NULL OR tour_id IS NULL')
@Check('deputy_signed_whole', '(signed_at IS NULL) = (signed_by_id IS NULL)')
@Check('deputy_signed_by_two', 'officer_id = named_by_id OR signed_by_id IS DISTINCT FROM named_by_id')
export class DeputyRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'deputy_pkey' })
  id: string;

  @Column('uuid', { name: 'officer_id' })
  @ForeignKey('AccountRow', { name: 'deputy_officer_fkey' })
  officerId: string;

  @Column('uuid', { name: 'account_id' })
  @ForeignKey('AccountRow', { name: 'deputy_account_fkey' })
  accountId: string;

  @Column('date', { name: 'from_day' })
  fromDay: string;

  @Column('date', { name: 'until_day' })
  untilDay: string;

  /** By whose calendar the days are: a zone of the time zone database. */
  @Column('text', { name: 'time_zone' })
  timeZone: string;

  @Column('text', { nullable: true })
  depot: string | null;

  @Column('text', { name: 'tour_id', nullable: true })
  @ForeignKey('TourRow', { name: 'deputy_tour_fkey' })
  tourId: string | null;

  @Column('text')
  reason: string;

  @Column('uuid', { name: 'named_by_id' })
  namedById: string;

  @Column('timestamptz', { name: 'named_at' })
  namedAt: Date;

  /** The officer for themselves at once; for another officer, that one or a third. */
  @Column('uuid', { name: 'signed_by_id', nullable: true })
  signedById: string | null;

  @Column('timestamptz', { name: 'signed_at', nullable: true })
  signedAt: Date | null;

  @Column('uuid', { name: 'withdrawn_by_id', nullable: true })
  withdrawnById: string | null;

  @Column('timestamptz', { name: 'withdrawn_at', nullable: true })
  withdrawnAt: Date | null;
}
