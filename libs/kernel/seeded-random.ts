/** A seeded stream of numbers in [0, 1): equal seed, equal stream (Marsaglia's xorshift, 32 bit, mixed start). */
export function seededRandom(seed: number): () => number {
  let state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x85ebca6b) | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}
