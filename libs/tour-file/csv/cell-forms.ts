/** How a value of a model is written in one cell and read back; `hint` tells people the form by an example. */
export interface CellForm {
  readonly hint: string;
  readonly write: (value: never) => string;
  /** undefined when the text is not of this form. */
  readonly read: (text: string) => unknown;
}

const parts = (text: string, separator: string): string[] =>
  text
    .split(separator)
    .map((each) => each.trim())
    .filter((each) => each !== '');

/** With a point, as programs write it with a power of ten too (1e-7), or with a comma where no thousand can be meant: 62,5 and 0,125, but not 1,250. */
export const cellNumber = (text: string): number | undefined =>
  /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)
    ? Number(text)
    : /^[+-]?(0,\d+|\d+,(\d{1,2}|\d{4,}))$/.test(text)
      ? Number(text.replace(',', '.'))
      : undefined;
const number = cellNumber;

/** All of them, or undefined when one is not of the form. */
function all<T>(texts: readonly string[], read: (text: string) => T | undefined): T[] | undefined {
  const values = texts.map(read);
  return values.some((each) => each === undefined) ? undefined : (values as T[]);
}

const pinUse = /^(front link|rear link|lock): (\d+) (.+), (box|cart|trunk)$/;
const countOf = /^(\d+) (.+)$/;
const rating = /^([\d.]+|\d+,\d+) (kg|t|short ton|lb|kN)(?:, (.+))?$/;

const defectParts = ['part', 'what', 'dangerousBy', 'repair', 'remediedOn'] as const;

const escaped = (text: string): string => text.replaceAll(/[\\;|]/g, (sign) => `\\${sign}`);
const unescaped = (text: string): string => text.replaceAll(/\\([\\;|])/g, '$1');

/** Pieces between separators that have no backslash before them, as they are written. */
function splitAt(text: string, separator: string): string[] {
  const pieces = [''];
  for (const sign of text.match(/\\[\\;|]|[\s\S]/g) ?? []) {
    if (sign === separator) pieces.push('');
    else pieces[pieces.length - 1] += sign;
  }
  return pieces.map((each) => each.trim());
}

/** `part | defect`, then what more is said of it. */
function readDefect(text: string): Readonly<Record<string, string>> | undefined {
  const cells = splitAt(text, '|').map(unescaped);
  if (cells.length < 2 || cells.length > defectParts.length) return undefined;
  return Object.fromEntries(defectParts.flatMap((part, index) => (cells[index] ? [[part, cells[index]]] : [])));
}

export const cellForms = {
  text: { hint: 'text', write: (value: string) => value, read: (text) => text },
  number: {
    hint: 'a number, with a point or a comma for decimals and nothing between thousands',
    write: (value: number) => String(value),
    read: number,
  },
  'yes or no': {
    hint: 'yes or no',
    write: (value: boolean) => (value ? 'yes' : 'no'),
    read: (text) => (text === 'yes' ? true : text === 'no' ? false : undefined),
  },
  outcome: {
    hint: 'pass or fail',
    write: (value: string) => value,
    read: (text) => ({ passed: 'pass', failed: 'fail' })[text.toLowerCase()] ?? text.toLowerCase(),
  },
  numbers: {
    hint: 'numbers with blanks between: 0 0.5 1 2',
    write: (value: readonly number[]) => value.join(' '),
    read: (text) => all(text.split(/\s+/), number),
  },
  names: {
    hint: 'names with ; between',
    write: (value: readonly string[]) => value.join('; '),
    read: (text) => parts(text, ';'),
  },
  words: {
    hint: 'words with blanks between: P6M P12M',
    write: (value: readonly string[]) => value.join(' '),
    read: (text) => text.split(/\s+/).filter((each) => each !== ''),
  },
  defects: {
    hint: 'none, or part | defect | could be a danger by | repair needed | put right on; next. A | or ; of a text has \\ before it',
    write: (value: readonly Readonly<Record<string, string | undefined>>[]) =>
      value.length === 0 ? 'none' : value.map((each) => defectParts.map((part) => escaped(each[part] ?? '')).join(' | ')).join('; '),
    read: (text) => (text === 'none' ? [] : all(splitAt(text, ';'), readDefect)),
  },
  'rated load': {
    hint: 'value, unit (kg, t, short ton, lb, kN), then the source: 3.25 t, maker’s certificate',
    write: (value: { value: number; unit: string; source?: string }) =>
      `${value.value} ${value.unit}${value.source ? `, ${value.source}` : ''}`,
    read: (text) => {
      const [, value, unit, source] = rating.exec(text) ?? [];
      return value === undefined || number(value) === undefined ? undefined : { value: number(value), unit, ...(source ? { source } : {}) };
    },
  },
  pins: {
    hint: 'role: count pin, travels with; next: front link: 2 Link pin 12, box; lock: 1 Lock pin 8, box',
    write: (value: readonly { role: string; count: number; pin: string; stowed: string }[]) =>
      value.map((each) => `${each.role}: ${each.count} ${each.pin}, ${each.stowed}`).join('; '),
    read: (text) =>
      all(parts(text, ';'), (each) => {
        const [, role, count, pin, stowed] = pinUse.exec(each) ?? [];
        return role === undefined ? undefined : { role, pin, count: Number(count), stowed };
      }),
  },
  'count and pin': {
    hint: 'count and pin: 4 Base pin 12',
    write: (value: { count: number; pin: string }) => `${value.count} ${value.pin}`,
    read: (text) => {
      const [, count, pin] = countOf.exec(text) ?? [];
      return pin === undefined ? undefined : { pin, count: Number(count) };
    },
  },
  'counts and models': {
    hint: 'count and model; next: 1 Handset; 2 Control cable 20 m',
    write: (value: readonly { count: number; model: string }[]) => value.map((each) => `${each.count} ${each.model}`).join('; '),
    read: (text) =>
      all(parts(text, ';'), (each) => {
        const [, count, model] = countOf.exec(each) ?? [];
        return model === undefined ? undefined : { model, count: Number(count) };
      }),
  },
  holes: {
    hint: 'hole, mm behind, mm above; next: A -160 130; B -85 130',
    write: (value: readonly { hole: string; behindMm: number; aboveMm: number }[]) =>
      value.map((each) => `${each.hole} ${each.behindMm} ${each.aboveMm}`).join('; '),
    read: (text) =>
      all(parts(text, ';'), (each) => {
        const words = each.split(/\s+/);
        const [behindMm, aboveMm] = words.slice(-2).map(number);
        if (words.length < 3 || behindMm === undefined || aboveMm === undefined) return undefined;
        return { hole: words.slice(0, -2).join(' '), behindMm, aboveMm };
      }),
  },
  'blocked places': {
    hint: 'x y z length width height in mm; next: 0 0 0 300 2480 400',
    write: (value: readonly Record<string, number>[]) =>
      value.map((each) => [each.xMm, each.yMm, each.zMm, each.lengthMm, each.widthMm, each.heightMm].join(' ')).join('; '),
    read: (text) =>
      all(parts(text, ';'), (each) => {
        const six = all(each.split(/\s+/), number);
        if (six?.length !== 6) return undefined;
        const [xMm, yMm, zMm, lengthMm, widthMm, heightMm] = six;
        return { xMm, yMm, zMm, lengthMm, widthMm, heightMm };
      }),
  },
  'axle places': {
    hint: 'group and mm from the nose, front axle first: steer -2100; drive 1000; trailer 8000; trailer 9300',
    write: (value: readonly { group: string; xMm: number }[]) => value.map((each) => `${each.group} ${each.xMm}`).join('; '),
    read: (text) =>
      all(parts(text, ';'), (each) => {
        const [group, at, ...rest] = each.split(/\s+/);
        const xMm = number(at ?? '');
        return xMm === undefined || rest.length > 0 ? undefined : { group, xMm };
      }),
  },
} satisfies Record<string, CellForm>;

export type CellFormName = keyof typeof cellForms;
