import { type z } from 'zod';
import { type Result, ok, refuse } from './result.js';

/** One thing wrong with what was given: where, what was found, what would be right. */
export interface BadInput {
  readonly field: string;
  readonly value: unknown;
  readonly wanted: string;
}

/** Reads unknown input against a schema; every fault is named with field path, value and what would be right. */
export function readInput<S extends z.ZodType>(schema: S, input: unknown): Result<z.output<S>, readonly BadInput[]> {
  const read = schema.safeParse(input);
  if (read.success) return ok(read.data);
  const issues = read.error.issues;
  return refuse(issues.filter((issue) => !isSaidBetter(issue, issues)).flatMap((issue) => explain(issue, input)));
}

/** A whole number beyond what is counted exactly is beyond its own bound too, which is the one that says something. */
const isSaidBetter = (issue: z.core.$ZodIssue, issues: readonly z.core.$ZodIssue[]): boolean =>
  (issue.code === 'too_big' || issue.code === 'too_small') &&
  Math.abs(Number(issue.code === 'too_big' ? issue.maximum : issue.minimum)) === Number.MAX_SAFE_INTEGER &&
  issues.some((each) => each !== issue && each.code === issue.code && each.path.join('.') === issue.path.join('.'));

function explain(issue: z.core.$ZodIssue, input: unknown): BadInput[] {
  const value = valueAt(input, issue.path);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      field: fieldPath([...issue.path, key]),
      value: shown(valueAt(input, [...issue.path, key])),
      wanted: 'no such field here; check the spelling or leave it out',
    }));
  }
  return [{ field: fieldPath(issue.path), value: shown(value), wanted: wantedOf(issue, value) }];
}

function wantedOf(issue: z.core.$ZodIssue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return value === undefined ? `required: ${article(issue.expected)}` : article(issue.expected);
    case 'too_small':
      if (issue.origin === 'string') return Number(issue.minimum) <= 1 ? 'not empty' : `at least ${issue.minimum} characters`;
      if (issue.origin === 'array') return `at least ${issue.minimum} of them`;
      return `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
    case 'too_big':
      if (issue.origin === 'string') return `at most ${issue.maximum} characters`;
      if (issue.origin === 'array') return `at most ${issue.maximum} of them`;
      return `${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}`;
    case 'invalid_value':
      return `one of: ${issue.values.map((each) => JSON.stringify(each)).join(', ')}`;
    case 'invalid_union':
      return issue.message === 'Invalid input' ? 'one of the shapes described in the README' : issue.message;
    default:
      return issue.message;
  }
}

const article = (expected: string): string =>
  ({
    int: 'a whole number',
    number: 'a number',
    string: 'a text',
    array: 'a list',
    object: 'an object',
    boolean: 'true or false',
    record: 'an object',
  })[expected] ?? expected;

function fieldPath(path: readonly PropertyKey[]): string {
  const text = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`)).join('');
  return text.startsWith('.') ? text.slice(1) : text || '(whole file)';
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, step) => (typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[step] : undefined),
    input,
  );
}

/** A wrong value as a text of at most a line, for tables and cells. */
export function shownText(value: unknown): string {
  const plain = shown(value);
  return plain === null ? '' : typeof plain === 'string' ? plain : JSON.stringify(plain);
}

/** What is shown of a wrong value: never more than a line. */
function shown(value: unknown): unknown {
  if (value === undefined) return null;
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (typeof value === 'string') return value.length > 80 ? `${value.slice(0, 77)}...` : value;
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? `a list of ${value.length}` : 'an object';
  return value;
}
