import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, IsNull } from 'typeorm';
import { type BadInput, unseenIn, wantedSeen } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { databaseErrorOf } from '../../platform/faults/database-error.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { givenFor, passwordFaults } from '../../platform/sign-in/given-password.js';
import { hashPassword, wasPassword } from '../../platform/sign-in/password.js';
import type { Role, SignedIn } from '../../platform/sign-in/person.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import { waitInWords } from '../../platform/sign-in/tries.js';
import type { Account, PersonInput } from './account.types.js';
import { isNameTaken, nameFaults, nameTaken, readName } from './person-name.js';
import { SignInService } from './sign-in.service.js';

/** What is wanted of who gave too many wrong ones. */
export const waitAfterWrong = (minutes: number): string => `a wait of ${waitInWords(minutes)} after so many wrong ones`;

/** Two people are told apart by their names and by what they sign in with. */
export function takenBy(fault: unknown, { name, email }: { name: string; email: string }): BadInputError | undefined {
  const constraint = databaseErrorOf(fault)?.constraint;
  if (constraint === 'account_email_unique')
    return new BadInputError([{ field: 'email', value: email, wanted: 'an email that nobody here has yet' }]);
  if (constraint === 'account_name_unique') return new BadInputError([nameTaken(name)]);
  return undefined;
}

/** Who may sign in. */
@Injectable()
export class AccountService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly signIns: SignInService,
    private readonly sessions: SessionStore,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async add(person: PersonInput, who: { readonly name: string }): Promise<Account> {
    const { name, email, role, password } = checked(person);
    const row = {
      id: randomUUID(),
      name,
      email,
      role,
      passwordHash: await hashPassword(password),
      mustChange: true,
      passwordUntil: new Date(this.clock.now().getTime() + givenFor),
    };
    try {
      await this.unitOfWork.run(async (manager) => {
        if (await isNameTaken(manager, name, row.id)) throw new BadInputError([nameTaken(name)]);
        await manager.getRepository(AccountRow).insert(row);
        await recordEvents(manager, who, this.clock.now(), [{ what: 'added', sentence: `Added ${name} (${role}).` }]);
        return { ok: true, value: undefined };
      });
    } catch (fault) {
      throw takenBy(fault, { name, email }) ?? fault;
    }
    return { id: row.id, name, email, role, mustChange: true };
  }

  /**
   * The first of a role, named at set-up; false when somebody has it already. However many are told to make them at once, one does. The password is
   * known to whoever set it up: it is to be changed.
   */
  async addFirst(role: 'system' | 'safety', email: string, password: string): Promise<boolean> {
    const passwordHash = await hashPassword(password);
    const name = email.split('@')[0] ?? email;
    const outcome = await this.unitOfWork.run<boolean>(async (manager) => {
      // One after another: whoever comes second sees what the first has made.
      await manager.query(`SELECT pg_advisory_xact_lock(hashtext('the first of a role'))`);
      const accounts = manager.getRepository(AccountRow);
      if (await accounts.existsBy({ role, disabledAt: IsNull() })) return { ok: true, value: false };
      await accounts.insert({ id: randomUUID(), name, email: email.toLowerCase(), role, passwordHash, mustChange: true });
      const sentence = `Added ${name} (${role}), named at set-up.`;
      await recordEvents(manager, { name: 'Cartwright' }, this.clock.now(), [{ what: 'added', sentence }]);
      return { ok: true, value: true };
    }, 'READ COMMITTED');
    return outcome.ok && outcome.value;
  }

  /** Who came in with a password from another person has shown it already, and it is gone. */
  async changePassword(who: SignedIn, old: string, next: string): Promise<void> {
    const account = await this.dataSource.getRepository(AccountRow).findOneByOrFail({ id: who.id });
    const isOwn = account.mustChange || (await this.signIns.isOwnPassword(account, old));
    if (typeof isOwn === 'object')
      throw new BadInputError([{ field: 'old', value: '(not shown)', wanted: waitAfterWrong(isOwn.waitMinutes) }]);
    if (!isOwn) throw new BadInputError([{ field: 'old', value: '(not shown)', wanted: 'the password that you signed in with' }]);
    const faults = passwordFaults('next', next);
    if (next === old || (await wasPassword(next, account.passwordHash)))
      faults.push({ field: 'next', value: '(not shown)', wanted: 'another one than before: that one somebody else may know' });
    if (next.trim().toLowerCase() === account.email)
      faults.push({ field: 'next', value: '(not shown)', wanted: 'another one than the address' });
    if (faults.length > 0) throw new BadInputError(faults);
    const passwordHash = await hashPassword(next);
    await this.unitOfWork.run(async (manager) => {
      // What was asked for was the password of then: one that another person gave meanwhile stands.
      const still = { id: who.id, passwordHash: account.passwordHash, mustChange: account.mustChange };
      const { affected } = await manager.getRepository(AccountRow).update(still, { passwordHash, mustChange: false, passwordUntil: null });
      if (affected !== 1)
        throw new BadInputError([
          { field: 'old', value: '(not shown)', wanted: 'the password that is valid now: it was renewed meanwhile' },
        ]);
      await this.sessions.end(manager, who.id);
      return { ok: true, value: undefined };
    });
  }
}

function checked(person: PersonInput): { name: string; email: string; role: Role; password: string } {
  const read = readPerson(person);
  const role = (['warehouse', 'system'] as const).find((each) => each === person.role);
  const faults: BadInput[] = [
    ...personFaults(read),
    ...(role
      ? []
      : [
          {
            field: 'role',
            value: person.role.slice(0, 80),
            wanted: 'warehouse or system; a safety officer is proposed, and accepted by one',
          },
        ]),
  ];
  if (faults.length > 0) throw new BadInputError(faults);
  return { ...read, role: role! };
}

/** A person as typed, without what does not tell people apart. */
export const readPerson = ({ name, email, password }: PersonInput) => ({
  name: readName(name),
  email: email.trim().toLowerCase(),
  password,
});

export const personFaults = ({ name, email, password }: ReturnType<typeof readPerson>): BadInput[] => [
  ...nameFaults(name),
  ...(/^[^\s@]+@[^\s@]+$/.test(email) && email.length <= 200 && unseenIn(email) === undefined
    ? []
    : [
        {
          field: 'email',
          value: email.slice(0, 80),
          wanted: unseenIn(email) === undefined ? 'an email address' : wantedSeen(unseenIn(email) ?? ''),
        },
      ]),
  ...passwordFaults('password', password),
];
