import { cpus } from 'node:os';
import { randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { checkPassword, hashPassword, isSpent, spent } from '../../platform/sign-in/password.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import { SignInTries, countedAtTheDoor } from '../../platform/sign-in/tries.js';

export type SignInOutcome =
  | { readonly is: 'in'; readonly account: AccountRow; readonly token: string; readonly deviceToken: string; readonly expiresAt: Date }
  | { readonly is: 'wrong' }
  | { readonly is: 'must wait'; readonly minutes: number };

/** Who comes in: counted first, then checked at the same cost for every name, known or not. */
@Injectable()
export class SignInService {
  private readonly nobodys = hashPassword(randomBytes(16).toString('hex'));
  private readonly turns = new Turns(Math.max(1, cpus().length - 1));

  constructor(
    private readonly dataSource: DataSource,
    private readonly sessions: SessionStore,
    private readonly tries: SignInTries,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async signIn(email: string, password: string, request: Request): Promise<SignInOutcome> {
    const name = email.trim().toLowerCase().slice(0, 200);
    const accounts = this.dataSource.getRepository(AccountRow);
    const found = await accounts.findOneBy({ email: name });
    const known = await this.sessions.knownOf(found?.id ?? nobody, request);
    const attempt = await this.tries.begin(countedAtTheDoor({ name, address: request.ip ?? '', ...known }));
    if (attempt.waitMinutes !== null) return { is: 'must wait', minutes: attempt.waitMinutes };
    const account = found && this.mayUsePassword(found) ? found : undefined;
    const hash = account?.passwordHash ?? (await this.nobodys);
    const isRight = password.length <= 500 && (await this.turns.take(known.knownDevice !== null, () => checkPassword(password, hash)));
    if (!account || !isRight) return { is: 'wrong' };
    // What another person gave lets in once: of two who come with it at the same moment, one.
    if (account.mustChange) {
      const { affected } = await accounts.update(
        { id: account.id, passwordHash: account.passwordHash },
        { passwordHash: spent(account.passwordHash) },
      );
      if (affected !== 1) return { is: 'wrong' };
    }
    await this.tries.forgive(attempt);
    return { is: 'in', account, ...(await this.sessions.open(account.id, request)) };
  }

  /** The password that somebody signed in with, asked for again; counted like a try at the door. */
  async isOwnPassword(account: AccountRow, password: string): Promise<boolean | { readonly waitMinutes: number }> {
    const attempt = await this.tries.begin([['own', account.id]]);
    if (attempt.waitMinutes !== null) return { waitMinutes: attempt.waitMinutes };
    const isRight = password.length <= 500 && (await this.turns.take(true, () => checkPassword(password, account.passwordHash)));
    if (isRight) await this.tries.forgive(attempt);
    return isRight;
  }

  private mayUsePassword({ disabledAt, passwordHash, passwordUntil }: AccountRow): boolean {
    return (
      disabledAt === null && passwordHash !== '' && !isSpent(passwordHash) && (passwordUntil === null || passwordUntil > this.clock.now())
    );
  }
}

const nobody = '00000000-0000-4000-8000-000000000000';

/** So many costly checks at once that others are still served; who is known by the device goes before those who are not. */
class Turns {
  private free: number;
  private readonly known: (() => void)[] = [];
  private readonly strangers: (() => void)[] = [];

  constructor(count: number) {
    this.free = count;
  }

  async take<T>(isKnown: boolean, work: () => Promise<T>): Promise<T> {
    if (this.free > 0) this.free--;
    else await new Promise<void>((done) => (isKnown ? this.known : this.strangers).push(done));
    try {
      return await work();
    } finally {
      const next = this.known.shift() ?? this.strangers.shift();
      if (next) next();
      else this.free++;
    }
  }
}
