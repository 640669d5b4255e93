import type { AxleName } from '#trade';

/** Axles as plans up to version 0.1 named them. */
export const axleNames: Readonly<Record<string, AxleName>> = {
  kingpin: 'kingpin',
  'trailer axles': 'trailer',
  'drive axle': 'drive',
  'steer axle': 'steer',
  'front axle': 'front',
  'rear axle': 'rear',
  'gross mass': 'gross',
};
