/** 53-bit hash of a text as hex (two mixed 32-bit lanes); tells changed inputs apart, protects nothing. */
export function textHash(text: string): string {
  let low = 0xdeadbeef;
  let high = 0x41c6ce57;
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    low = Math.imul(low ^ code, 2654435761);
    high = Math.imul(high ^ code, 1597334677);
  }
  low = Math.imul(low ^ (low >>> 16), 2246822507) ^ Math.imul(high ^ (high >>> 13), 3266489909);
  high = Math.imul(high ^ (high >>> 16), 2246822507) ^ Math.imul(low ^ (low >>> 13), 3266489909);
  return (4294967296 * (2097151 & high) + (low >>> 0)).toString(16).padStart(14, '0');
}
