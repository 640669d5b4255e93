import { type Truck, axleLimits, axleLoads } from '../case/index.js';

interface HalfPlane {
  /** a mass + b moment <= c */
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * The greatest mass, kilograms, that the truck takes with its centre anywhere between nose and door: payload, gross and every axle limit are linear in mass and moment,
 * so the greatest mass stands in a corner of what they leave. Infinity where nothing limits it; 0 where even the empty truck is outside.
 */
export function mostPayloadKg(truck: Truck): number {
  const planes = planesOf(truck);
  const closing: HalfPlane[] = [
    { a: -1, b: 0, c: 0 },
    { a: 0, b: -1, c: 0 },
    { a: -truck.innerLengthMm, b: 1, c: 0 },
    { a: 1, b: 0, c: ceilingKg },
  ];
  const all = [...planes, ...closing];
  let most = 0;
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [p, q] = [all[i]!, all[j]!];
      const base = p.a * q.b - p.b * q.a;
      if (Math.abs(base) < 1e-12) continue;
      const mass = (p.c * q.b - p.b * q.c) / base;
      const moment = (p.a * q.c - p.c * q.a) / base;
      if (mass > most && all.every(({ a, b, c }) => a * mass + b * moment <= c + 1e-4 * (1 + Math.abs(c)))) most = mass;
    }
  return most >= ceilingKg - 1 ? Infinity : most;
}

const ceilingKg = 1e9;

function planesOf(truck: Truck): HalfPlane[] {
  const planes: HalfPlane[] = truck.payloadKg === undefined ? [] : [{ a: 1, b: 0, c: truck.payloadKg }];
  const empty = axleLoads(truck, 0, 0);
  if (!empty) return truck.maxGrossKg === undefined ? planes : [...planes, { a: 1, b: 0, c: truck.maxGrossKg }];
  // Loads and least loads are linear: value at nothing, and what a kilogram and a kilogram millimetre add.
  const [perKg, perKgMm] = [axleLoads(truck, 1, 0)!, axleLoads(truck, 0, 1)!];
  const leastAt = (axle: string, grossKg: number) => axleLimits(truck, grossKg).find((each) => each.axle === axle)?.least ?? 0;
  for (const { axle, most, least } of axleLimits(truck, empty.grossKg!)) {
    const base = empty[axle]!;
    const [a, b] = [perKg[axle]! - base, perKgMm[axle]! - base];
    if (most !== undefined) planes.push({ a, b, c: most - base });
    if (least !== undefined) {
      const perGross = leastAt(axle, empty.grossKg! + 1) - least;
      planes.push({ a: perGross - a, b: -b, c: base - least });
    }
  }
  return planes;
}
