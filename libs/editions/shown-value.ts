import { isObject } from './direction.js';

/** A value on file as it is shown beside its field; null: it says nothing. */
export function shownValue(value: unknown): string | null {
  if (value === undefined || value === null) return null;
  if (Array.isArray(value)) return value.map((each) => shownValue(each) ?? '').join(isFlat(value) ? ' ' : '; ') || 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || typeof value === 'number') return `${value}`;
  if (!isObject(value)) return null;
  if ('value' in value && 'unit' in value) return `${value.value as number} ${value.unit as string}`;
  return Object.entries(value)
    .map(([key, each]) => `${key} ${shownValue(each) ?? ''}`)
    .join(', ');
}

const isFlat = (values: readonly unknown[]): boolean => values.every((each) => each === null || typeof each !== 'object');
