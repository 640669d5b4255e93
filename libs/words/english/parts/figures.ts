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

/** Figures that people call otherwise than their names say. */
const called: Readonly<Record<string, string>> = {
  bound: 'needed at least',
  moves: 'box moves',
  missing: 'short',
  showsAfter: 'shows after it',
  onFile: 'on file',
  byModels: 'by its models',
  mostNewtons: 'the most',
  pushNewtons: 'push',
  apartMm: 'apart',
  atMostMm: 'at most',
};

/** `limitKg` 10300: "limit: 10 300 kg". */
export function figure(name: string, value: number | null | readonly number[]): string {
  const [suffix, unit, decimals] = units.find(([each]) => name.endsWith(each)) ?? ['', '', 0];
  const words =
    called[name] ??
    name
      .slice(0, name.length - suffix.length)
      .replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
      .trim();
  const one = (each: number) => groupDigits(each, Number.isInteger(each) ? 0 : suffix === '' ? 1 : decimals);
  const figures = value === null ? 'not on file' : typeof value === 'number' ? one(value) : value.map(one).join(', ');
  return `${words}: ${figures}${value === null || unit === '' ? '' : unit === '°' ? '°' : ` ${unit}`}`;
}
