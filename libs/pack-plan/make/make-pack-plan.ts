import type { TourFile } from '#tour-file';
import type { Whereabouts } from '#trade';
import { type Words, english } from '#words';
import { cartFindings, planCarts, wantedLoads } from '../carts/index.js';
import type { CartsResult, HardwareResult, PackPlan, SolveLimits, TruckResult } from '../contract/index.js';
import { dueFindings, planDue } from '../due/index.js';
import { frameLoads, hardwareFindings, planHardware } from '../hardware/index.js';
import { type PlanInputs, fingerprintOf, gatherInputs } from '../inputs/index.js';
import { type ChosenItem, chooseItems, pickFindings, planPicks, plannedSerials } from '../picks/index.js';
import { pointFindings, withStructure } from '../points/index.js';
import { emptyTruckFindings, planTruck, truckFindings } from '../trucks/index.js';
import { checkPlan } from '../check/index.js';
import { checkerFindings, mismatchesIn } from './checker-findings.js';
import { inputFindings } from './input-findings.js';
import { keepBoxes } from './keep-boxes.js';
import { travelling } from './replan-trucks.js';
import { tellFindings } from './tell-findings.js';

/** An earlier plan whose boxes stay where they are, but for those that failed. */
export interface KeptPlan {
  readonly plan: PackPlan;
  readonly failed: ReadonlySet<string>;
}

/**
 * The five results of one show of a tour file that was read without faults. Pure: equal file and limits of work give the equal plan.
 * Steps: who may fly; carts and box moves; grids and hoists; loads; hardware; trucks; dates of everything that lifts.
 */
export function makePackPlan(file: TourFile, showId: string, limits: SolveLimits, keep?: KeptPlan, words: Words = english): PackPlan {
  const inputs = gatherInputs(keep ? keepBoxes(file, keep.plan, keep.failed) : file, showId, words);
  const carts = planCarts(inputs, limits);
  const chosen = chooseItems(inputs);
  const picks = withStructure(inputs, planPicks(inputs, wantedLoads(inputs), carts.loads, chosen));
  const hardware = planHardware(inputs, carts, chosen, picks.hangs);
  const truck = planTruck(inputs, carts, limits);
  const due = planDue(inputs, whereabouts(inputs, carts, hardware));
  const { tour } = file;
  const plan: PackPlan = {
    tour: { id: tour.id, name: tour.name, from: tour.prepFrom, to: tour.returnTo, depot: tour.depot },
    show: {
      id: inputs.show.id,
      name: inputs.show.name,
      venue: inputs.show.venue,
      from: inputs.show.from,
      to: inputs.show.to,
      number: tour.shows.findIndex((each) => each.id === showId) + 1,
      of: tour.shows.length,
    },
    fingerprint: fingerprintOf(file, showId),
    carts,
    picks,
    hardware,
    truck,
    due,
    findings: tellFindings(
      [
        ...inputFindings(inputs),
        ...pickFindings(inputs, picks),
        ...pointFindings(inputs, picks),
        ...cartFindings(inputs, carts),
        ...hardwareFindings(inputs, hardware),
        ...frameLoads(inputs, carts, picks.hangs),
        ...emptyTruckFindings(inputs),
        ...truckFindings(truck),
        ...dueFindings(inputs, due),
      ],
      words,
    ),
    uses: usesOf(inputs, carts, chosen, hardware, truck),
  };
  return checked(file, plan, words);
}

/** The plan with a stop for everything that a checker does not agree with. */
function checked(file: TourFile, plan: PackPlan, words: Words = english): PackPlan {
  const disagreements = tellFindings(checkerFindings([...mismatchesIn(plan), ...checkPlan(file, plan)]), words);
  return disagreements.length === 0 ? plan : { ...plan, findings: [...disagreements, ...plan.findings] };
}

/** The plan with the boxes of an earlier one in their places where that costs no box move more, so that a new revision changes what must change. */
export function makeSteadyPlan(
  file: TourFile,
  showId: string,
  limits: SolveLimits,
  before: PackPlan | undefined,
  words: Words = english,
): PackPlan {
  const plan = makePackPlan(file, showId, limits, undefined, words);
  if (!before) return plan;
  const kept = makePackPlan(file, showId, limits, { plan: before, failed: new Set() }, words);
  const isAsGood =
    kept.carts.status === plan.carts.status &&
    kept.carts.boxMoves <= plan.carts.boxMoves &&
    kept.carts.short.length <= plan.carts.short.length;
  return isAsGood ? kept : plan;
}

/** Where each item of the plan hangs or rides; the register's lifting items among them are judged for dates. */
function whereabouts(inputs: PlanInputs, carts: CartsResult, hardware: HardwareResult): ReadonlyMap<string, Whereabouts> {
  const where = new Map<string, Whereabouts>();
  for (const load of carts.loads)
    for (const box of load.boxes)
      if (box.serial !== null) where.set(box.serial, { code: 'box', hang: load.hang, name: load.hangName, position: box.position });
  for (const each of hardware.chosen) where.set(each.item, each.fact!);
  for (const line of hardware.lines) {
    const taken = new Set(line.takenFrom.map((each) => each.lot));
    for (const item of inputs.file.items)
      if (item.model === line.model && item.state === 'in service' && (item.count !== undefined || taken.has(item.id)))
        where.set(item.id, item.in ? { code: 'case', case: item.in } : { code: item.kind === 'pin' ? 'fitted-to-boxes' : 'loose' });
  }
  return where;
}

function usesOf(
  inputs: PlanInputs,
  carts: CartsResult,
  chosen: readonly ChosenItem[],
  hardware: HardwareResult,
  truck: TruckResult,
): PackPlan['uses'] {
  const spares = hardware.chosen.map((each) => each.item);
  const serials = [...new Set([...plannedSerials(carts, chosen), ...spares, ...travelling(truck)])].map((item) => ({ item, count: null }));
  const batches = hardware.lines.flatMap((line) =>
    line.takenFrom.map(({ lot, count }) => ({ item: lot, count: inputs.items.get(lot)!.count === undefined ? null : count })),
  );
  return [...serials, ...batches];
}
