import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { BadInput } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { databaseErrorOf } from '../../platform/faults/database-error.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import { checkPassword, hashPassword } from '../../platform/sign-in/password.js';
import { type Role, type SignedIn, roles } from '../../platform/sign-in/person.js';
import { AccountRow, SessionRow } from '../../platform/sign-in/rows.js';
import type { Account, PersonInput } from './account.types.js';

const leastPassword = 10;

/** Who may sign in. */
@Injectable()
export class AccountService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async add(person: PersonInput, who: { readonly name: string }): Promise<Account> {
    const { name, email, role, password } = checked(person);
    const row = { id: randomUUID(), name, email, role, passwordHash: await hashPassword(password) };
    try {
      await this.unitOfWork.run(async (manager) => {
        await manager.getRepository(AccountRow).insert(row);
        await recordEvents(manager, who, this.clock.now(), [{ what: 'added', sentence: `Added ${name} (${role}).` }]);
        return { ok: true, value: undefined };
      });
    } catch (fault) {
      if (databaseErrorOf(fault)?.constraint !== 'account_email_unique') throw fault;
      throw new BadInputError([{ field: 'email', value: email, wanted: 'an email that nobody here has yet' }]);
    }
    return { id: row.id, name, email, role };
  }

  /** Calls a person otherwise from now on; what was written under the old name stays as it was written, with the same id beside it. */
  async rename(id: string, name: string, who: SignedIn): Promise<Account> {
    const next = name.trim();
    const faults = nameFaults(next);
    if (faults.length > 0) throw new BadInputError(faults);
    const outcome = await this.unitOfWork.run<Account>(async (manager) => {
      const rows = manager.getRepository(AccountRow);
      const before = isUuid(id) ? await rows.findOneBy({ id }) : null;
      if (!before) throw new NotFoundError('This person');
      await rows.update({ id }, { name: next });
      const sentence = `${before.name} is called ${next} from now on.`;
      if (before.name !== next) await recordEvents(manager, who, this.clock.now(), [{ what: 'renamed', sentence }]);
      return { ok: true, value: { id, name: next, email: before.email, role: before.role } };
    });
    if (!outcome.ok) throw new Error('a new name is never refused');
    return outcome.value;
  }

  /** The first person of an empty house; nothing when somebody is there already. */
  async addFirst(email: string, password: string): Promise<boolean> {
    if ((await this.dataSource.getRepository(AccountRow).count()) > 0) return false;
    await this.add({ name: email.split('@')[0]!, email, role: 'system', password }, { name: 'Cartwright' });
    return true;
  }

  async changePassword(who: SignedIn, old: string, next: string): Promise<void> {
    const rows = this.dataSource.getRepository(AccountRow);
    const account = await rows.findOneByOrFail({ id: who.id });
    if (old.length > 500 || !(await checkPassword(old, account.passwordHash)))
      throw new BadInputError([{ field: 'old', value: '(not shown)', wanted: 'the password that you signed in with' }]);
    const faults = passwordFaults('next', next);
    if (faults.length > 0) throw new BadInputError(faults);
    const passwordHash = await hashPassword(next);
    await this.unitOfWork.run(async (manager) => {
      await manager.getRepository(AccountRow).update({ id: who.id }, { passwordHash });
      await manager.getRepository(SessionRow).delete({ accountId: who.id });
      return { ok: true, value: undefined };
    });
  }
}

function checked(person: PersonInput): { name: string; email: string; role: Role; password: string } {
  const name = person.name.trim();
  const email = person.email.trim().toLowerCase();
  const role = roles.find((each) => each === person.role);
  const faults: BadInput[] = [
    ...nameFaults(name),
    ...(/^[^\s@]+@[^\s@]+$/.test(email) && email.length <= 200
      ? []
      : [{ field: 'email', value: email.slice(0, 80), wanted: 'an email address' }]),
    ...(role ? [] : [{ field: 'role', value: person.role.slice(0, 80), wanted: `one of: ${roles.join(', ')}` }]),
    ...passwordFaults('password', person.password),
  ];
  if (faults.length > 0) throw new BadInputError(faults);
  return { name, email, role: role!, password: person.password };
}

const nameFaults = (name: string): BadInput[] =>
  name === '' || name.length > 80 ? [{ field: 'name', value: name.slice(0, 80), wanted: 'a name of 1 to 80 characters' }] : [];

const isUuid = (text: string): boolean => /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(text);

function passwordFaults(field: string, password: string): BadInput[] {
  if (password.length >= leastPassword && password.length <= 200) return [];
  return [{ field, value: '(not shown)', wanted: `a password of ${leastPassword} to 200 characters` }];
}
