/** How a class of hoisting makes a load jump: factor = least + perSpeedSPerM x speed (m/s). The figures are data of a regime. */
export interface HoistingClass {
  readonly least: number;
  readonly perSpeedSPerM: number;
}

/** Factor on the load of a hoist that lifts at `speedMps`. Throws for a speed below zero or NaN. */
export function hoistingFactor(of: HoistingClass, speedMps: number): number {
  if (!(speedMps >= 0)) throw new RangeError(`a speed of zero or more in m/s, not ${speedMps}`);
  return of.least + of.perSpeedSPerM * speedMps;
}
