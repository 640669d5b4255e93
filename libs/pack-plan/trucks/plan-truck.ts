import type { TruckModel } from '#tour-file';
import { type Truck, type TruckAnswer, type TruckCase, type TruckPackAnswer, solveRows, solveTruckPack } from '#truck-pack';
import type { CartsResult, Placement, SolveLimits, TruckResult, TruckResultOne } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { axleStops, axlesOf, truckWorking } from './axle-sheet.js';
import { bridgeCheck } from './bridge-check.js';
import { type FreightPiece, freightName, freightOf, wholeFigures } from './freight.js';
import { type TruckWishes, truckWishes } from './loading-notes.js';
import { loadOutOrder, rowsOf, unloadingOrder } from './truck-rows.js';

const truckCaution =
  'Axle loads are computed from the masses and lever arms on file. A weighbridge decides, and the driver secures the load by the rules of the road he drives on.';

const modelOfTruck = (inputs: PlanInputs, id: string): TruckModel => modelOf(inputs.file.catalogue.trucks, inputs.items.get(id)!.model);

function truckCase(inputs: PlanInputs, freight: readonly FreightPiece[]): TruckCase {
  const trucks = inputs.file.tour.trucks.filter((id) => inputs.availability.get(id)?.reason === null);
  return {
    trucks: trucks.map((id): Truck => {
      const { model: _model, axles: _axles, blocked, ...rest } = modelOfTruck(inputs, id);
      return { id, blocked: blocked.map((each) => ({ ...each })), ...(rest as Omit<TruckModel, 'model' | 'axles' | 'blocked'>) };
    }),
    pieces: freight.map(({ label: _label, tag: _tag, ...piece }) => piece),
    minSupport: 0.8,
    // A tour truck is emptied at one dock: what matters on the road is the whole load.
    checkAfterStops: false,
  };
}

/** The packing case of a show's trucks with the freight as the loader calls it, and what people at the dock want of it. */
export interface TruckTask {
  readonly problem: TruckCase;
  readonly freight: ReadonlyMap<string, FreightPiece>;
  readonly wishes: TruckWishes;
}

export function truckTask(inputs: PlanInputs, carts: CartsResult): TruckTask {
  const freight = freightOf(inputs, carts);
  const problem = truckCase(inputs, freight);
  return {
    problem,
    freight: new Map(freight.map((each) => [each.id, each])),
    wishes: truckWishes(
      inputs,
      freight,
      problem.trucks.map((each) => each.id),
    ),
  };
}

/**
 * Carts and cases into the trucks of the tour, first off nearest the door; rows across the truck as people build them. Where no new rows go around what is to
 * stay, everything else stays as in the load `before` as well, if there is one.
 */
export function planTruck(inputs: PlanInputs, carts: CartsResult, limits: SolveLimits, before?: TruckResult): TruckResult {
  const task = truckTask(inputs, carts);
  const { problem, freight, wishes } = task;
  if (problem.trucks.length === 0)
    return {
      status: 'feasible',
      trucks: [],
      leftOver: [...freight.values()].map(({ id, label }) => ({ id, label, reason: 'the tour has no truck that may be used' })),
      bound: { trucks: 0, usedLengthMm: 0, reason: 'no truck' },
      caution: truckCaution,
      notes: wishes.notes,
    };
  const answer = loadTrucks(task, limits, before);
  const trucks = answer.trucks.map((load) => describeTruck(inputs, task, load));
  return {
    status: answer.status,
    trucks,
    leftOver: answer.leftOver.map(({ id, reason }) => ({ id, label: freight.get(id)!.label, reason })),
    bound: answer.bound,
    caution: truckCaution,
    dockOrder: dockOrder(trucks),
    notes: wishes.notes,
    ...(answer.refused
      ? { refused: answer.refused.map(({ subject, sentence }) => `${freightName(freight, subject)}: ${wholeFigures(sentence)}.`) }
      : {}),
  };
}

/** Rounds of search around what has to stay. */
const roundsAroundKept = 6;

/** Rows first: what people build by hand. Only freight that no rows hold is loaded freely, and only where nothing has to stay where it stands. */
function loadTrucks({ problem, wishes, freight }: TruckTask, limits: SolveLimits, before: TruckResult | undefined): TruckPackAnswer {
  const { kept, waived } = wishes;
  const told = limits.onProgress ? { onProgress: limits.onProgress } : {};
  const workLimit = limits.truckWork ?? (kept.length > 0 ? roundsAroundKept : 1);
  const byRows = solveRows(problem, { seed: 1, workLimit, kept, waived, ...told });
  if (!byRows) return solveTruckPack(problem, { seed: 1, workLimit: 8, timeLimitSeconds: limits.timeLimitSeconds, now: limits.now });
  if (kept.length === 0 || byRows.refused || byRows.leftOver.length === 0) return byRows;
  const stays = new Set(kept.map((each) => each.id));
  const stood = (before?.trucks ?? [])
    .filter((truck) => problem.trucks.some((each) => each.id === truck.id))
    .flatMap((truck) => truck.placements.map(({ id, xMm, yMm, zMm, turned }) => ({ truck: truck.id, id, xMm, yMm, zMm, turned })))
    .filter((each) => freight.has(each.id) && !stays.has(each.id));
  if (stood.length === 0) return byRows;
  const asBefore = solveRows(problem, { seed: 1, workLimit: 1, kept: [...kept, ...stood], waived });
  return asBefore && !asBefore.refused && asBefore.leftOver.length < byRows.leftOver.length ? asBefore : byRows;
}

function describeTruck(inputs: PlanInputs, { problem, freight, wishes }: TruckTask, load: TruckAnswer): TruckResultOne {
  const truck = problem.trucks.find((each) => each.id === load.id)!;
  const model = modelOfTruck(inputs, load.id);
  const placements = placementsOf(freight, load.placements);
  const loadingOrder = [...load.loadingOrder];
  const stops = axleStops(truck, placements);
  return {
    id: load.id,
    model: model.model,
    innerLengthMm: truck.innerLengthMm,
    innerWidthMm: truck.innerWidthMm,
    innerHeightMm: truck.innerHeightMm,
    doorHeightMm: truck.doorHeightMm ?? truck.innerHeightMm,
    placements,
    rows: rowsOf(problem, placements, truck.innerWidthMm),
    loadingOrder,
    unloadingOrder: unloadingOrder(placements, loadingOrder),
    usedLengthMm: load.usedLengthMm,
    massKg: load.massKg,
    payloadKg: truck.payloadKg ?? 0,
    sideOffsetMm: load.sideOffsetMm,
    axles: axlesOf(truck, placements, stops),
    working: truckWorking(truck, placements),
    stops,
    bridge: inputs.file.tour.roadRules?.includes('US bridge formula') ? bridgeCheck(model, stops[0]!) : null,
    loadOutOrder: loadOutOrder(placements, loadingOrder),
    kept: wishes.kept.filter((each) => each.truck === load.id).map(({ id, loaded }) => ({ piece: id, loaded: loaded === true })),
  };
}

/** Where each piece stands, with its name and its size as placed. */
export function placementsOf(freight: ReadonlyMap<string, FreightPiece>, placed: TruckAnswer['placements']): readonly Placement[] {
  return placed.map((at): Placement => {
    const piece = freight.get(at.id)!;
    const [alongMm, acrossMm] = at.turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
    const { label, heightMm, massKg, firstOff, group, tag } = piece;
    return { ...at, label, alongMm, acrossMm, heightMm, massKg, firstOff, group, tag };
  });
}

/** The truck that holds what comes off first goes to the dock first. */
function dockOrder(trucks: readonly TruckResultOne[]): NonNullable<TruckResult['dockOrder']> {
  return trucks
    .map((truck) => {
      const firstOff = Math.min(...truck.placements.map((each) => each.firstOff));
      const groups = truck.placements.filter((each) => each.firstOff === firstOff).map((each) => each.group ?? each.label);
      return { truck: truck.id, firstOff, first: [...new Set(groups)].join(', ') };
    })
    .sort((a, b) => a.firstOff - b.firstOff || (a.truck < b.truck ? -1 : 1))
    .map(({ truck, first }) => ({ truck, first }));
}
