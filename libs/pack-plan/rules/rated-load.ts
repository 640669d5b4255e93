import { standardGravityMps2 } from '#kernel';
import type { RatedLoad } from '#tour-file';

const kilogramsPer: Record<RatedLoad['unit'], number> = {
  kg: 1,
  t: 1000,
  // International avoirdupois pound, 0.45359237 kg exactly; a short ton is 2,000 of them.
  lb: 0.45359237,
  'short ton': 907.18474,
  kN: 1000 / standardGravityMps2,
};

/** A rated load in kilograms; short ton and tonne stay apart because the unit travels with the figure. */
export const ratedKg = (load: RatedLoad): number => load.value * kilogramsPer[load.unit];
