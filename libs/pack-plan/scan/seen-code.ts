/** A code that the camera has not seen for so long is a new one when it comes back, milliseconds. */
const goneMs = 1_500;

/** Tells a code that comes into view from one that stays there: what stays is told once. `at`: by any clock that does not go back, milliseconds. */
export function seenCodes(afterMs: number = goneMs): (code: string, at: number) => boolean {
  const seen = new Map<string, number>();
  return (code, at) => {
    const before = seen.get(code) ?? -Infinity;
    seen.set(code, at);
    return at - before > afterMs;
  };
}
