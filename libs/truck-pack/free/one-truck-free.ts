import { type Truck, type Work, isLarge } from '../case/index.js';
import { type RowKind, type RowTask, type TruckRows, chooseSides, placedTower, rowKinds, towersOf } from '../rows/index.js';
import { LoadSpace, type Placed, loadingOrderOf, outsideLoad } from '../space/index.js';
import { type FloorPlan, searchFronts } from './front-search.js';

/** One truck without rows: towers set against the front of what stands, then moved back and mirrored slice by slice until axles and balance are inside. Nothing can be kept. */
export function freeInTruck(task: RowTask): TruckRows {
  const { problem, truck, pieces } = task;
  const noise = () => (task.shake ? 0.94 + 0.12 * task.random() : 1);
  const kinds = rowKinds(towersOf(task), task.waived, (ways) => task.prices.lengthOf(ways) * noise(), {
    lengthMm: truck.innerLengthMm,
    widthMm: truck.innerWidthMm,
    countsShares: isLarge(task.problem),
    heightMatters: truck.blocked.length > 0,
  });
  const plans = searchFronts(kinds, truck, {
    width: task.beam * 8,
    work: task.work,
    lean: task.shake ? [0, 0.1, 0.3][Math.floor(task.random() * 3)]! : 0.1,
    ...(problem.checkAfterStops && truck.maxSideOffsetMm !== undefined ? { mostOffsetMm: 0.9 * truck.maxSideOffsetMm } : {}),
  });
  let best: TruckRows | undefined;
  for (const plan of plans.slice(0, plans[0]!.isComplete ? 6 : 1)) {
    const placed = placedPlan(kinds, plan);
    const inside = new Set(placed.map((each) => each.piece));
    const over = pieces.filter((each) => !inside.has(each));
    const settled = settle(truck, placed, problem.minSupport, problem.checkAfterStops, task.work);
    if (!settled || (best && (settled.outsideKg > best.outsideKg || (settled.outsideKg === best.outsideKg && settled.endMm >= best.endMm))))
      continue;
    best = { ...settled, over };
    if (best.outsideKg === 0 && best.endMm <= plan.endMm) break;
  }
  return best ?? { space: undefined, order: [], endMm: 0, outsideKg: 0, over: pieces };
}

function placedPlan(kinds: readonly RowKind[], plan: FloorPlan): Placed[] {
  const next = kinds.map(() => 0);
  return plan.places.flatMap(({ kind, turned, x, y }) => placedTower(kinds[kind]!.towers[next[kind]!++]!, turned, x, y));
}

/** The load as planned or further back, its slices turned left to right where that levels it; the least far back that is inside every limit. */
function settle(
  truck: Truck,
  placed: readonly Placed[],
  minSupport: number,
  afterStops: boolean,
  work: Work,
): Omit<TruckRows, 'over'> | undefined {
  const endMm = placed.reduce((far, each) => Math.max(far, each.x + each.along), 0);
  const level = chooseSides(
    slicesOf(placed).map((slice) => waysOf(slice, truck)),
    [],
    truck,
    afterStops,
  );
  const spare = truck.innerLengthMm - endMm;
  const steps = truck.semiTrailer || truck.rigid ? Math.min(60, Math.ceil(spare / 40)) : 0;
  let best: Omit<TruckRows, 'over'> | undefined;
  for (let step = 0; step <= steps && best?.outsideKg !== 0; step++) {
    const by = steps === 0 ? 0 : Math.floor((spare * step) / steps);
    for (const way of [level, placed]) {
      work.add(5 + 0.5 * placed.length);
      const space = new LoadSpace(truck, minSupport, { nearNose: 0, balance: 0, centred: false, startMm: 0 });
      const moved = way.map((each) => ({ ...each, x: each.x + by })).sort((a, b) => a.z - b.z);
      if (!moved.every((each) => space.putAt(each))) continue;
      const outsideKg = outsideLoad(space, afterStops);
      if (best && best.outsideKg <= outsideKg) continue;
      const order = loadingOrderOf(moved, new Set());
      if (order) best = { space, order, outsideKg, endMm: endMm + by };
    }
  }
  return best;
}

/** Parts of the load between which no piece reaches over, each coming off no earlier than the next, so that one can be mirrored alone. */
function slicesOf(placed: readonly Placed[]): Placed[][] {
  const sorted = [...placed].sort((a, b) => a.x - b.x);
  const latest: number[] = [];
  for (let index = sorted.length - 1; index >= 0; index--)
    latest[index] = Math.max(sorted[index]!.piece.firstOff, latest[index + 1] ?? -Infinity);
  const slices: Placed[][] = [];
  let [far, earliest] = [0, Infinity];
  sorted.forEach((each, index) => {
    if (slices.length === 0 || (each.x >= far && earliest >= latest[index]!)) slices.push([each]);
    else slices.at(-1)!.push(each);
    far = Math.max(far, each.x + each.along);
    earliest = Math.min(earliest, each.piece.firstOff);
  });
  return slices;
}

/** As planned, mirrored, and both moved across as far as there is room. */
function waysOf(slice: readonly Placed[], truck: Truck): Placed[][] {
  const mirrored = slice.map((each) => ({ ...each, y: truck.innerWidthMm - each.y - each.across }));
  return [[...slice], mirrored].flatMap((way) => {
    const from = way.reduce((least, each) => Math.min(least, each.y), Infinity);
    const to = way.reduce((most, each) => Math.max(most, each.y + each.across), 0);
    const shifts = new Set([0, -from, truck.innerWidthMm - to, Math.floor((truck.innerWidthMm - to - from) / 2)]);
    return [...shifts].map((by) => way.map((each) => ({ ...each, y: each.y + by })));
  });
}
