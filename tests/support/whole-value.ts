import type { z } from 'zod';

/** The parts of a schema's definition that are walked. */
interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly items?: readonly z.ZodType[];
  readonly options?: readonly z.ZodType[];
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
  readonly in?: z.ZodType;
}

const texts = ['2026-03-04', 'P6M', 'GB', 'Europe/London', '7b4c1d5e-2f6a-4b8c-9d0e-1f2a3b4c5d6e', '0123456789abcdef'.repeat(4)];
const figures = [0.25, 0.4, 0.75, 1.5, 2.25, 12.5, 40.5, 250.5, 1, 2, 3, 12, 40, 250, 1000];

const around = (all: readonly unknown[], turn: number): readonly unknown[] => all.map((_, at) => all[(at + turn) % all.length]);

/**
 * A value of a schema in which every optional field is set, so that a field that is new there is set here too. `turn` goes through choices and figures.
 * Throws where it knows no value for a part.
 */
export function wholeValue(schema: z.ZodType, turn: number, path = 'whole'): unknown {
  const of = schema.def as unknown as Definition;
  const inner = (part: z.ZodType | undefined, key: string | number, by = turn) => {
    if (!part) throw new Error(`${path}: a ${of.type} without its part`);
    return wholeValue(part, by, `${path} ${key}`);
  };
  const firstOf = (candidates: readonly unknown[]) => {
    const found = candidates.find((each) => schema.safeParse(each).success);
    if (found === undefined) throw new Error(`${path}: no value known for a ${of.type}`);
    return found;
  };
  switch (of.type) {
    case 'object':
      return Object.fromEntries(Object.entries(of.shape ?? {}).map(([key, part], at) => [key, inner(part, key, turn + at)]));
    case 'array':
      return [inner(of.element, 0), inner(of.element, 1, turn + 1)];
    case 'tuple':
      return (of.items ?? []).map((part, at) => inner(part, at));
    case 'union':
      return inner(of.options?.[turn % of.options.length], 'choice');
    case 'optional':
    case 'default':
    case 'nullable':
    case 'readonly':
      return inner(of.innerType, '', turn);
    case 'pipe':
      return inner(of.in, '', turn);
    case 'enum':
      return firstOf(around(Object.values(of.entries ?? {}), turn));
    case 'literal':
      return firstOf(of.values ?? []);
    case 'boolean':
      return turn % 2 === 0;
    case 'number':
      return firstOf(around(figures, turn));
    case 'string':
      return firstOf([path.replaceAll(/\s+/g, ' ').trim(), ...texts]);
    default:
      throw new Error(`${path}: ${of.type} is not walked`);
  }
}
