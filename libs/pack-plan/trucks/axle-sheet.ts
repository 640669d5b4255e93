import { type Truck, axleLimits, axleLoads } from '#truck-pack';
import type { AxleLoad, AxleStop, Placement, Working } from '../contract/index.js';

/** Names of the axles of a load for people. */
export const axleNames: Record<string, string> = {
  kingpinKg: 'kingpin',
  axleGroupKg: 'trailer axles',
  driveKg: 'drive axle',
  steerKg: 'steer axle',
  frontKg: 'front axle',
  rearKg: 'rear axle',
  grossKg: 'gross mass',
};
const toleranceKg = 1e-6;

/** Mass, and moments about the nose and about the middle of the truck. */
function momentsOf(truck: Truck, pieces: readonly Placement[]) {
  const sum = (part: (each: Placement) => number) => pieces.reduce((total, each) => total + part(each), 0);
  const massKg = sum((each) => each.massKg);
  return {
    massKg,
    alongKgMm: sum((each) => each.massKg * (each.xMm + each.alongMm / 2)),
    sideKgMm: sum((each) => each.massKg * (each.yMm + each.acrossMm / 2 - truck.innerWidthMm / 2)),
  };
}

/** What the truck carries full and after each stop but the last, held against its limits; the whole load first. */
export function axleStops(truck: Truck, placements: readonly Placement[]): readonly AxleStop[] {
  const stops = [...new Set(placements.map((each) => each.firstOff))].sort((a, b) => a - b);
  return [null, ...stops.slice(0, -1)].map((stop) => {
    const still = stop === null ? placements : placements.filter((each) => each.firstOff > stop);
    const { massKg, alongKgMm, sideKgMm } = momentsOf(truck, still);
    const loads = axleLoads(truck, massKg, alongKgMm) ?? {};
    const limits = new Map(axleLimits(truck, loads.grossKg ?? massKg).map((each) => [each.axle, each]));
    const sideOffsetMm = massKg === 0 ? 0 : sideKgMm / massKg;
    return {
      off: stop === null ? null : whatComesOff(placements.filter((each) => each.firstOff === stop)),
      massKg,
      sideOffsetMm,
      sideLimitMm: truck.maxSideOffsetMm ?? null,
      loads: Object.entries(loads).map(([axle, loadKg]) => {
        const { most = null, least = null } = limits.get(axle) ?? {};
        const verdict =
          most !== null && loadKg > most + toleranceKg
            ? ('over' as const)
            : least !== null && loadKg < least - toleranceKg
              ? ('too light' as const)
              : most === null && least === null
                ? ('no limit on file' as const)
                : ('within' as const);
        return { axle: axleNames[axle]!, loadKg, limitKg: most, leastKg: least, verdict };
      }),
    };
  });
}

const whatComesOff = (pieces: readonly Placement[]): string =>
  [...new Set(pieces.map((each) => (each.label.includes(each.id) ? (each.group ?? each.label) : each.label)))].join(' and ');

/** The axles of the whole load, each with its working and the most it carries after any stop. */
export function axlesOf(truck: Truck, placements: readonly Placement[], stops: readonly AxleStop[]): readonly AxleLoad[] {
  return stops[0]!.loads.map(({ axle, loadKg, limitKg }) => ({
    axle,
    loadKg,
    limitKg,
    share: limitKg === null ? null : loadKg / limitKg,
    worstAfterStopsKg: Math.max(...stops.map((stop) => stop.loads.find((each) => each.axle === axle)!.loadKg)),
    working: workingOf(truck, placements, axle),
  }));
}

const levers = 'balance of moments; levers and tare as filed with the truck';

function loadTerms(truck: Truck, placements: readonly Placement[]): Working['terms'] {
  const { massKg, alongKgMm } = momentsOf(truck, placements);
  return [
    { what: 'load', value: massKg, unit: 'kg' },
    { what: 'its centre, from the nose', value: massKg === 0 ? 0 : alongKgMm / massKg, unit: 'mm' },
  ];
}

/** How one axle of the whole load was worked out. */
function workingOf(truck: Truck, placements: readonly Placement[], axle: string): Working {
  const base = loadTerms(truck, placements);
  const kg = (what: string, value: number) => ({ what, value, unit: 'kg' });
  const mm = (what: string, value: number) => ({ what, value, unit: 'mm' });
  const { semiTrailer, rigid } = truck;
  if (semiTrailer) {
    const { kingpinXMm, axleGroupXMm, tareKingpinKg, tareAxleGroupKg, tractor } = semiTrailer;
    const places = [...base, mm('kingpin, from the nose', kingpinXMm), mm('axle group, from the nose', axleGroupXMm)];
    const kingpinKg = () => axleLoads(truck, momentsOf(truck, placements).massKg, momentsOf(truck, placements).alongKgMm)!.kingpinKg!;
    if (axle === axleNames.axleGroupKg)
      return {
        terms: [...places, kg('tare on the axle group', tareAxleGroupKg)],
        rule: 'Axle group = its tare + load × (centre − kingpin) / (axle group − kingpin).',
        source: levers,
      };
    if (axle === axleNames.kingpinKg)
      return {
        terms: [...places, kg('tare on the kingpin', tareKingpinKg)],
        rule: 'Kingpin = its tare + load × (axle group − centre) / (axle group − kingpin).',
        source: levers,
      };
    if (tractor && (axle === axleNames.driveKg || axle === axleNames.steerKg)) {
      const steers = axle === axleNames.steerKg;
      return {
        terms: [
          kg('kingpin', kingpinKg()),
          mm('wheelbase', tractor.wheelbaseMm),
          mm('kingpin ahead of the drive axle', tractor.kingpinAheadOfDriveMm),
          kg('tare', steers ? tractor.tareSteerKg : tractor.tareDriveKg),
        ],
        rule: steers
          ? 'Steer axle = its tare + kingpin × ahead / wheelbase.'
          : 'Drive axle = its tare + kingpin × (wheelbase − ahead) / wheelbase.',
        source: levers,
      };
    }
    return {
      terms: base,
      rule: tractor ? 'Trailer axles, drive axle and steer axle together.' : 'Kingpin and trailer axles together.',
      source: levers,
    };
  }
  if (rigid) {
    const places = [...base, mm('front axle, from the nose', rigid.frontAxleXMm), mm('rear axle, from the nose', rigid.rearAxleXMm)];
    if (axle === axleNames.rearKg)
      return {
        terms: [...places, kg('tare on the rear axle', rigid.tareRearKg)],
        rule: 'Rear axle = its tare + load × (centre − front axle) / (rear axle − front axle).',
        source: levers,
      };
    if (axle === axleNames.frontKg)
      return {
        terms: [...places, kg('tare on the front axle', rigid.tareFrontKg)],
        rule: 'Front axle = its tare + load × (rear axle − centre) / (rear axle − front axle).',
        source: levers,
      };
    return { terms: base, rule: 'Front axle and rear axle together.', source: levers };
  }
  return noAxles(base);
}

const noAxles = (terms: Working['terms']): Working => ({
  terms,
  rule: 'No axle figures are on file for this truck: its axle loads are not known.',
  source: 'none on file',
});

/** The working of the load as a whole. */
export function truckWorking(truck: Truck, placements: readonly Placement[]): Working {
  const terms = loadTerms(truck, placements);
  if (!truck.semiTrailer && !truck.rigid) return noAxles(terms);
  return {
    terms,
    rule: 'Each axle is its tare and its share of the load by the levers; open an axle to see its terms.',
    source: levers,
  };
}
