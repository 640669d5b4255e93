import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { type BadInput, unseenIn, wantedSeen } from '#kernel';
import { BadInputError } from '../../platform/faults/fault.js';
import { ownName } from '../../platform/sign-in/deputy.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import type { OutsideInput } from './rigging.types.js';
import { SignOffRow } from './rows.js';

export { CountersignInput } from './rigging.types.js';

/** Somebody from outside, by name: a person of that show, and no account. */
export interface Outside extends OutsideInput {
  readonly name: string;
}

export const isAlike = (one: string, other: string): boolean => ownName(one).toLowerCase() === ownName(other).toLowerCase();

const longest = 80;

/** Who signs from outside, as it is kept; every part of it has to be said, and nobody of the house comes from outside. */
export async function outsideOf(manager: EntityManager, given: Outside): Promise<Outside> {
  const read = { name: given.name.trim(), company: given.company.trim(), role: given.role.trim(), place: given.place.trim() };
  const wanted = {
    name: 'the name of who signs',
    company: 'the company that they work for, or "own account"',
    role: 'what they are there, such as rigger of the venue',
    place: 'where they stood, such as the grid',
  };
  const faults = (['name', 'company', 'role', 'place'] as const).flatMap((field): BadInput[] => {
    const value = read[field];
    const unseen = unseenIn(value);
    if (unseen !== undefined) return [{ field, value, wanted: wantedSeen(unseen) }];
    if (value !== '' && value.length <= longest) return [];
    return [{ field, value: value.slice(0, longest), wanted: `${wanted[field]}, in 1 to ${longest} characters` }];
  });
  if (faults.length > 0) throw new BadInputError(faults);
  const people: { name: string }[] = await manager.query('SELECT name FROM account WHERE left_number IS NULL');
  const own = people.find((each) => isAlike(each.name, read.name));
  if (own)
    throw new BadInputError([
      { field: 'name', value: read.name, wanted: `somebody from outside; ${own.name} is on file in this house and signs as that` },
    ]);
  return read;
}

/** Nobody from outside signs twice in two roles on one plan. */
export async function mustBeFresh(manager: EntityManager, planId: string, kind: SignOffRow['kind'], name: string): Promise<void> {
  const before = await manager.getRepository(SignOffRow).findBy({ planId });
  const other = before.find((each) => each.kind !== kind && isAlike(each.name, name));
  if (other)
    throw new BadInputError([
      {
        field: 'name',
        value: name,
        wanted: `another person than ${other.name}, whose name stands under "${other.kind}"${other.hang ? ` of ${other.hang}` : ''}`,
      },
    ]);
}

/** A signature as it was given on the device of `who`. */
export async function keepSignOff(
  manager: EntityManager,
  of: Pick<SignOffRow, 'planId' | 'hang' | 'kind' | 'name' | 'remark'>,
  outside: OutsideInput | null,
  at: Date,
  who: SignedIn,
): Promise<void> {
  const { company = null, role = null, place = null } = outside ?? {};
  await manager.getRepository(SignOffRow).insert({
    ...{ id: randomUUID(), planId: of.planId, hang: of.hang, kind: of.kind, name: of.name, remark: of.remark },
    ...{ company, role, place, signedAt: at, signedBy: who.name, signedById: who.id },
  });
}

/** The second person of a release: from outside, by name. Gives the words of the log. */
export async function countersignRelease(manager: EntityManager, planId: string, given: Outside, at: Date, who: SignedIn): Promise<string> {
  const outside = await outsideOf(manager, given);
  await keepSignOff(manager, { planId, hang: '', kind: 'release countersigned', name: outside.name, remark: '' }, outside, at, who);
  return ` Countersigned by ${outsideWords(outside)}.`;
}

export const outsideWords = ({ name, company, role, place }: Outside): string => `${name}, ${role}, ${company}, at ${place}`;
