import { type Truck, axleLoads } from '#truck-pack';
import type { AxleName } from '#trade';
import type { Working } from '../contract/index.js';

/** Mass of a load and its moment about the nose. */
export interface LoadMoment {
  readonly massKg: number;
  readonly alongKgMm: number;
}

type Terms = Working['terms'];
const source = 'balance of moments; levers and tare as filed with the truck';
const kg = (what: string, value: number) => ({ what, value, unit: 'kg' });
const mm = (what: string, value: number) => ({ what, value, unit: 'mm' });

const loadTerms = ({ massKg, alongKgMm }: LoadMoment): Terms => [
  kg('load', massKg),
  mm('its centre, from the nose', massKg === 0 ? 0 : alongKgMm / massKg),
];

/** How one axle of the whole load was worked out. */
export function axleWorking(truck: Truck, load: LoadMoment, axle: AxleName): Working {
  if (truck.semiTrailer) return semiTrailerWorking(truck, truck.semiTrailer, load, axle);
  return truck.rigid ? rigidWorking(truck.rigid, load, axle) : noAxles(loadTerms(load));
}

function semiTrailerWorking(truck: Truck, semi: NonNullable<Truck['semiTrailer']>, load: LoadMoment, axle: AxleName): Working {
  const { kingpinXMm, axleGroupXMm, tareKingpinKg, tareAxleGroupKg, tractor } = semi;
  const base = loadTerms(load);
  const places = [...base, mm('kingpin, from the nose', kingpinXMm), mm('axle group, from the nose', axleGroupXMm)];
  if (axle === 'trailer')
    return {
      terms: [...places, kg('tare on the axle group', tareAxleGroupKg)],
      rule: 'Axle group = its tare + load × (centre − kingpin) / (axle group − kingpin).',
      source,
    };
  if (axle === 'kingpin')
    return {
      terms: [...places, kg('tare on the kingpin', tareKingpinKg)],
      rule: 'Kingpin = its tare + load × (axle group − centre) / (axle group − kingpin).',
      source,
    };
  if (tractor && (axle === 'drive' || axle === 'steer'))
    return tractorWorking(tractor, axleLoads(truck, load.massKg, load.alongKgMm)!.kingpinKg!, axle);
  return {
    terms: base,
    rule: tractor ? 'Trailer axles, drive axle and steer axle together.' : 'Kingpin and trailer axles together.',
    source,
  };
}

type Tractor = NonNullable<NonNullable<Truck['semiTrailer']>['tractor']>;

const tractorWorking = (tractor: Tractor, kingpinKg: number, axle: 'drive' | 'steer'): Working => ({
  terms: [
    kg('kingpin', kingpinKg),
    mm('wheelbase', tractor.wheelbaseMm),
    mm('kingpin ahead of the drive axle', tractor.kingpinAheadOfDriveMm),
    kg('tare', axle === 'steer' ? tractor.tareSteerKg : tractor.tareDriveKg),
  ],
  rule:
    axle === 'steer'
      ? 'Steer axle = its tare + kingpin × ahead / wheelbase.'
      : 'Drive axle = its tare + kingpin × (wheelbase − ahead) / wheelbase.',
  source,
});

function rigidWorking(rigid: NonNullable<Truck['rigid']>, load: LoadMoment, axle: AxleName): Working {
  const base = loadTerms(load);
  const places = [...base, mm('front axle, from the nose', rigid.frontAxleXMm), mm('rear axle, from the nose', rigid.rearAxleXMm)];
  if (axle === 'rear')
    return {
      terms: [...places, kg('tare on the rear axle', rigid.tareRearKg)],
      rule: 'Rear axle = its tare + load × (centre − front axle) / (rear axle − front axle).',
      source,
    };
  if (axle === 'front')
    return {
      terms: [...places, kg('tare on the front axle', rigid.tareFrontKg)],
      rule: 'Front axle = its tare + load × (rear axle − centre) / (rear axle − front axle).',
      source,
    };
  return { terms: base, rule: 'Front axle and rear axle together.', source };
}

const noAxles = (terms: Terms): Working => ({
  terms,
  rule: 'No axle figures are on file for this truck: its axle loads are not known.',
  source: 'none on file',
});

/** The working of the load as a whole. */
export function truckWorking(truck: Truck, load: LoadMoment): Working {
  const terms = loadTerms(load);
  if (!truck.semiTrailer && !truck.rigid) return noAxles(terms);
  return { terms, rule: 'Each axle is its tare and its share of the load by the levers; open an axle to see its terms.', source };
}
