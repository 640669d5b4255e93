/** Carts go out and come back: a returnable asset of a type. All else is an individual asset (GS1 General Specifications, GRAI and GIAI). */
export type Gs1Kind = 'returnable' | 'individual';

/** The check digit of a number of digits: from the right weights 3, 1, 3, 1 ..., up to the next ten (GS1 General Specifications 7.9). */
export function checkDigit(digits: string): number {
  const sum = [...digits].reverse().reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/** What is wrong with a GS1 company prefix; null: nothing, or there is none. */
export const faultOfPrefix = (prefix: string): string | null =>
  prefix === '' || /^\d{4,12}$/.test(prefix) ? null : 'a GS1 company prefix of 4 to 12 digits, or nothing';

/** Characters that a serial may have in a key (GS1 character set 82); others are left out. */
const others = /[^!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]/g;

/**
 * The element string of an item without the mark FNC1: application identifier 8003 with a leading zero, thirteen digits and the serial, or 8004 with prefix and
 * serial. `type`: the number that the owner gives a model of carts, digits that fill up the prefix to twelve.
 */
export function gs1Key(prefix: string, kind: Gs1Kind, serial: string, type = '0'): string {
  const own = serial.replaceAll(others, '');
  if (kind === 'individual') return `8004${prefix}${own}`.slice(0, 34);
  const twelve = prefix + type.padStart(12 - prefix.length, '0').slice(0, Math.max(0, 12 - prefix.length));
  return `80030${twelve}${checkDigit(twelve)}${own.slice(0, 16)}`;
}
