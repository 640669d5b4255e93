import { createHash, randomUUID, timingSafeEqual } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import type { BadInput } from '#kernel';
import { CLOCK, CONFIG, type Clock, type Config } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotAllowedError } from '../../platform/faults/fault.js';
import { givenFor } from '../../platform/sign-in/given-password.js';
import { hashPassword } from '../../platform/sign-in/password.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import { SignInTries, networkOf } from '../../platform/sign-in/tries.js';
import { personFaults, readPerson, waitAfterWrong } from './account.service.js';
import type { FirstPeopleInput } from './account.types.js';
import { lookAlike } from './person-name.js';

/** The first people of a house without any, by whoever holds the code that the window of the start shows. */
@Injectable()
export class SetUpService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly tries: SignInTries,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /** Whether the house waits for its first people. */
  async isOpen(): Promise<boolean> {
    return this.config.setUpCode !== null && !(await this.dataSource.getRepository(AccountRow).exists());
  }

  /** A system tech with a password of their own, and a safety officer with one that lets in once. */
  async begin(code: string, people: FirstPeopleInput, request: Request): Promise<void> {
    const { setUpCode } = this.config;
    if (setUpCode === null || !(await this.isOpen())) throw new NotAllowedError('The first people are on file already. Sign in.');
    const attempt = await this.tries.begin([['code', networkOf(request.ip ?? '')]]);
    if (attempt.waitMinutes !== null)
      throw new BadInputError([{ field: 'code', value: '(not shown)', wanted: waitAfterWrong(attempt.waitMinutes) }]);
    if (!same(code.trim().toLowerCase(), setUpCode))
      throw new BadInputError([{ field: 'code', value: code.slice(0, 20), wanted: 'the code that the window of the start shows' }]);
    await this.tries.forgive(attempt);
    const tech = readPerson({ ...people, role: 'system' });
    const officer = readPerson({ name: people.officerName, email: people.officerEmail, password: people.officerPassword, role: 'system' });
    const faults: BadInput[] = [
      ...personFaults(tech),
      ...personFaults(officer).map((each) => ({ ...each, field: `officer${each.field[0]?.toUpperCase()}${each.field.slice(1)}` })),
      ...sameFaults(tech, officer),
      ...(tech.password === officer.password
        ? [{ field: 'officerPassword', value: '(not shown)', wanted: 'another one than that of the system tech' }]
        : []),
    ];
    if (faults.length > 0) throw new BadInputError(faults);
    const [techHash, officerHash] = await Promise.all([hashPassword(tech.password), hashPassword(officer.password)]);
    const outcome = await this.unitOfWork.run<boolean>(async (manager) => {
      const rows = manager.getRepository(AccountRow);
      if (await rows.exists()) return { ok: true, value: false };
      const at = this.clock.now();
      const passwordUntil = new Date(at.getTime() + givenFor);
      await rows.insert({ id: randomUUID(), name: tech.name, email: tech.email, role: 'system', passwordHash: techHash });
      await rows.insert({
        id: randomUUID(),
        name: officer.name,
        email: officer.email,
        role: 'safety',
        passwordHash: officerHash,
        mustChange: true,
        passwordUntil,
      });
      const sentence = `Set up with ${tech.name} (system) and ${officer.name} (safety).`;
      await recordEvents(manager, { name: 'Cartwright' }, at, [{ what: 'added', sentence }]);
      return { ok: true, value: true };
    });
    if (!outcome.ok || !outcome.value) throw new NotAllowedError('The first people are on file already. Sign in.');
  }
}

function same(given: string, code: string): boolean {
  const hash = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(hash(given), hash(code));
}

interface Named {
  readonly name: string;
  readonly email: string;
}

/** Who builds and who approves are two people. */
function sameFaults(tech: Named, officer: Named): BadInput[] {
  return [
    ...(lookAlike(tech.name, officer.name)
      ? [{ field: 'officerName', value: officer.name, wanted: 'another person than the system tech: who plans does not approve' }]
      : []),
    ...(tech.email === officer.email ? [{ field: 'officerEmail', value: officer.email, wanted: 'an address of their own' }] : []),
  ];
}
