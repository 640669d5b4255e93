import { Inject } from '@nestjs/common';
import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { CLOCK, CONFIG, type Clock, type Config } from '../../platform/config/config.js';
import { checkPassword } from '../../platform/sign-in/password.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import { clearSessionCookie, setSessionCookie } from '../../platform/sign-in/session-cookie.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Http, Me, Open, type RequestContext } from '../../platform/sign-in/signed-in.js';
import { AccountService } from './account.service.js';
import { Account, PersonInput, SignInRefusal, SignInResult } from './account.types.js';

const wrong: SignInRefusal = { sentence: 'No account with this email and password. Check both; capitals count in the password.' };

@Resolver(() => Account)
export class AccountResolver {
  /** Failed tries by email: five in a minute, then a minute's rest. */
  private readonly failures = new Map<string, { count: number; since: number }>();

  constructor(
    private readonly dataSource: DataSource,
    private readonly sessions: SessionStore,
    private readonly accounts: AccountService,
    @Inject(CONFIG) private readonly config: Config,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @Open()
  @Query(() => Account, { nullable: true, description: 'Who is signed in; null when nobody is.' })
  me(@Me() me: SignedIn | undefined): SignedIn | null {
    return me ?? null;
  }

  @Open()
  @Mutation(() => SignInResult)
  async signIn(
    @Args('email') email: string,
    @Args('password') password: string,
    @Http() { res }: RequestContext,
  ): Promise<Account | SignInRefusal> {
    const key = email.trim().toLowerCase().slice(0, 200);
    if (this.mustWait(key)) return { sentence: 'Too many tries. Wait a minute, then try again.' };
    const account = await this.dataSource.getRepository(AccountRow).findOneBy({ email: key });
    if (!account || password.length > 500 || !(await checkPassword(password, account.passwordHash))) {
      this.countFailure(key);
      return wrong;
    }
    this.failures.delete(key);
    const { token, expiresAt } = await this.sessions.open(account.id);
    setSessionCookie(res, token, expiresAt, this.config.secureCookies);
    return { id: account.id, name: account.name, email: account.email, role: account.role };
  }

  @Open()
  @Mutation(() => Boolean)
  async signOut(@Http() { req, res }: RequestContext): Promise<boolean> {
    await this.sessions.close(req);
    clearSessionCookie(res);
    return true;
  }

  @Query(() => [Account], { description: 'Everybody who may sign in.' })
  async people(): Promise<Account[]> {
    const rows = await this.dataSource.getRepository(AccountRow).find({ order: { name: 'ASC' } });
    return rows.map(({ id, name, email, role }) => ({ id, name, email, role }));
  }

  @Allow('system')
  @Mutation(() => Account)
  async addPerson(@Args('person') person: PersonInput, @Me() me: SignedIn): Promise<Account> {
    return this.accounts.add(person, me);
  }

  @Allow('system')
  @Mutation(() => Account, { description: 'Calls a person otherwise from now on; what is on record stays as it was written.' })
  renamePerson(@Args('id', { type: () => ID }) id: string, @Args('name') name: string, @Me() me: SignedIn): Promise<Account> {
    return this.accounts.rename(id, name, me);
  }

  @Mutation(() => Boolean, { description: 'Changes the own password; every other session of this person ends.' })
  async changePassword(@Args('old') old: string, @Args('next') next: string, @Me() me: SignedIn): Promise<boolean> {
    await this.accounts.changePassword(me, old, next);
    return true;
  }

  private mustWait(key: string): boolean {
    const failure = this.failures.get(key);
    if (!failure) return false;
    if (this.clock.now().getTime() - failure.since > 60_000) this.failures.delete(key);
    return (this.failures.get(key)?.count ?? 0) >= 5;
  }

  private countFailure(key: string): void {
    const failure = this.failures.get(key) ?? { count: 0, since: this.clock.now().getTime() };
    if (this.failures.size > 10_000) this.failures.clear();
    this.failures.set(key, { ...failure, count: failure.count + 1 });
  }
}
