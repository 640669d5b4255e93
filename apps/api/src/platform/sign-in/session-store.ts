import { createHash, randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config/config.js';
import { AccountRow, SessionRow } from './rows.js';
import { sessionTokenOf } from './session-cookie.js';
import type { SignedIn } from './person.js';

const hours = 3_600_000;

/** Sessions live in the database as hashes of their tokens, so that every copy of the API knows them. */
@Injectable()
export class SessionStore {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async open(accountId: string): Promise<{ token: string; expiresAt: Date }> {
    const token = randomBytes(32).toString('base64url');
    const expiresAt = new Date(this.clock.now().getTime() + 14 * 24 * hours);
    await this.dataSource.getRepository(SessionRow).insert({ tokenHash: hashOf(token), accountId, expiresAt });
    return { token, expiresAt };
  }

  async close(request: Request): Promise<void> {
    const token = sessionTokenOf(request);
    if (token) await this.dataSource.getRepository(SessionRow).delete({ tokenHash: hashOf(token) });
  }

  async find(request: Request): Promise<SignedIn | undefined> {
    const token = sessionTokenOf(request);
    if (!token) return undefined;
    const session = await this.dataSource.getRepository(SessionRow).findOneBy({ tokenHash: hashOf(token) });
    if (!session || session.expiresAt <= this.clock.now()) return undefined;
    const account = await this.dataSource.getRepository(AccountRow).findOneBy({ id: session.accountId });
    return account ? { id: account.id, name: account.name, email: account.email, role: account.role } : undefined;
  }
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
