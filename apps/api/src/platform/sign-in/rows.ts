import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { Role } from './person.js';

@Entity('account')
@Unique('account_email_unique', ['email'])
@Check('account_role_known', `role IN ('warehouse', 'system', 'safety')`)
export class AccountRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'account_pkey' })
  id: string;

  @Column('text')
  email: string;

  @Column('text')
  name: string;

  @Column('text')
  role: Role;

  @Column('text', { name: 'password_hash' })
  passwordHash: string;
}

@Entity('session')
export class SessionRow {
  @PrimaryColumn('text', { name: 'token_hash', primaryKeyConstraintName: 'session_pkey' })
  tokenHash: string;

  @Column('uuid', { name: 'account_id' })
  @Index('session_account_index')
  @ForeignKey(() => AccountRow, { name: 'session_account_fkey', onDelete: 'CASCADE' })
  accountId: string;

  @Column('timestamptz', { name: 'expires_at' })
  expiresAt: Date;
}
