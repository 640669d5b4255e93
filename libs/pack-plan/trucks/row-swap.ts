import type { KeptPiece, TourFile } from '#tour-file';
import type { LoadBreach } from '#trade';
import { swapRows } from '#truck-pack';
import { type Words, english } from '#words';
import type { PackPlan } from '../contract/index.js';
import { gatherInputs } from '../inputs/index.js';
import { axleStops } from './axle-sheet.js';
import { breachSentence } from './freight.js';
import { placementsOf, truckTask } from './plan-truck.js';
import { invariant } from '#kernel';

/** Two rows of one truck exchanged: what that does, and where everything in the truck would stand. */
export interface RowSwap {
  readonly first: number;
  readonly second: number;
  readonly axles: readonly {
    readonly axle: string;
    readonly beforeKg: number;
    readonly afterKg: number;
    readonly limitKg: number | null;
  }[];
  readonly sideBeforeMm: number;
  readonly sideAfterMm: number;
  /** Rules that it breaks; the unloading order may be waived for the piece. */
  readonly breaches: readonly {
    readonly piece: string;
    readonly mayBeWaived: boolean;
    readonly sentence: string;
    readonly fact: LoadBreach;
  }[];
  readonly places: readonly KeptPiece[];
}

/** Rows `first` and `second` of a truck of the plan, 1 at the nose. Throws where the truck or a row is not in the plan. */
export function swapOf(file: TourFile, plan: PackPlan, truckId: string, first: number, second: number, words: Words = english): RowSwap {
  const before = plan.truck.trucks.find((each) => each.id === truckId);
  invariant(before, `truck ${truckId} is in the plan`);
  const { problem, freight, wishes } = truckTask(gatherInputs(file, plan.show.id, words), plan.carts);
  invariant(problem, `truck ${truckId} can be loaded by what is on file`);
  const loaded = wishes.kept.filter((each) => each.loaded);
  const isLoaded = new Set(loaded.map((each) => each.id));
  const stands = before.placements.filter((each) => freight.has(each.id));
  const { load, breaches } = swapRows(
    problem,
    {
      id: truckId,
      placements: stands,
      loadingOrder: before.loadingOrder,
      usedLengthMm: before.usedLengthMm,
      massKg: before.massKg,
      sideOffsetMm: before.sideOffsetMm,
      axles: {},
    },
    first - 1,
    second - 1,
    { kept: loaded, waived: wishes.waived },
  );
  const truck = problem.trucks.find((each) => each.id === truckId)!;
  const [then, now] = [stands, placementsOf(freight, load.placements)].map((placements) => axleStops(truck, placements, words)[0]!);
  return {
    first,
    second,
    axles: now!.loads.map(({ axle, loadKg, limitKg }, index) => ({ axle, beforeKg: then!.loads[index]!.loadKg, afterKg: loadKg, limitKg })),
    sideBeforeMm: then!.sideOffsetMm,
    sideAfterMm: now!.sideOffsetMm,
    breaches: breaches.map((breach) => ({
      piece: breach.subject,
      mayBeWaived: breach.code === 'order',
      sentence: breachSentence(words, freight, breach),
      fact: breach,
    })),
    places: load.placements.map(({ id, xMm, yMm, zMm, turned }) => ({
      piece: id,
      truck: truckId,
      xMm,
      yMm,
      zMm,
      turned,
      loaded: isLoaded.has(id),
    })),
  };
}
