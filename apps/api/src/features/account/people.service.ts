import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager, IsNull } from 'typeorm';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { sealLock } from '../../platform/seal/seal-log.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../platform/faults/fault.js';
import { clashInWords } from '../../platform/faults/clash.js';
import { givenPassword } from '../../platform/sign-in/given-password.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AccountRow, OfficerProposalRow } from '../../platform/sign-in/rows.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import { takenBy } from './account.service.js';
import type { Account, PersonOnFile } from './account.types.js';
import { isNameTaken, nameFaults, nameTaken, readName } from './person-name.js';

/** People kept by others: who may still sign in, as what, and what is left of those who leave. */
@Injectable()
export class PeopleService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly sessions: SessionStore,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  people(): Promise<PersonOnFile[]> {
    return this.dataSource.query(
      `SELECT account.id, account.name, account.email, account.role, password_by_officer AS "passwordByOfficer",
         CASE WHEN left_number IS NOT NULL THEN 'left' WHEN disabled_at IS NOT NULL THEN 'out' WHEN must_change THEN 'new' ELSE 'in' END AS state,
         (SELECT count(*)::int FROM session WHERE account_id = account.id AND ended_at IS NULL AND expires_at > $1) AS sessions,
         (SELECT proposed_by FROM officer_proposal WHERE account_id = account.id AND accepted IS NULL LIMIT 1) AS "proposedBy"
       FROM account ORDER BY left_number NULLS FIRST, account.name`,
      [this.clock.now()],
    );
  }

  /** Another person's password is not known to anybody: a new one is given, which lets in once. */
  async renewPassword(id: string, password: string, me: SignedIn): Promise<void> {
    const given = await givenPassword(password, this.clock);
    await this.keep(id, me, async (manager, person) => {
      await this.mustLeaveDeputy(manager, id, me);
      await manager.getRepository(AccountRow).update({ id }, { ...given(), passwordByOfficer: me.role === 'safety' });
      await this.sessions.end(manager, id);
      return `${person.name} has a password from ${me.name}, for one sign-in.`;
    });
  }

  /** Calls another person otherwise from now on; what was written under the old name stays as it was written, with the same id beside it. */
  async rename(id: string, name: string, was: string | null, me: SignedIn): Promise<Account> {
    const next = readName(name);
    const faults = nameFaults(next);
    if (faults.length > 0) throw new BadInputError(faults);
    const rename = this.keep(id, me, async (manager, person) => {
      await this.mustLeaveDeputy(manager, id, me);
      mustBeAsRead('name', was, next, person.name);
      if (await isNameTaken(manager, next, id)) throw new BadInputError([nameTaken(next)]);
      await manager.getRepository(AccountRow).update({ id }, { name: next });
      return `${person.name} is called ${next} from now on.`;
    });
    await rename.catch((fault: unknown) => {
      throw takenBy(fault, { name: next, email: '' }) ?? fault;
    });
    const { email, role, mustChange } = await this.dataSource.getRepository(AccountRow).findOneByOrFail({ id });
    return { id, name: next, email, role, mustChange };
  }

  /** Ends everything that this person has open, at once. */
  disable(id: string, me: SignedIn): Promise<void> {
    return this.keep(
      id,
      me,
      async (manager, person) => {
        await mustLeaveSomebody(manager, person);
        await manager.getRepository(AccountRow).update({ id }, { disabledAt: this.clock.now() });
        await this.sessions.end(manager, id);
        return `${person.name} may not sign in any more.`;
      },
      'anybody who keeps people',
    );
  }

  enable(id: string, me: SignedIn): Promise<void> {
    return this.keep(id, me, async (manager, person) => {
      await manager.getRepository(AccountRow).update({ id }, { disabledAt: null });
      return `${person.name} may sign in again.`;
    });
  }

  changeRole(id: string, role: string, was: string | null, me: SignedIn): Promise<void> {
    if (role !== 'warehouse' && role !== 'system')
      throw new BadInputError([
        { field: 'role', value: role.slice(0, 80), wanted: 'warehouse or system; a safety officer is proposed, and accepted by one' },
      ]);
    return this.keep(id, me, async (manager, person) => {
      mustBeAsRead('role', was, role, person.role);
      if (person.role !== role) await mustLeaveSomebody(manager, person);
      await manager.getRepository(AccountRow).update({ id }, { role });
      await this.sessions.end(manager, id);
      return `${person.name} is ${role} from now on, was ${person.role}.`;
    });
  }

  proposeOfficer(id: string, me: SignedIn): Promise<void> {
    return this.keep(id, me, async (manager, person) => {
      const proposals = manager.getRepository(OfficerProposalRow);
      if (person.role === 'safety' || (await proposals.existsBy({ accountId: id, accepted: IsNull() })))
        throw new BadInputError([{ field: 'id', value: person.name, wanted: 'somebody who is no safety officer and not proposed yet' }]);
      const at = this.clock.now();
      await proposals.insert({ id: randomUUID(), accountId: id, proposedById: me.id, proposedBy: me.name, proposedAt: at });
      return `${me.name} proposes ${person.name} as a safety officer.`;
    });
  }

  /**
   * By a safety officer who is neither the one who proposed nor the one who is proposed. Who accepts gives the new officer a password, for one sign-in:
   * whatever others know of the account lets nobody in.
   */
  async answerProposal(id: string, accept: boolean, password: string | null, me: SignedIn): Promise<void> {
    const given = accept ? await givenPassword(password ?? '', this.clock) : undefined;
    await this.keep(id, me, async (manager, person) => {
      const proposals = manager.getRepository(OfficerProposalRow);
      const open = await proposals.findOneBy({ accountId: id, accepted: IsNull() });
      if (!open) throw new NotFoundError('This proposal');
      if (open.proposedById === me.id && accept)
        throw new NotAllowedError('Who proposes a safety officer does not accept: two pairs of eyes. Another safety officer does.');
      if (open.proposedById === me.id) await proposals.delete({ id: open.id });
      else
        await proposals.update({ id: open.id }, { decidedById: me.id, decidedBy: me.name, decidedAt: this.clock.now(), accepted: accept });
      if (!given) return `${person.name} does not become a safety officer.`;
      await manager.getRepository(AccountRow).update({ id }, { role: 'safety', ...given(), passwordByOfficer: true });
      await this.sessions.end(manager, id);
      return `${person.name} is a safety officer: proposed by ${open.proposedBy}, accepted by ${me.name}, who gives the password for one sign-in.`;
    });
  }

  /** The name goes out of all words; what was done stays, under a number. First nobody signs in any more; then the words are changed, while others write. */
  async leave(id: string, me: SignedIn): Promise<void> {
    await this.keep(id, me, async (manager, person) => {
      await mustLeaveSomebody(manager, person);
      await manager.getRepository(AccountRow).update({ id, disabledAt: IsNull() }, { disabledAt: this.clock.now() });
      await this.sessions.end(manager, id);
      return `${person.name} leaves the house.`;
    });
    await this.unitOfWork.run(async (manager) => {
      await manager.query(`SET LOCAL statement_timeout = ${longestLeavingMs}`);
      await withoutSeals(manager);
      const [left]: { label: string }[] = await manager.query('SELECT leave_house($1) AS label', [id]);
      await recordEvents(manager, me, this.clock.now(), [{ what: 'person', sentence: `${left?.label} has left.` }]);
      return { ok: true, value: undefined };
      // Each look sees what was written until then.
    }, 'READ COMMITTED');
  }

  /** Of a deputy, today's or one named for days to come, an officer decides: by way of that account nobody becomes one. */
  private async mustLeaveDeputy(manager: EntityManager, id: string, me: SignedIn): Promise<void> {
    if (me.role === 'safety') return;
    const named: unknown[] = await manager.query(
      `SELECT FROM deputy WHERE account_id = $1 AND withdrawn_at IS NULL AND until_day >= ($2::timestamptz AT TIME ZONE time_zone)::date LIMIT 1`,
      [id, this.clock.now()],
    );
    if (named.length > 0) throw new NotAllowedError('Of a deputy of a safety officer a safety officer decides.');
  }

  /**
   * One load, one decision, one save, and an event. Of a safety officer only another one decides, so that nobody becomes one by way of an officer's
   * account; disabling is open to all who keep people. Nobody keeps themselves.
   */
  private async keep(
    id: string,
    me: SignedIn,
    act: (manager: EntityManager, person: AccountRow) => Promise<string>,
    byWhom: 'who may keep this person' | 'anybody who keeps people' = 'who may keep this person',
  ): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const person = await manager.getRepository(AccountRow).findOneBy({ id });
      if (!person || person.leftNumber !== null) throw new NotFoundError('This person');
      if (id === me.id) throw new NotAllowedError('This is for another person to do: nobody does it for themselves.');
      if (person.role === 'safety' && me.role !== 'safety' && byWhom === 'who may keep this person')
        throw new NotAllowedError('Of a safety officer another safety officer decides.');
      const sentence = await act(manager, person);
      await recordEvents(manager, me, this.clock.now(), [{ what: 'person', sentence }]);
      return { ok: true, value: undefined };
    });
  }
}

/** A name and a role are written apart, so that two people who change one each are both heard; of one of them the second is shown both values. */
function mustBeAsRead(field: 'name' | 'role', was: string | null, yours: string, onFile: string): void {
  if (was === null || onFile === was || onFile === yours) return;
  const named = field === 'name' ? 'Name' : 'Role';
  const fault = { field, named, value: yours, wanted: clashInWords({ was, yours, onFile }), onFile };
  throw new BadInputError([fault]);
}

/** A house without a system tech or without a safety officer could not go on. */
async function mustLeaveSomebody(manager: EntityManager, { id, role }: AccountRow): Promise<void> {
  if (role === 'warehouse') return;
  const [others]: { count: number }[] = await manager.query(
    'SELECT count(*)::int AS count FROM account WHERE role = $1 AND disabled_at IS NULL AND id <> $2',
    [role, id],
  );
  const word = role === 'system' ? 'system tech' : 'safety officer';
  if (others?.count === 0) throw new NotAllowedError(`This is the only ${word} of the house: make another first.`);
}

/** How long the words of a log of years may take. */
const longestLeavingMs = 900_000;

/** While a name goes out of the words nobody seals them. */
async function withoutSeals(manager: EntityManager): Promise<void> {
  for (let look = 0; look < 40; look++) {
    const [lock]: { ours: boolean }[] = await manager.query('SELECT pg_try_advisory_xact_lock($1) AS ours', [sealLock]);
    if (lock?.ours) return;
    await pause(250);
  }
  throw new BadInputError([
    {
      field: 'id',
      value: null,
      wanted: 'a moment in which no backup is written: who it is signs in no more; remove again when the backup is done',
    },
  ]);
}
