import type { EntityManager } from 'typeorm';
import { type BadInput, unseenIn, wantedSeen } from '#kernel';

/** Scripts whose letters look like those of one another. */
const alike = [/\p{Script=Latin}/u, /\p{Script=Cyrillic}/u, /\p{Script=Greek}/u];

const wantedOfTaken = 'a name that nobody here has yet: two of one name are not told apart';

/** A name as it is kept: one form of each character, one blank between words. */
export const readName = (name: string): string => name.normalize('NFKC').replaceAll(/\s+/gu, ' ').trim();

/** What is left of a name to tell it from another: no capitals, accents or blanks. */
export const lookOf = (name: string): string =>
  name
    .normalize('NFKC')
    .toUpperCase()
    .toLowerCase()
    .normalize('NFD')
    .replaceAll(/[\p{M}\s]/gu, '');

export function nameFaults(name: string): BadInput[] {
  const fault = (wanted: string): BadInput[] => [{ field: 'name', value: name.slice(0, 80), wanted }];
  if (name === '' || name.length > 80) return fault('a name of 1 to 80 characters');
  const found = unseenIn(name);
  if (found !== undefined) return fault(wantedSeen(found));
  if (alike.filter((script) => script.test(name)).length > 1) return fault('letters of one script: Latin, Cyrillic or Greek');
  if (/deputy\s+of/iu.test(name)) return fault('a name without “deputy of”: the house says itself who is deputy of whom');
  if (/^person\s+\d+\s*\(left\)$/iu.test(name)) return fault('another name: so the house calls whoever left it');
  return [];
}

export const nameTaken = (name: string): BadInput => ({ field: 'name', value: name, wanted: wantedOfTaken });

/** Whether somebody else on file has a name that looks like this one. */
export async function isNameTaken(manager: EntityManager, name: string, but: string): Promise<boolean> {
  const others: { name: string }[] = await manager.query('SELECT name FROM account WHERE id <> $1', [but]);
  return others.some((each) => lookOf(each.name) === lookOf(name));
}
