/** A pull in the plane of the stage plan; direction null where there is none. */
export interface Pull {
  readonly newtons: number;
  readonly directionDeg: number | null;
}

/** Up to so many pulls all that can act together are tried; beyond, they count as if all pulled the same way. */
const mostTried = 10;

/** Of pulls each of which may act or not the greatest sum that any of them make: two that pull apart are never taken to hold one another. */
export function greatestOf(pulls: readonly Pull[]): Pull {
  const real = pulls.filter((each) => each.newtons > 0 && each.directionDeg !== null);
  if (real.length === 0) return { newtons: 0, directionDeg: null };
  const parts = real.map(({ newtons, directionDeg }) => {
    const turn = (directionDeg! * Math.PI) / 180;
    return { x: newtons * Math.cos(turn), y: newtons * Math.sin(turn) };
  });
  if (real.length > mostTried) return { newtons: real.reduce((sum, each) => sum + each.newtons, 0), directionDeg: real[0]!.directionDeg };
  const sums = Array.from({ length: 2 ** real.length - 1 }, (_, index) =>
    parts.reduce((sum, part, bit) => (((index + 1) >> bit) & 1 ? { x: sum.x + part.x, y: sum.y + part.y } : sum), { x: 0, y: 0 }),
  );
  const most = sums.reduce((a, b) => (Math.hypot(b.x, b.y) > Math.hypot(a.x, a.y) + 1e-9 ? b : a));
  return { newtons: Math.hypot(most.x, most.y), directionDeg: (Math.atan2(most.y, most.x) * 180) / Math.PI };
}
