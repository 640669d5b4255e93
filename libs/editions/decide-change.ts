import { canonicalJson } from '#kernel';
import type { Direction } from './direction.js';
import type { Guard } from './guards.js';

export type Thing = Readonly<Record<string, unknown>>;

/** A guarded field that is to be another; undefined: it says nothing. */
export interface FieldChange {
  readonly field: string;
  readonly was: unknown;
  readonly wanted: unknown;
  readonly direction: Direction;
}

export interface Change<T> {
  /** What holds from now on: all that is free or cautious. */
  readonly inForce: T;
  /** What waits for the safety officer. */
  readonly waits: readonly FieldChange[];
  /** Guarded fields that change at once: an edition. */
  readonly atOnce: readonly FieldChange[];
}

/** Guarded fields in which two states of a thing differ, in the order of the guard. */
export const changesOf = (guard: Guard, was: object, wanted: object): readonly FieldChange[] =>
  Object.entries(guard).flatMap(([field, compare]): FieldChange[] => {
    const [before, after] = [(was as Thing)[field], (wanted as Thing)[field]];
    if (canonicalJson(before ?? null) === canonicalJson(after ?? null)) return [];
    return [{ field, was: before, wanted: after, direction: compare(before, after) }];
  });

/** Takes a change apart into what holds at once and what waits. */
export function decideChange<T extends object>(guard: Guard, was: T, wanted: T): Change<T> {
  const changes = changesOf(guard, was, wanted);
  const waits = changes.filter((each) => each.direction === 'permissive');
  const inForce = { ...wanted } as Record<string, unknown>;
  for (const { field, was: before } of waits) {
    if (before === undefined) delete inForce[field];
    else inForce[field] = before;
  }
  return { inForce: inForce as T, waits, atOnce: changes.filter((each) => each.direction === 'cautious') };
}
