import type { Truck } from './truck-case.js';

/** Kilograms on each axle or group, tare included; names as in a truck-pack result. */
export type AxleLoads = Readonly<Record<string, number>>;

export interface AxleLimit {
  readonly axle: string;
  readonly most?: number;
  readonly least?: number;
}

/** Loads by levers from the mass and its moment about the nose (kg x mm). Semi-trailer: kingpin, axle group, drive, steer, gross. Rigid: front, rear, gross. */
export function axleLoads(truck: Pick<Truck, 'semiTrailer' | 'rigid'>, massKg: number, momentKgMm: number): AxleLoads | undefined {
  const { semiTrailer, rigid } = truck;
  if (semiTrailer) {
    const { kingpinXMm, axleGroupXMm, tareKingpinKg, tareAxleGroupKg, tractor } = semiTrailer;
    const onAxles = (momentKgMm - massKg * kingpinXMm) / (axleGroupXMm - kingpinXMm);
    const axleGroupKg = tareAxleGroupKg + onAxles;
    const kingpinKg = tareKingpinKg + massKg - onAxles;
    if (!tractor) return { kingpinKg, axleGroupKg, grossKg: kingpinKg + axleGroupKg };
    const steerShare = tractor.kingpinAheadOfDriveMm / tractor.wheelbaseMm;
    const steerKg = tractor.tareSteerKg + kingpinKg * steerShare;
    const driveKg = tractor.tareDriveKg + kingpinKg * (1 - steerShare);
    return { kingpinKg, axleGroupKg, driveKg, steerKg, grossKg: axleGroupKg + driveKg + steerKg };
  }
  if (rigid) {
    const rearKg = rigid.tareRearKg + (momentKgMm - massKg * rigid.frontAxleXMm) / (rigid.rearAxleXMm - rigid.frontAxleXMm);
    const frontKg = rigid.tareFrontKg + rigid.tareRearKg + massKg - rearKg;
    return { frontKg, rearKg, grossKg: frontKg + rearKg };
  }
  return undefined;
}

/** What each axle may carry at most and must carry at least, at a gross mass; `least` also keeps an axle from lifting off. */
export function axleLimits(truck: Pick<Truck, 'semiTrailer' | 'rigid' | 'maxGrossKg'>, grossKg: number): readonly AxleLimit[] {
  const gross: AxleLimit[] = truck.maxGrossKg === undefined ? [] : [{ axle: 'grossKg', most: truck.maxGrossKg }];
  const { semiTrailer, rigid } = truck;
  if (semiTrailer) {
    const { tractor } = semiTrailer;
    return [
      ...gross,
      { axle: 'kingpinKg', least: 0, ...(semiTrailer.maxKingpinKg === undefined ? {} : { most: semiTrailer.maxKingpinKg }) },
      ...(semiTrailer.maxAxleGroupKg === undefined ? [] : [{ axle: 'axleGroupKg', most: semiTrailer.maxAxleGroupKg }]),
      ...(tractor
        ? [
            {
              axle: 'driveKg',
              ...(tractor.maxDriveKg === undefined ? {} : { most: tractor.maxDriveKg }),
              ...(tractor.minDriveShareOfGross === undefined ? {} : { least: tractor.minDriveShareOfGross * grossKg }),
            },
            {
              axle: 'steerKg',
              ...(tractor.maxSteerKg === undefined ? {} : { most: tractor.maxSteerKg }),
              ...(tractor.minSteerShareOfGross === undefined ? {} : { least: tractor.minSteerShareOfGross * grossKg }),
            },
          ]
        : []),
    ];
  }
  if (rigid)
    return [
      ...gross,
      {
        axle: 'frontKg',
        ...(rigid.maxFrontKg === undefined ? {} : { most: rigid.maxFrontKg }),
        ...(rigid.minFrontShareOfGross === undefined ? {} : { least: rigid.minFrontShareOfGross * grossKg }),
      },
      ...(rigid.maxRearKg === undefined ? [] : [{ axle: 'rearKg', most: rigid.maxRearKg }]),
    ];
  return gross;
}

/** Axles that carry more than their limit while the truck is empty: no load behind them makes that right. */
export function overWhenEmpty(
  truck: Pick<Truck, 'semiTrailer' | 'rigid' | 'maxGrossKg'>,
): readonly { readonly axle: string; readonly loadKg: number; readonly most: number }[] {
  const loads = axleLoads(truck, 0, 0);
  if (!loads) return [];
  return axleLimits(truck, loads.grossKg!).flatMap(({ axle, most }) =>
    most !== undefined && loads[axle]! > most ? [{ axle, loadKg: loads[axle]!, most }] : [],
  );
}

const toleranceKg = 1e-6;

/** How many kilograms the loads are outside their limits, summed; 0 when all are kept. */
export function outsideLimitsKg(truck: Truck, massKg: number, momentKgMm: number): number {
  let outside = truck.payloadKg === undefined ? 0 : Math.max(0, massKg - truck.payloadKg - toleranceKg);
  const loads = axleLoads(truck, massKg, momentKgMm);
  if (!loads) return outside + (truck.maxGrossKg === undefined ? 0 : Math.max(0, massKg - truck.maxGrossKg - toleranceKg));
  for (const { axle, most, least } of axleLimits(truck, loads.grossKg!)) {
    const load = loads[axle]!;
    if (most !== undefined) outside += Math.max(0, load - most - toleranceKg);
    if (least !== undefined) outside += Math.max(0, least - load - toleranceKg);
  }
  return outside;
}

/** W = 500 (L N / (N - 1) + 12 N + 36) lb to the nearest 500 lb, exact ties down: 23 U.S.C. 127(a)(2). `spanFt` between the extreme axles of a group of N. */
export function bridgeFormulaLb(spanFt: number, axles: number): number {
  const raw = 500 * ((spanFt * axles) / (axles - 1) + 12 * axles + 36);
  return Math.ceil(raw / 500 - 0.5) * 500;
}
