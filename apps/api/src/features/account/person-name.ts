import type { EntityManager } from 'typeorm';
import { type BadInput, unseenIn, wantedSeen } from '#kernel';

/** Scripts whose letters look like those of one another; a name has letters of one (the single-script level of Unicode TR39, 5.2). */
const alike = [
  /\p{Script=Latin}/u,
  /\p{Script=Cyrillic}/u,
  /\p{Script=Greek}/u,
  /\p{Script=Armenian}/u,
  /\p{Script=Georgian}/u,
  /\p{Script=Cherokee}/u,
  /\p{Script=Coptic}/u,
  /\p{Script=Lisu}/u,
  /\p{Script=Hebrew}/u,
  /\p{Script=Arabic}/u,
  /\p{Script=Deseret}/u,
  /\p{Script=Osage}/u,
];

/**
 * Letters and digits that look like a Latin letter, after the idea of the confusables of Unicode TR39 (which maps more): each text of the first column, sign by
 * sign, to the one beside it. Small letters and capitals apart, since other ones are alike.
 */
const alikeSmall = lookTable(
  'аαɑ a, сϲց c, ԁ d, еҽ e, һհ h, іιіıi1l|ӏյ l, ј j, κ k, ոп n, оοօ0ஃ o, рρ p, ԛզ q, ѕ s, τ t, υսц u, ν v, ԝω w, хχ x, уγ y',
);
const alikeLarge = lookTable(
  'АΑ A, ВΒ B, СϹ C, ЕΕ E, НΗ H, ІΙӀ1L|l I, Ј J, КΚ K, МΜ M, Ν N, ОΟՕ0 O, РΡ P, ЅՏ S, ТΤ T, ՍՄ U, ХΧ X, УΥ Y, ΖՀ Z',
);

function lookTable(pairs: string): ReadonlyMap<string, string> {
  return new Map(
    pairs.split(', ').flatMap((pair) => {
      const [signs = '', look = ''] = pair.split(' ');
      return [...signs].map((sign) => [sign, look] as const);
    }),
  );
}

const wantedOfTaken = 'a name that nobody here has yet: two of one name are not told apart';

/** A name as it is kept: one form of each character, one blank between words. */
export const readName = (name: string): string => name.normalize('NFKC').replaceAll(/\s+/gu, ' ').trim();

/** What is left of a name to tell it from another: no accents, blanks, dots or strokes, one letter for all that look like it. */
function looksOf(name: string): readonly [string, string] {
  const bare = name
    .normalize('NFKC')
    .normalize('NFD')
    .replaceAll(/[\p{M}\s]/gu, '');
  const look = (text: string, table: ReadonlyMap<string, string>) =>
    [...text]
      .map((sign) => table.get(sign) ?? sign)
      .join('')
      .replaceAll(/[\p{P}\p{S}]/gu, '');
  const small = look(bare.toUpperCase().toLowerCase(), alikeSmall).replaceAll('rn', 'm').replaceAll('vv', 'w');
  return [small, look(bare.toUpperCase(), alikeLarge)];
}

/** Whether one could be taken for the other. */
export function lookAlike(one: string, other: string): boolean {
  const [small, large] = looksOf(one);
  const [otherSmall, otherLarge] = looksOf(other);
  return small === otherSmall || large === otherLarge;
}

export function nameFaults(name: string): BadInput[] {
  const fault = (wanted: string): BadInput[] => [{ field: 'name', value: name.slice(0, 80), wanted }];
  if (name === '' || name.length > 80) return fault('a name of 1 to 80 characters');
  const found = unseenIn(name);
  if (found !== undefined) return fault(wantedSeen(found));
  if (alike.filter((script) => script.test(name)).length > 1) return fault('letters of one script, as Latin, Cyrillic, Greek or Armenian');
  if (!/\p{L}/u.test(name)) return fault('a name with letters');
  if (/deputy\s+of/iu.test(name)) return fault('a name without “deputy of”: the house says itself who is deputy of whom');
  if (/^person\s+\d+\s*\(left\)$/iu.test(name)) return fault('another name: so the house calls whoever left it');
  return [];
}

export const nameTaken = (name: string): BadInput => ({ field: 'name', value: name, wanted: wantedOfTaken });

/** Whether somebody else on file has a name that looks like this one. */
export async function isNameTaken(manager: EntityManager, name: string, but: string): Promise<boolean> {
  const others: { name: string }[] = await manager.query('SELECT name FROM account WHERE id <> $1', [but]);
  return others.some((each) => lookAlike(each.name, name));
}
