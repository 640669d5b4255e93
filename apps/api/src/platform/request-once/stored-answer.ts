/** What a unit of work gave, as JSON: instants are marked so that they come back as instants; nothing else has a class. */
export function writeAnswer(value: unknown): string {
  return JSON.stringify({ value: written(value) });
}

export function readAnswer(stored: object | null): unknown {
  return read((stored as { value?: unknown } | null)?.value);
}

const mark = '$instant';

function written(value: unknown): unknown {
  if (value instanceof Date) return { [mark]: value.toISOString() };
  if (Array.isArray(value)) return value.map(written);
  if (value === null || typeof value !== 'object') return value;
  if (value instanceof Map || value instanceof Set || Buffer.isBuffer(value))
    throw new Error(`an answer holds a ${value.constructor.name}, which cannot be kept: give back a list or an object`);
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, written(each)]));
}

function read(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(read);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value);
  if (entries.length === 1 && entries[0]![0] === mark) return new Date(String(entries[0]![1]));
  return Object.fromEntries(entries.map(([key, each]) => [key, read(each)]));
}
