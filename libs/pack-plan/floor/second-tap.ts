/** A tap this soon after another belongs to it: gloves bounce. */
export const bounceMs = 700;

/**
 * Tells taps that are meant from those that belong to the tap before. Each tap, meant or not, begins the time anew, so that a nervous finger marks once.
 * `at`: by any clock that does not go back, milliseconds.
 */
export function tapGate(withinMs: number = bounceMs): (at: number) => boolean {
  let last = -Infinity;
  return (at) => {
    const isMeant = at - last >= withinMs;
    last = at;
    return isMeant;
  };
}
