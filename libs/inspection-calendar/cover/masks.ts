/** A set of small numbers as bits, 32 a word. */
export type Mask = Int32Array;

export const makeMask = (size: number): Mask => new Int32Array(Math.max(1, (size + 31) >> 5));

export function addTo(mask: Mask, at: number): void {
  mask[at >> 5]! |= 1 << (at & 31);
}

export function maskOf(days: readonly number[], size: number): Mask {
  const mask = makeMask(size);
  for (const day of days) addTo(mask, day);
  return mask;
}

export const has = (mask: Mask, at: number): boolean => (mask[at >> 5]! & (1 << (at & 31))) !== 0;

export const isWithin = (mask: Mask, other: Mask): boolean => mask.every((word, index) => (word & ~other[index]!) === 0);

/** Those of `mask` that are not in `barred`, lowest first. */
export function listOf(mask: Mask, barred: Mask): number[] {
  const found: number[] = [];
  mask.forEach((word, index) => {
    for (let left = word & ~barred[index]!; left !== 0; left &= left - 1) found.push((index << 5) + 31 - Math.clz32(left & -left));
  });
  return found;
}

/** The greatest of `mask` that is no greater than `to` and not in `barred`; -1: none. */
export function lastOf(mask: Mask, barred: Mask, to: number): number {
  for (let word = to >> 5, upTo = -1 >>> (31 - (to & 31)); word >= 0; word--, upTo = -1) {
    const left = mask[word]! & ~barred[word]! & upTo;
    if (left !== 0) return (word << 5) + 31 - Math.clz32(left);
  }
  return -1;
}

export function withOne(mask: Mask, at: number): Mask {
  const more = mask.slice();
  addTo(more, at);
  return more;
}
