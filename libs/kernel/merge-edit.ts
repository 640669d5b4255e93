import { canonicalJson } from './canonical-json.js';

/** A field that two people gave different values, and what stands on file now. */
export interface EditClash {
  readonly field: string;
  readonly yours: unknown;
  readonly onFile: unknown;
}

type Fields = Readonly<Record<string, unknown>>;

const same = (one: unknown, other: unknown): boolean => canonicalJson(one ?? null) === canonicalJson(other ?? null);

/**
 * An edit that somebody began on `was` and gives as `wanted`, laid over what others made of it meanwhile (`now`), field by field: what only one of
 * them changed holds; what both changed to different values is a clash, and nothing is decided.
 */
export function mergeEdit<T extends Fields>(
  was: Fields,
  wanted: T,
  now: Fields,
): { readonly merged: T } | { readonly clashes: readonly EditClash[] } {
  const names = [...new Set([...Object.keys(wanted), ...Object.keys(now), ...Object.keys(was)])];
  const clashes = names
    .filter((name) => !same(wanted[name], was[name]) && !same(now[name], was[name]) && !same(wanted[name], now[name]))
    .map((field) => ({ field, yours: wanted[field], onFile: now[field] }));
  if (clashes.length > 0) return { clashes };
  const merged = names.map((name) => [name, same(wanted[name], was[name]) ? now[name] : wanted[name]] as const);
  return { merged: Object.fromEntries(merged.filter(([, value]) => value !== undefined)) as T };
}
