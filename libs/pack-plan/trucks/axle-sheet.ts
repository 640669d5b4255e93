import { type Truck, axleLimits, axleLoads } from '#truck-pack';
import type { AxleName } from '#trade';
import type { Words } from '#words';
import { type AxleInRow, type AxleLoad, type AxleStop, type Placement, type TruckRow, groupOf } from '../contract/index.js';
import { axleWorking } from './axle-working.js';

/** Axles by the figures of the packing engine. */
export const axleOf: Readonly<Record<string, AxleName>> = {
  kingpinKg: 'kingpin',
  axleGroupKg: 'trailer',
  driveKg: 'drive',
  steerKg: 'steer',
  frontKg: 'front',
  rearKg: 'rear',
  grossKg: 'gross',
};
const toleranceKg = 1e-6;

/** Mass, and moments about the nose and about the middle of the truck. */
export function momentsOf(truck: Truck, pieces: readonly Placement[]) {
  const sum = (part: (each: Placement) => number) => pieces.reduce((total, each) => total + part(each), 0);
  const massKg = sum((each) => each.massKg);
  return {
    massKg,
    alongKgMm: sum((each) => each.massKg * (each.xMm + each.alongMm / 2)),
    sideKgMm: sum((each) => each.massKg * (each.yMm + each.acrossMm / 2 - truck.innerWidthMm / 2)),
  };
}

/** What the truck carries full and after each stop but the last, held against its limits; the whole load first. */
export function axleStops(truck: Truck, placements: readonly Placement[], words: Words): readonly AxleStop[] {
  const stops = [...new Set(placements.map((each) => each.firstOff))].sort((a, b) => a - b);
  return [null, ...stops.slice(0, -1)].map((stop) => {
    const still = stop === null ? placements : placements.filter((each) => each.firstOff > stop);
    const { massKg, sideKgMm } = momentsOf(truck, still);
    const sideOffsetMm = massKg === 0 ? 0 : sideKgMm / massKg;
    return {
      off: stop === null ? null : whatComesOff(placements.filter((each) => each.firstOff === stop)),
      massKg,
      sideOffsetMm,
      sideLimitMm: truck.maxSideOffsetMm ?? null,
      loads: judgedLoads(truck, still, words),
    };
  });
}

/** What is on each axle with these pieces in the truck, held against its limits. */
function judgedLoads(truck: Truck, pieces: readonly Placement[], words: Words): AxleStop['loads'] {
  const { massKg, alongKgMm } = momentsOf(truck, pieces);
  const loads = axleLoads(truck, massKg, alongKgMm) ?? {};
  const limits = new Map(axleLimits(truck, loads.grossKg ?? massKg).map((each) => [each.axle, each]));
  return Object.entries(loads).flatMap(([axle, loadKg]) => {
    const { most = null, least = null } = limits.get(axle) ?? {};
    const fact = axleOf[axle];
    return fact ? [{ axle: words.axles[fact], loadKg, limitKg: most, leastKg: least, verdict: verdictOf(loadKg, most, least), fact }] : [];
  });
}

/** What is on each axle as the truck is loaded: after the first row, after the second, and so on. */
export function axlesAfterRows(
  truck: Truck,
  placements: readonly Placement[],
  rows: readonly TruckRow[],
  words: Words,
): readonly (readonly AxleInRow[])[] {
  return rows.map((_row, index) => {
    const inside = new Set(rows.slice(0, index + 1).flatMap((each) => each.pieces));
    const loads = judgedLoads(
      truck,
      placements.filter((each) => inside.has(each.id)),
      words,
    );
    return loads.map(({ fact, loadKg, limitKg }) => ({ axle: fact, loadKg, limitKg }));
  });
}

function verdictOf(loadKg: number, most: number | null, least: number | null): AxleStop['loads'][number]['verdict'] {
  if (most !== null && loadKg > most + toleranceKg) return 'over';
  if (least !== null && loadKg < least - toleranceKg) return 'too light';
  return most === null && least === null ? 'no limit on file' : 'within';
}

const whatComesOff = (pieces: readonly Placement[]): string =>
  [...new Set(pieces.map((each) => (each.fact.isCase ? groupOf(each) : each.label)))].join(' and ');

/** The axles of the whole load, each with its working and the most it carries after any stop. */
export function axlesOf(truck: Truck, placements: readonly Placement[], stops: readonly AxleStop[]): readonly AxleLoad[] {
  return stops[0]!.loads.map(({ axle, loadKg, limitKg, fact }) => ({
    axle,
    loadKg,
    limitKg,
    share: limitKg === null ? null : loadKg / limitKg,
    worstAfterStopsKg: Math.max(...stops.map((stop) => stop.loads.find((each) => each.fact === fact)!.loadKg)),
    working: axleWorking(truck, momentsOf(truck, placements), fact),
    fact,
  }));
}
