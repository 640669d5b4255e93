import type { TourFile } from '#tour-file';
import type { PackPlan, SolveLimits, TruckResult } from '../contract/index.js';
import { fingerprintOf, gatherInputs, loadingPart } from '../inputs/index.js';
import { type Words, english } from '#words';
import { planTruck, truckFindings } from '../trucks/index.js';
import { checkerFindings } from './checker-findings.js';
import { tellFindings } from './tell-findings.js';

/** Trucks and what they carry. */
export const travelling = (truck: TruckResult): readonly string[] =>
  truck.trucks.flatMap((load) => [load.id, ...load.placements.map((each) => each.id)]);

/**
 * An earlier plan with its trucks loaded anew by what the show now wants of them; carts, picks, hardware and dates stay as they are. Inputs that
 * changed meanwhile otherwise still count as changed.
 */
export function replanTrucks(file: TourFile, before: PackPlan, limits: SolveLimits, words: Words = english): PackPlan {
  const truck = planTruck(gatherInputs(file, before.show.id, words), before.carts, limits, before.truck);
  const { [loadingPart]: _then, ...rest } = before.fingerprint;
  const wanted = fingerprintOf(file, before.show.id, before.fingerprint)[loadingPart];
  const carried = new Set(travelling(before.truck));
  return {
    ...before,
    fingerprint: wanted === undefined ? rest : { ...rest, [loadingPart]: wanted },
    truck,
    findings: [
      ...before.findings.filter((each) => each.section !== 'truck' && each.section !== 'due'),
      ...tellFindings([...checkerFindings(truck.mismatches ?? []), ...truckFindings(truck)], words),
      ...before.findings.filter((each) => each.section === 'due'),
    ],
    uses: [
      ...before.uses.filter((each) => !carried.has(each.item)),
      ...[...new Set(travelling(truck))].map((item) => ({ item, count: null })),
    ],
  };
}
