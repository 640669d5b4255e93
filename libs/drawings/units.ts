/** How figures are written: metric, or feet and pounds for those who work in them. */
export type Units = 'metric' | 'imperial';

const grouped = (value: number, decimals = 0): string => {
  const [whole, part] = Math.abs(value).toFixed(decimals).split('.') as [string, string | undefined];
  const text = whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f') + (part ? `.${part}` : '');
  return value < 0 && Number(text.replace(/\u202f/g, '')) !== 0 ? `−${text}` : text;
};

// 1 lb = 0.45359237 kg and 1 ft = 0.3048 m exactly (international yard and pound, 1959).
export const formatMass = (kg: number, units: Units): string =>
  units === 'metric' ? `${grouped(kg)} kg` : `${grouped(kg / 0.45359237)} lb`;
export const formatLength = (mm: number, units: Units): string =>
  units === 'metric' ? `${grouped(mm / 1000, 2)} m` : `${grouped(mm / 304.8, 1)} ft`;
export const formatForce = (newtons: number, units: Units): string =>
  units === 'metric' ? `${grouped(newtons / 1000, 2)} kN` : `${grouped(newtons / 4.4482216152605)} lbf`;
export const formatNumber = grouped;
