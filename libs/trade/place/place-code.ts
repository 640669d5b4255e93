import { countryCodes } from './country-codes.js';

const known = new Set(countryCodes);

/** What people wrote where a code was wanted, and the code of the law that holds there. Lower case. */
const written: Readonly<Record<string, string>> = {
  uk: 'GB',
  'great britain': 'GB',
  britain: 'GB',
  england: 'GB',
  scotland: 'GB',
  wales: 'GB',
  usa: 'US',
  'u.s.a.': 'US',
  'u.s.': 'US',
  'united states of america': 'US',
  deutschland: 'DE',
  österreich: 'AT',
  schweiz: 'CH',
  suisse: 'CH',
  holland: 'NL',
  'the netherlands': 'NL',
  eire: 'IE',
  'republic of ireland': 'IE',
  españa: 'ES',
  italia: 'IT',
  'czech republic': 'CZ',
  uae: 'AE',
};

let names: ReadonlyMap<string, string> | undefined;

/** English names of all countries, lower case, with their codes. */
function codesByName(): ReadonlyMap<string, string> {
  names ??= new Map([...countryCodes.map((code) => [nameOf(code).toLowerCase(), code] as const), ...Object.entries(written)]);
  return names;
}

const nameOf = (country: string, language = 'en'): string => new Intl.DisplayNames([language], { type: 'region' }).of(country) ?? country;

/** "GB (United Kingdom)", "US-CA (part of United States)"; what is no code is given back as it is. */
export function placeName(code: string, language = 'en'): string {
  const [country = '', part] = code.split('-');
  if (!isPlaceCode(code)) return code;
  return part === undefined ? `${code} (${nameOf(country, language)})` : `${code} (part of ${nameOf(country, language)})`;
}

/** A country by its code of ISO 3166-1 alpha-2, or a part of one by its code of ISO 3166-2. */
export function isPlaceCode(text: string): boolean {
  const match = /^([A-Z]{2})(-[A-Z0-9]{1,3})?$/.exec(text);
  return match !== null && known.has(match[1] ?? '');
}

/** The country of a place. */
export const countryOf = (code: string): string => code.slice(0, 2);

/** A part of a country, by its own code. */
export const isPartOfCountry = (code: string): boolean => code.includes('-');

/** The code for what was written before there was a list: a code in small letters, a name of a country, a usual short form. Anything else stays as it is. */
export function placeCodeOf(text: string): string {
  const typed = text.trim();
  if (isPlaceCode(typed)) return typed;
  return codesByName().get(typed.toLowerCase()) ?? (isPlaceCode(typed.toUpperCase()) ? typed.toUpperCase() : text);
}

/** The code whose name, usual form or letters need the fewest changes to become what was written. */
export function nearestPlace(text: string): string {
  const typed = text.trim().toLowerCase();
  const country = /^([a-z]{2})-/.exec(typed)?.[1]?.toUpperCase() ?? '';
  if (known.has(country)) return country;
  const candidates = [...codesByName(), ...countryCodes.map((code) => [code.toLowerCase(), code] as const)];
  const ranked = candidates.map(([name, code]) => ({ code, share: editsBetween(typed, name) / Math.max(typed.length, name.length, 1) }));
  return ranked.reduce((best, each) => (each.share < best.share ? each : best)).code;
}

/** Letters put in, left out, changed or swapped with their neighbour (optimal string alignment). */
function editsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, index) => index)];
  const at = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  for (let i = 1; i <= a.length; i++) {
    rows.push([i]);
    for (let j = 1; j <= b.length; j++) {
      const change = at(i - 1, j - 1) + Number(a[i - 1] !== b[j - 1]);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      rows[i]?.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, change, isSwap ? at(i - 2, j - 2) + 1 : Infinity));
    }
  }
  return at(a.length, b.length);
}

/** A rule of a country holds in all its parts; a rule of a part holds there alone. */
export const holdsAt = (rule: string, place: string): boolean => place === rule || place.startsWith(`${rule}-`);
