import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { Role } from './person.js';

@Entity('account')
@Unique('account_email_unique', ['email'])
@Index('account_name_unique', { synchronize: false })
@Check('account_role_known', `role IN ('warehouse', 'system', 'safety')`)
export class AccountRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'account_pkey' })
  id: string;

  @Column('text')
  email: string;

  /** Unique whatever its capitals. */
  @Column('text')
  name: string;

  @Column('text')
  role: Role;

  /** Empty: nobody signs in with it. */
  @Column('text', { name: 'password_hash' })
  passwordHash: string;

  @Column('timestamptz', { name: 'disabled_at', nullable: true })
  disabledAt: Date | null;

  /** The password is one that another person gave: it lets in once, to choose the own one. */
  @Column('boolean', { name: 'must_change', default: false })
  mustChange: boolean;

  @Column('timestamptz', { name: 'password_until', nullable: true })
  passwordUntil: Date | null;

  /** A safety officer gave the password under which the own one was chosen: no other hand knew a way in before. */
  @Column('boolean', { name: 'password_by_officer', default: false })
  passwordByOfficer: boolean;

  /** What is left of the name of a person who left. */
  @Column('int', { name: 'left_number', nullable: true })
  leftNumber: number | null;
}

@Entity('session')
export class SessionRow {
  @PrimaryColumn('text', { name: 'token_hash', primaryKeyConstraintName: 'session_pkey' })
  tokenHash: string;

  /** What others call it by: the token is the holder's alone. */
  @Column('uuid')
  id: string;

  @Column('uuid', { name: 'account_id' })
  @Index('session_account_index')
  @ForeignKey(() => AccountRow, { name: 'session_account_fkey', onDelete: 'CASCADE' })
  accountId: string;

  @Column('timestamptz', { name: 'opened_at' })
  openedAt: Date;

  @Column('timestamptz', { name: 'seen_at' })
  seenAt: Date;

  @Column('timestamptz', { name: 'expires_at' })
  expiresAt: Date;

  @Column('timestamptz', { name: 'ended_at', nullable: true })
  endedAt: Date | null;

  @Column('text')
  address: string;

  /** As the browser calls itself. */
  @Column('text')
  device: string;

  /** Of the cookie by which the device is known again. */
  @Column('text', { name: 'device_hash', nullable: true })
  @Index('session_device_index')
  deviceHash: string | null;
}

/** Tries at the door, counted for all APIs together. */
@Entity('sign_in_try')
@Index('sign_in_try_until_index', ['until'])
export class SignInTryRow {
  @PrimaryColumn('text', { primaryKeyConstraintName: 'sign_in_try_pkey' })
  key: string;

  @Column('int')
  count: number;

  /** Forgotten then. */
  @Column('timestamptz')
  until: Date;

  /** Nobody tries again before. */
  @Column('timestamptz', { name: 'wait_until', nullable: true })
  waitUntil: Date | null;
}

/** A safety officer is made by two: one who proposes, and an officer who accepts. */
@Entity('officer_proposal')
@Index('officer_proposal_account_index', ['accountId'])
@Check('officer_proposal_by_two', 'decided_by_id <> proposed_by_id AND decided_by_id <> account_id AND proposed_by_id <> account_id')
export class OfficerProposalRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'officer_proposal_pkey' })
  id: string;

  @Column('uuid', { name: 'account_id' })
  accountId: string;

  @Column('uuid', { name: 'proposed_by_id' })
  proposedById: string;

  @Column('text', { name: 'proposed_by' })
  proposedBy: string;

  @Column('timestamptz', { name: 'proposed_at' })
  proposedAt: Date;

  @Column('uuid', { name: 'decided_by_id', nullable: true })
  decidedById: string | null;

  @Column('text', { name: 'decided_by', nullable: true })
  decidedBy: string | null;

  @Column('timestamptz', { name: 'decided_at', nullable: true })
  decidedAt: Date | null;

  @Column('boolean', { nullable: true })
  accepted: boolean | null;
}
