/** What was typed and not sent, kept on this device for the person who typed it. */

const prefix = 'cartwright-draft';
const daysKept = 14;
const mostCharacters = 200_000;

export interface Draft {
  readonly values: unknown;
  /** Milliseconds since 1970. */
  readonly at: number;
}

const nameOf = (key: string): string => `${prefix} ${localStorage.getItem('cartwright-person') ?? 'nobody'} ${key}`;

/** A device that keeps nothing (a full one, a private window) loses a draft and nothing else. */
function quietly<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

export function keepDraft(key: string, values: unknown): void {
  const text = JSON.stringify({ values, at: Date.now() } satisfies Draft);
  if (text.length <= mostCharacters) quietly(() => localStorage.setItem(nameOf(key), text), undefined);
}

export const dropDraft = (key: string): void => quietly(() => localStorage.removeItem(nameOf(key)), undefined);

/** Older ones are given up. */
export function draftOf(key: string): Draft | undefined {
  const kept = quietly(() => JSON.parse(localStorage.getItem(nameOf(key)) ?? 'null') as Draft | null, null);
  if (kept && kept.at > Date.now() - daysKept * 86_400_000) return kept;
  if (kept) dropDraft(key);
  return undefined;
}
