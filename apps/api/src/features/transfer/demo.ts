import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DataSource } from 'typeorm';
import { daysBetween } from '#kernel';
import { readTourFile, shiftDates } from '#tour-file';
import { checkPassword, hashPassword } from '../../platform/sign-in/password.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import type { Role } from '../../platform/sign-in/person.js';
import type { TourFileService } from './tour-file.service.js';

/** The made-up people of a fresh install: one for each role. */
export const demoPeople: readonly { readonly name: string; readonly email: string; readonly role: Role }[] = [
  { name: 'Wren Castellan', email: 'warehouse@cartwright.example', role: 'warehouse' },
  { name: 'Sol Achterberg', email: 'system@cartwright.example', role: 'system' },
  { name: 'Ines Aldous', email: 'safety@cartwright.example', role: 'safety' },
];

export async function isEmpty(dataSource: DataSource): Promise<boolean> {
  return (await dataSource.getRepository(AccountRow).count()) === 0;
}

/** Accounts with the given passwords, and the demo tour with its dates moved so that it starts three days from `today`. */
export async function loadDemo(
  dataSource: DataSource,
  tourFiles: TourFileService,
  root: string,
  today: string,
  passwordOf: (role: Role) => string,
): Promise<void> {
  await loadDemoTour(tourFiles, root, today);
  await addDemoPeople(dataSource, passwordOf);
}

/** The demo tour without its people. */
export async function loadDemoTour(tourFiles: TourFileService, root: string, today: string): Promise<void> {
  const written = JSON.parse(readFileSync(join(root, 'tests', 'examples', 'demo-tour.json'), 'utf8')) as { tour: { prepFrom: string } };
  const file = shiftDates(written as never, daysBetween(written.tour.prepFrom, today) + 3);
  const read = readTourFile(file);
  if (!read.ok) throw new Error(`the demo tour is not right: ${JSON.stringify(read.error[0])}`);
  const { faults } = await tourFiles.import(file, { name: 'Cartwright' }, false);
  if (faults.length > 0) throw new Error(`the demo tour could not be loaded: ${JSON.stringify(faults[0])}`);
}

/** The demo's people, or those of them who are named. */
export async function addDemoPeople(dataSource: DataSource, passwordOf: (role: Role) => string, people = demoPeople): Promise<void> {
  for (const { name, email, role } of people)
    await dataSource
      .getRepository(AccountRow)
      .insert({ id: randomUUID(), name, email, role, passwordHash: await hashPassword(passwordOf(role)), passwordByOfficer: true });
}

/** Of the passwords that the made-up people were given, those that are still theirs. */
export async function unchangedPasswords(
  dataSource: DataSource,
  passwords: Readonly<Partial<Record<Role, string>>>,
): Promise<Partial<Record<Role, string>>> {
  const left: Partial<Record<Role, string>> = {};
  for (const { email, role } of demoPeople) {
    const account = await dataSource.getRepository(AccountRow).findOneBy({ email });
    const password = passwords[role];
    if (account && password !== undefined && (await checkPassword(password, account.passwordHash))) left[role] = password;
  }
  return left;
}
