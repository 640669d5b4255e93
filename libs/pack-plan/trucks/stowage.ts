import type { Truck } from '#truck-pack';
import { type Placement, type StowageFigures, type TruckRow, type Working, groupOf } from '../contract/index.js';
import { momentsOf } from './axle-sheet.js';

const metreMm = 1000;
/** More than this in one drawing nobody follows. */
const mostPiecesPerStep = 4;

/** Steps of stowing: a few pieces that go in one after another side by side or on top, before what stands nearer the door. */
export function stowingSteps(placements: readonly Placement[], loadingOrder: readonly string[]): readonly TruckRow[] {
  const byId = new Map(placements.map((each) => [each.id, each]));
  const steps: Placement[][] = [];
  for (const id of loadingOrder) {
    const piece = byId.get(id)!;
    const last = steps.at(-1);
    const isNearerTheDoor = last?.every((each) => piece.xMm >= each.xMm + each.alongMm) ?? true;
    if (!last || isNearerTheDoor || last.length === mostPiecesPerStep) steps.push([piece]);
    else last.push(piece);
  }
  return steps.map((pieces, index) => ({
    number: index + 1,
    fromMm: Math.min(...pieces.map((each) => each.xMm)),
    toMm: Math.max(...pieces.map((each) => each.xMm + each.alongMm)),
    pieces: pieces.map((each) => each.id),
    label: [...new Set(pieces.map(groupOf))].join(', '),
    massKg: pieces.reduce((sum, each) => sum + each.massKg, 0),
    barAtMm: null,
    gapAcrossMm: 0,
  }));
}

/** The heaviest metre begins or ends where a piece does. */
export function stowageFigures(truck: Truck, placements: readonly Placement[]): StowageFigures {
  const { massKg, alongKgMm } = momentsOf(truck, placements);
  const last = Math.max(0, truck.innerLengthMm - metreMm);
  let heaviest = { kg: 0, fromMm: 0 };
  for (const edge of placements.flatMap((each) => [each.xMm, each.xMm + each.alongMm]))
    for (const wanted of [edge, edge - metreMm]) {
      const fromMm = Math.min(last, Math.max(0, wanted));
      const kg = placements.reduce((sum, each) => {
        const within = Math.min(each.xMm + each.alongMm, fromMm + metreMm) - Math.max(each.xMm, fromMm);
        return within > 0 ? sum + (each.massKg * within) / each.alongMm : sum;
      }, 0);
      if (kg > heaviest.kg) heaviest = { kg, fromMm };
    }
  return {
    heaviestMetreKg: heaviest.kg,
    heaviestMetreFromMm: heaviest.fromMm,
    mostKgPerMetre: truck.maxKgPerMetre ?? null,
    endOffsetMm: massKg === 0 ? 0 : alongKgMm / massKg - truck.innerLengthMm / 2,
    mostEndOffsetMm: truck.maxEndOffsetMm ?? null,
    mostSideOffsetMm: truck.maxSideOffsetMm ?? null,
  };
}

/** How the figures of a stowed load come about. */
export function stowageWorking(truck: Truck, placements: readonly Placement[]): Working {
  const { massKg, alongKgMm, sideKgMm } = momentsOf(truck, placements);
  return {
    terms: [
      { what: 'load', value: massKg, unit: 'kg' },
      { what: 'its centre, from the nose', value: massKg === 0 ? 0 : alongKgMm / massKg, unit: 'mm' },
      { what: 'its centre, off the middle across', value: massKg === 0 ? 0 : sideKgMm / massKg, unit: 'mm' },
      { what: 'the most on a metre', value: stowageFigures(truck, placements).heaviestMetreKg, unit: 'kg' },
    ],
    rule: 'Each piece is spread evenly along its own length; the centre is that of all masses, each in the middle of its piece.',
    source: 'masses and measures on file; limits as filed with the container or pallet',
  };
}
