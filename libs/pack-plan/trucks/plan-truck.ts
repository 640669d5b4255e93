import type { TruckModel } from '#tour-file';
import { type BadInput, type Result, invariant, refuse, shownText } from '#kernel';
import {
  type TruckAnswer,
  type TruckCase,
  type TruckPackAnswer,
  isRowless,
  readTruckCase,
  solveRows,
  solveStowage,
  solveTruckPack,
} from '#truck-pack';
import {
  type CartsResult,
  type Placement,
  type SolveLimits,
  type TruckResult,
  type TruckResultOne,
  checkedBy,
  groupOf,
} from '../contract/index.js';
import type { LeftOverReason } from '#trade';
import { breachOf, tell } from '#words';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { axleStops, axlesAfterRows, axlesOf, momentsOf } from './axle-sheet.js';
import { truckWorking } from './axle-working.js';
import { bridgeCheck } from './bridge-check.js';
import { type FreightPiece, breachSentence, freightName, freightOf } from './freight.js';
import { type TruckWishes, truckWishes } from './loading-notes.js';
import { stowageFigures, stowageWorking, stowingSteps } from './stowage.js';
import { loadOutOrder, rowsOf, unloadingOrder } from './truck-rows.js';

const truckCaution =
  'Axle loads are computed from the masses and lever arms on file. A weighbridge decides, and the driver secures the load by the rules of the road he drives on.';

const stowageCaution =
  'Of a sea container the plate decides what it may carry, of an air pallet the carrier; whoever stows it braces the load, and its mass is weighed before it is handed over.';

const modelOfTruck = (inputs: PlanInputs, id: string): TruckModel => modelOf(inputs.file.catalogue.trucks, inputs.items.get(id)!.model);

/** The case, or what is wrong with it; nothing where there is no truck. */
function truckCase(inputs: PlanInputs, freight: readonly FreightPiece[]): Result<TruckCase, readonly BadInput[]> {
  const trucks = inputs.file.tour.trucks.filter((id) => inputs.availability.get(id)?.reason === null);
  if (trucks.length === 0) return refuse([]);
  return readTruckCase({
    trucks: trucks.map((id) => {
      const { model: _model, axles: _axles, ...rest } = modelOfTruck(inputs, id);
      return { id, ...rest };
    }),
    pieces: freight.map(({ label: _label, groupName: _groupName, tag: _tag, fact: _fact, ...piece }) => piece),
    minSupport: 0.8,
    // A tour truck is emptied at one dock: what matters on the road is the whole load.
    checkAfterStops: false,
  });
}

/** The packing case of a show's trucks with the freight as the loader calls it, and what people at the dock want of it. */
export interface TruckTask {
  /** Left out where there is no truck, or something on file is wrong. */
  readonly problem?: TruckCase;
  readonly faults: readonly BadInput[];
  readonly freight: ReadonlyMap<string, FreightPiece>;
  readonly wishes: TruckWishes;
  /** What does not travel because somebody at the dock says so. */
  readonly stays: TruckResult['leftOver'];
}

export function truckTask(inputs: PlanInputs, carts: CartsResult): TruckTask {
  const all = freightOf(inputs, carts);
  const said = new Map(inputs.show.loading?.stays?.map((each) => [each.piece, each]));
  const freight = all.filter((each) => !said.has(each.id));
  const read = truckCase(inputs, freight);
  return {
    ...(read.ok ? { problem: read.value, faults: [] } : { faults: read.error }),
    freight: new Map(freight.map((each) => [each.id, each])),
    stays: all.flatMap(({ id, label }) => {
      const { reason, by, on } = said.get(id) ?? {};
      return reason === undefined || by === undefined || on === undefined
        ? []
        : [leftOver(inputs, id, label, { code: 'stays-behind', reason, by, on })];
    }),
    // What is stowed without rows is stowed anew: nothing is kept where it stands in it.
    wishes: truckWishes(inputs, freight, read.ok ? read.value.trucks.filter((each) => !isRowless(each)).map((each) => each.id) : []),
  };
}

/**
 * Carts and cases into the trucks of the tour, first off nearest the door; rows across the truck as people build them. Where no new rows go around what is to
 * stay, everything else stays as in the load `before` as well, if there is one.
 */
export function planTruck(inputs: PlanInputs, carts: CartsResult, limits: SolveLimits, before?: TruckResult): TruckResult {
  const task = truckTask(inputs, carts);
  const { problem, freight, wishes } = task;
  if (!problem) return nothingLoaded(inputs, task);
  const answer = loadAll(problem, task, limits, before);
  const trucks = answer.trucks.map((load) => describeTruck(inputs, problem, task, load));
  return {
    status: answer.status,
    trucks,
    leftOver: [...answer.leftOver.map(({ id, ...why }) => leftOver(inputs, id, freight.get(id)!.label, why)), ...task.stays],
    bound: toldBound(inputs, answer.bound),
    caution: cautionOf(problem),
    dockOrder: dockOrder(trucks),
    notes: wishes.notes,
    ...checkedBy(
      (answer.mismatch ?? []).map((breach) => ({
        check: 'truck loads',
        subject: freightName(freight, breach.subject),
        found: breachOf(inputs.words.breaches, breach),
      })),
    ),
    ...(answer.refused
      ? {
          refused: answer.refused.map((breach) => ({
            piece: breach.subject,
            name: freightName(freight, breach.subject),
            sentence: breachSentence(inputs.words, freight, breach),
            fact: breach,
          })),
        }
      : {}),
  };
}

/** Of trucks that of their axles, of containers and pallets that of whoever carries them. */
function cautionOf({ trucks }: TruckCase): string {
  const stowed = trucks.filter(isRowless).length;
  return [...(stowed < trucks.length ? [truckCaution] : []), ...(stowed > 0 ? [stowageCaution] : [])].join(' ');
}

function nothingLoaded(inputs: PlanInputs, { faults, freight, wishes, stays }: TruckTask): TruckResult {
  const [fault] = faults;
  const why: LeftOverReason = fault
    ? { code: 'bad-figure', field: fault.field, value: shownText(fault.value), wanted: fault.wanted }
    : { code: 'no-truck', trucks: trucksNotFree(inputs) };
  return {
    status: 'feasible',
    trucks: [],
    leftOver: [...[...freight.values()].map(({ id, label }) => leftOver(inputs, id, label, why)), ...stays],
    bound: toldBound(inputs, { trucks: 0, usedLengthMm: 0, why: { code: fault ? 'bad-figure' : 'no-truck' } }),
    caution: truckCaution,
    notes: wishes.notes,
  };
}

/** Trucks of the tour that may not be used, each with its reason. */
const trucksNotFree = ({ file, availability }: PlanInputs) =>
  file.tour.trucks.flatMap((truck) => {
    const why = availability.get(truck)?.reason;
    return why ? [{ truck, why }] : [];
  });

const toldBound = ({ words }: PlanInputs, { trucks, usedLengthMm, why }: TruckPackAnswer['bound']): TruckResult['bound'] => ({
  trucks,
  usedLengthMm,
  reason: tell(words.loadBounds, why),
  fact: why,
});

const leftOver = ({ words }: PlanInputs, id: string, label: string, fact: LeftOverReason): TruckResult['leftOver'][number] => ({
  id,
  label,
  reason: tell(words.leftOver, fact),
  fact,
});

/** Rounds of search around what has to stay. */
const roundsAroundKept = 6;
/** Steps of search for a round: what a tour's trucks never need; freight of any size ends there. */
const mostSteps = 3_000_000;

/** Trucks in rows first; what they leave goes into the containers and pallets of the tour, without rows. */
function loadAll(problem: TruckCase, task: TruckTask, limits: SolveLimits, before: TruckResult | undefined): TruckPackAnswer {
  const trucks = problem.trucks.filter((each) => !isRowless(each));
  if (trucks.length === problem.trucks.length) return loadTrucks(problem, task, limits, before);
  const { kept, waived } = task.wishes;
  if (trucks.length === 0) return solveStowage(problem, { kept, waived });
  const read = readTruckCase({ ...problem, trucks });
  invariant(read.ok, 'a part of a case that was read is one');
  const byTrucks = loadTrucks(read.value, task, limits, before);
  return byTrucks.refused || byTrucks.leftOver.length === 0 ? byTrucks : solveStowage(problem, { kept, waived }, byTrucks);
}

/** Rows first: what people build by hand. Only freight that no rows hold is loaded freely, and only where nothing has to stay where it stands. */
function loadTrucks(
  problem: TruckCase,
  { wishes, freight }: TruckTask,
  limits: SolveLimits,
  before: TruckResult | undefined,
): TruckPackAnswer {
  const { kept, waived } = wishes;
  const told = limits.onProgress ? { onProgress: limits.onProgress } : {};
  const rounds = limits.truckWork ?? (kept.length > 0 ? roundsAroundKept : 1);
  const work = mostSteps * rounds;
  const byRows = solveRows(problem, { seed: 1, rounds, work, kept, waived, ...told });
  if (!byRows) return solveTruckPack(problem, { seed: 1, rounds: 8, work: mostSteps });
  if (kept.length === 0 || byRows.refused || byRows.leftOver.length === 0) return byRows;
  const stays = new Set(kept.map((each) => each.id));
  const stood = (before?.trucks ?? [])
    .filter((truck) => problem.trucks.some((each) => each.id === truck.id))
    .flatMap((truck) => truck.placements.map(({ id, xMm, yMm, zMm, turned }) => ({ truck: truck.id, id, xMm, yMm, zMm, turned })))
    .filter((each) => freight.has(each.id) && !stays.has(each.id));
  if (stood.length === 0) return byRows;
  const asBefore = solveRows(problem, { seed: 1, rounds: 1, work: mostSteps, kept: [...kept, ...stood], waived });
  return asBefore && !asBefore.refused && asBefore.leftOver.length < byRows.leftOver.length ? asBefore : byRows;
}

function describeTruck(inputs: PlanInputs, problem: TruckCase, { freight, wishes }: TruckTask, load: TruckAnswer): TruckResultOne {
  const truck = problem.trucks.find((each) => each.id === load.id)!;
  const model = modelOfTruck(inputs, load.id);
  const placements = placementsOf(freight, load.placements);
  const loadingOrder = [...load.loadingOrder];
  const stops = axleStops(truck, placements, inputs.words);
  const isStowed = isRowless(truck);
  const rows = isStowed ? stowingSteps(placements, loadingOrder) : rowsOf(problem, placements, truck.innerWidthMm, load.rows);
  return {
    id: load.id,
    ...(isStowed ? { kind: truck.kind as NonNullable<TruckResultOne['kind']>, stowage: stowageFigures(truck, placements) } : {}),
    model: model.model,
    innerLengthMm: truck.innerLengthMm,
    innerWidthMm: truck.innerWidthMm,
    innerHeightMm: truck.innerHeightMm,
    doorHeightMm: truck.doorHeightMm ?? truck.innerHeightMm,
    placements,
    rows,
    loadingOrder,
    unloadingOrder: isStowed ? [...loadingOrder].reverse() : unloadingOrder(placements, loadingOrder),
    usedLengthMm: load.usedLengthMm,
    massKg: load.massKg,
    payloadKg: truck.payloadKg ?? 0,
    sideOffsetMm: load.sideOffsetMm,
    axles: axlesOf(truck, placements, stops),
    working: isStowed ? stowageWorking(truck, placements) : truckWorking(truck, momentsOf(truck, placements)),
    stops,
    afterRows: axlesAfterRows(truck, placements, rows, inputs.words),
    bridge: inputs.file.tour.roadRules?.includes('US bridge formula') ? bridgeCheck(model, stops[0]!, inputs.words) : null,
    loadOutOrder: isStowed ? loadingOrder : loadOutOrder(placements, loadingOrder),
    kept: wishes.kept.filter((each) => each.truck === load.id).map(({ id, loaded }) => ({ piece: id, loaded: loaded === true })),
  };
}

/** Where each piece stands, with its name and its size as placed. */
export function placementsOf(freight: ReadonlyMap<string, FreightPiece>, placed: TruckAnswer['placements']): readonly Placement[] {
  return placed.map((at): Placement => {
    const piece = freight.get(at.id)!;
    const [alongMm, acrossMm] = at.turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
    const { label, heightMm, massKg, firstOff, group, groupName, tag, fact } = piece;
    return { ...at, label, alongMm, acrossMm, heightMm, massKg, firstOff, group, groupName, tag, fact };
  });
}

/** The truck that holds what comes off first goes to the dock first. */
function dockOrder(trucks: readonly TruckResultOne[]): NonNullable<TruckResult['dockOrder']> {
  return trucks
    .map((truck) => {
      const firstOff = Math.min(...truck.placements.map((each) => each.firstOff));
      const groups = truck.placements.filter((each) => each.firstOff === firstOff).map((each) => groupOf(each));
      return { truck: truck.id, firstOff, first: [...new Set(groups)].join(', ') };
    })
    .sort((a, b) => a.firstOff - b.firstOff || (a.truck < b.truck ? -1 : 1))
    .map(({ truck, first }) => ({ truck, first }));
}
