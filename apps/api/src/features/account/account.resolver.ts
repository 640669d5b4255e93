import { Inject } from '@nestjs/common';
import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { CONFIG, type Config } from '../../platform/config/config.js';
import { UuidArgument } from '../../platform/graphql/uuid-argument.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { clearSessionCookie, setDeviceCookie, setSessionCookie } from '../../platform/sign-in/session-cookie.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import { waitInWords } from '../../platform/sign-in/tries.js';
import { Allow, AllowEverybody, BeforeOwnPassword, Http, Me, Open, type RequestContext } from '../../platform/sign-in/signed-in.js';
import { OnePersonTime, onePersonTimes } from '../one-person/one-person.reader.js';
import { AccountService } from './account.service.js';
import {
  Account,
  DeputyshipView,
  FirstPeopleInput,
  PersonInput,
  PersonOnFile,
  SessionView,
  type SignInRefusal,
  SignInResult,
} from './account.types.js';
import { PeopleService } from './people.service.js';
import { SetUpService } from './set-up.service.js';
import { SignInService } from './sign-in.service.js';

const wrong: SignInRefusal = { sentence: 'No account with this email and password. Check both; capitals count in the password.' };
const mustWait = (minutes: number): SignInRefusal => ({ sentence: `Too many tries. Wait ${waitInWords(minutes)}, then try again.` });
const id = { type: () => ID };
const asRead = {
  type: () => String,
  nullable: true,
  description: 'As it was read: what somebody else wrote since is not written over unseen.',
};

@Resolver(() => Account)
export class AccountResolver {
  constructor(
    private readonly dataSource: DataSource,
    private readonly sessionStore: SessionStore,
    private readonly signIns: SignInService,
    private readonly accounts: AccountService,
    private readonly keeping: PeopleService,
    private readonly first: SetUpService,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Open()
  @Query(() => Account, { nullable: true, description: 'Who is signed in; null when nobody is.' })
  me(@Me() me: SignedIn | undefined): SignedIn | null {
    return me ?? null;
  }

  @ResolveField(() => [DeputyshipView], { description: 'Whose place the one who asks takes today, as deputy of a safety officer.' })
  deputyships(@Parent() { id: whose }: Account, @Me() me: SignedIn | undefined): readonly DeputyshipView[] {
    return me?.id === whose ? me.deputyships : [];
  }

  @ResolveField(() => [OnePersonTime], { description: 'When one person judged alone in this house, the newest time first.' })
  onePerson(): Promise<OnePersonTime[]> {
    return onePersonTimes(this.dataSource.manager);
  }

  @Open()
  @Mutation(() => SignInResult)
  async signIn(
    @Args('email') email: string,
    @Args('password') password: string,
    @Http() { req, res }: RequestContext,
  ): Promise<Account | SignInRefusal> {
    const outcome = await this.signIns.signIn(email, password, req);
    if (outcome.is === 'wrong') return wrong;
    if (outcome.is === 'must wait') return mustWait(outcome.minutes);
    setSessionCookie(res, outcome.token, outcome.expiresAt, this.config.secureCookies);
    setDeviceCookie(res, outcome.deviceToken, this.config.secureCookies);
    return outcome.account;
  }

  @Open()
  @Query(() => Boolean, { description: 'Whether the house waits for its first people.' })
  isToSetUp(): Promise<boolean> {
    return this.first.isOpen();
  }

  @Open()
  @Mutation(() => Boolean, { description: 'The first people of a house without any, by the code that the start shows.' })
  async setUp(@Args('code') code: string, @Args('people') people: FirstPeopleInput, @Http() { req }: RequestContext): Promise<boolean> {
    await this.first.begin(code, people, req);
    return true;
  }

  @Open()
  @Mutation(() => Boolean)
  async signOut(@Http() { req, res }: RequestContext): Promise<boolean> {
    await this.sessionStore.close(req);
    clearSessionCookie(res, this.config.secureCookies);
    return true;
  }

  @AllowEverybody()
  @Mutation(() => Boolean, {
    description: 'Ends one own session, or all but the one that asks; false where it is none of the open ones of who asks.',
  })
  async endSessions(@Args('id', { type: () => ID, nullable: true }) one: string | null | undefined, @Me() me: SignedIn): Promise<boolean> {
    const open = await this.sessionStore.ofPerson(me.id);
    const ending = open.filter((each) => (one ? each.id === one : each.id !== me.sessionId));
    for (const each of ending) await this.sessionStore.end(this.dataSource.manager, me.id, each.id);
    return !one || ending.length > 0;
  }

  @AllowEverybody()
  @Query(() => [SessionView], { description: 'Where the one who asks is signed in.' })
  async sessions(@Me() me: SignedIn): Promise<SessionView[]> {
    const open = await this.sessionStore.ofPerson(me.id);
    return open.map((each) => ({ ...each, isThis: each.id === me.sessionId }));
  }

  @AllowEverybody()
  @Query(() => [PersonOnFile], { description: 'Everybody on file.' })
  people(): Promise<PersonOnFile[]> {
    return this.keeping.people();
  }

  @Allow('system')
  @Mutation(() => Account)
  async addPerson(@Args('person') person: PersonInput, @Me() me: SignedIn): Promise<Account> {
    return this.accounts.add(person, me);
  }

  @Allow('system', 'safety')
  @Mutation(() => Account, { description: 'Calls another person otherwise from now on; what is on record stays as it was written.' })
  renamePerson(
    @Args('id', id, UuidArgument) person: string,
    @Args('name') name: string,
    @Args('was', asRead) was: string | null | undefined,
    @Me() me: SignedIn,
  ): Promise<Account> {
    return this.keeping.rename(person, name, was ?? null, me);
  }

  @AllowEverybody()
  @BeforeOwnPassword()
  @Mutation(() => Boolean, { description: 'Changes the own password; every session of this person ends.' })
  async changePassword(@Args('old') old: string, @Args('next') next: string, @Me() me: SignedIn): Promise<boolean> {
    await this.accounts.changePassword(me, old, next);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'Gives another person a password that lets in once, within a day; their sessions end.' })
  async renewPassword(@Args('id', id) person: string, @Args('password') password: string, @Me() me: SignedIn): Promise<boolean> {
    await this.keeping.renewPassword(person, password, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'Nobody signs in as this person any more; their sessions end at once.' })
  async disablePerson(@Args('id', id) person: string, @Me() me: SignedIn): Promise<boolean> {
    await this.keeping.disable(person, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean)
  async enablePerson(@Args('id', id) person: string, @Me() me: SignedIn): Promise<boolean> {
    await this.keeping.enable(person, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'To warehouse or system; their sessions end.' })
  async changeRole(
    @Args('id', id) person: string,
    @Args('role') role: string,
    @Args('was', asRead) was: string | null | undefined,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.keeping.changeRole(person, role, was ?? null, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'The first of the two pairs of eyes that make a safety officer.' })
  async proposeOfficer(@Args('id', id) person: string, @Me() me: SignedIn): Promise<boolean> {
    await this.keeping.proposeOfficer(person, me);
    return true;
  }

  @Allow('safety')
  @Mutation(() => Boolean, {
    description:
      'The second: a safety officer who is neither who proposed nor who is proposed. Who accepts gives a password that lets in once.',
  })
  async answerProposal(
    @Args('id', id) person: string,
    @Args('accept') accept: boolean,
    @Args('password', { type: () => String, nullable: true }) password: string | null | undefined,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.keeping.answerProposal(person, accept, password ?? null, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'A person leaves: the name goes out of all words, what was done stays under a number.' })
  async removePerson(@Args('id', id) person: string, @Me() me: SignedIn): Promise<boolean> {
    await this.keeping.leave(person, me);
    return true;
  }
}
