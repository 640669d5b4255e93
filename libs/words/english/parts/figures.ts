import { groupDigits } from '#kernel';

/** Units as they end the name of a figure: how they are written, and with how many decimals. */
const units: readonly (readonly [suffix: string, unit: string, decimals: number])[] = [
  ['Newtons', 'N', 0],
  ['Share', '', 2],
  ['Deg', '°', 1],
  ['Kg', 'kg', 0],
  ['Lb', 'lb', 0],
  ['Mm', 'mm', 0],
  ['Ft', 'ft', 0],
  ['M', 'm', 1],
];

/** `limitKg` 10300: "limit: 10 300 kg". */
export function figure(name: string, value: number | null | readonly number[]): string {
  const [suffix, unit, decimals] = units.find(([each]) => name.endsWith(each)) ?? ['', '', 0];
  const called = name
    .slice(0, name.length - suffix.length)
    .replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .trim();
  const one = (each: number) => groupDigits(each, Number.isInteger(each) ? 0 : Math.max(decimals, 1));
  const figures = value === null ? 'not on file' : typeof value === 'number' ? one(value) : value.map(one).join(', ');
  return `${called}: ${figures}${value === null || unit === '' ? '' : unit === '°' ? '°' : ` ${unit}`}`;
}
