import { groupDigits } from '#kernel';

/** How figures are written: metric, or feet and pounds for those who work in them. */
export type Units = 'metric' | 'imperial';

// 1 lb = 0.45359237 kg and 1 ft = 0.3048 m exactly (international yard and pound, 1959).
export const formatMass = (kg: number, units: Units): string =>
  units === 'metric' ? `${groupDigits(kg)} kg` : `${groupDigits(kg / 0.45359237)} lb`;
export const formatLength = (mm: number, units: Units): string =>
  units === 'metric' ? `${groupDigits(mm / 1000, 2)} m` : `${groupDigits(mm / 304.8, 1)} ft`;
/** Lengths that are laid off with a rule: gaps, distances off the middle. */
export const formatShort = (mm: number, units: Units): string =>
  units === 'metric' ? `${groupDigits(mm)} mm` : `${groupDigits(mm / 25.4, 1)} in`;
export const formatForce = (newtons: number, units: Units): string =>
  units === 'metric' ? `${groupDigits(newtons / 1000, 2)} kN` : `${groupDigits(newtons / 4.4482216152605)} lbf`;
export const formatNumber = groupDigits;

/** Below one in a hundred thousand the chance is written as more than 99.99 %. */
export const percent = (share: number): string => (share > 0.9999 ? '> 99.99 %' : `${formatNumber(share * 100, share > 0.99 ? 2 : 1)} %`);
