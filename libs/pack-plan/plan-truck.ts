import { type Truck, type TruckAnswer, type TruckCase, axleLimits, axleLoads, solveRows, solveTruckPack } from '#truck-pack';
import type { TruckModel } from '#tour-file';
import { type FreightPiece, freightOf } from './freight.js';
import type { CartsResult, Placement, TruckResult, TruckResultOne, TruckRow } from './plan.js';
import type { SolveLimits } from './plan-carts.js';
import { type PlanInputs, modelOf } from './plan-inputs.js';

const truckCaution =
  'Axle loads are computed from the masses and lever arms on file. A weighbridge decides, and the driver secures the load by the rules of the road he drives on.';

function truckCase(inputs: PlanInputs, freight: readonly FreightPiece[]): TruckCase {
  const trucks = inputs.file.tour.trucks.filter((id) => inputs.availability.get(id)?.reason === null);
  return {
    trucks: trucks.map((id): Truck => {
      const { model: _model, blocked, ...rest } = modelOf(inputs.file.catalogue.trucks, inputs.items.get(id)!.model);
      return { id, blocked: blocked.map((each) => ({ ...each })), ...(rest as Omit<TruckModel, 'model' | 'blocked'>) };
    }),
    pieces: freight.map(({ label: _label, tag: _tag, ...piece }) => piece),
    minSupport: 0.8,
    // A tour truck is emptied at one dock: what matters on the road is the whole load.
    checkAfterStops: false,
  };
}

/** Carts and cases into the trucks of the tour, first off nearest the door; rows across the truck as people build them. */
export function planTruck(inputs: PlanInputs, carts: CartsResult, limits: SolveLimits): TruckResult {
  const freight = freightOf(inputs, carts);
  const byId = new Map(freight.map((each) => [each.id, each]));
  const problem = truckCase(inputs, freight);
  if (problem.trucks.length === 0)
    return {
      status: 'feasible',
      trucks: [],
      leftOver: freight.map((each) => ({ id: each.id, label: each.label, reason: 'the tour has no truck that may be used' })),
      bound: { trucks: 0, usedLengthMm: 0, reason: 'no truck' },
      caution: truckCaution,
    };
  // Rows first: what people build by hand. Only freight that no rows hold is loaded freely.
  const answer =
    solveRows(problem, { seed: 1, workLimit: limits.truckWork ?? 1, ...(limits.onProgress ? { onProgress: limits.onProgress } : {}) }) ??
    solveTruckPack(problem, { seed: 1, workLimit: 8, timeLimitSeconds: limits.timeLimitSeconds, now: limits.now });
  return {
    status: answer.status,
    trucks: answer.trucks.map((load) =>
      describeTruck(problem.trucks.find((each) => each.id === load.id)!, inputs.items.get(load.id)!.model, load, byId),
    ),
    leftOver: answer.leftOver.map(({ id, reason }) => ({ id, label: byId.get(id)!.label, reason })),
    bound: answer.bound,
    caution: truckCaution,
  };
}

function describeTruck(truck: Truck, model: string, load: TruckAnswer, byId: ReadonlyMap<string, FreightPiece>): TruckResultOne {
  const placements = load.placements.map((at): Placement => {
    const piece = byId.get(at.id)!;
    const [alongMm, acrossMm] = at.turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
    return {
      ...at,
      label: piece.label,
      alongMm,
      acrossMm,
      heightMm: piece.heightMm,
      massKg: piece.massKg,
      firstOff: piece.firstOff,
      group: piece.group,
      tag: piece.tag,
    };
  });
  const loadingOrder = [...load.loadingOrder];
  return {
    id: load.id,
    model,
    innerLengthMm: truck.innerLengthMm,
    innerWidthMm: truck.innerWidthMm,
    innerHeightMm: truck.innerHeightMm,
    doorHeightMm: truck.doorHeightMm ?? truck.innerHeightMm,
    placements,
    rows: rowsOf(placements, truck.innerWidthMm),
    loadingOrder,
    unloadingOrder: unloadingOrder(placements, loadingOrder),
    usedLengthMm: load.usedLengthMm,
    massKg: load.massKg,
    payloadKg: truck.payloadKg ?? 0,
    sideOffsetMm: load.sideOffsetMm,
    axles: axlesOf(truck, placements),
    working: axleWorking(truck, placements),
  };
}

/** Last in, first out, and by the place in the unloading order before that. */
function unloadingOrder(placements: readonly Placement[], loadingOrder: readonly string[]): string[] {
  const firstOff = new Map(placements.map((each) => [each.id, each.firstOff]));
  return [...loadingOrder].reverse().sort((a, b) => firstOff.get(a)! - firstOff.get(b)!);
}

/** Slices across the truck that no piece reaches over: what a crew builds, bars and straps as one row. */
function rowsOf(placements: readonly Placement[], innerWidthMm: number): TruckRow[] {
  const rows: Placement[][] = [];
  let far = -1;
  for (const each of [...placements].sort((a, b) => a.xMm - b.xMm || a.yMm - b.yMm || a.zMm - b.zMm)) {
    if (rows.length === 0 || each.xMm >= far) rows.push([each]);
    else rows.at(-1)!.push(each);
    far = Math.max(far, each.xMm + each.alongMm);
  }
  return rows.map((pieces, index) => {
    const fromMm = Math.min(...pieces.map((each) => each.xMm));
    const toMm = Math.max(...pieces.map((each) => each.xMm + each.alongMm));
    const next = rows[index + 1];
    const across = Math.max(...pieces.filter((each) => each.zMm === 0).map((at) => widthAt(pieces, at.xMm)));
    return {
      number: index + 1,
      fromMm,
      toMm,
      pieces: pieces.map((each) => each.id),
      label: [...new Set(pieces.map((each) => each.group ?? each.label))].join(', '),
      massKg: pieces.reduce((sum, each) => sum + each.massKg, 0),
      barAtMm: next === undefined || Math.min(...next.map((each) => each.xMm)) > toMm + 100 ? toMm : null,
      gapAcrossMm: Math.max(0, innerWidthMm - across),
    };
  });
}

const widthAt = (pieces: readonly Placement[], x: number): number =>
  pieces.filter((each) => each.zMm === 0 && each.xMm <= x && each.xMm + each.alongMm > x).reduce((sum, each) => sum + each.acrossMm, 0);

const axleNames: Record<string, string> = {
  kingpinKg: 'kingpin',
  axleGroupKg: 'trailer axles',
  driveKg: 'drive axle',
  steerKg: 'steer axle',
  frontKg: 'front axle',
  rearKg: 'rear axle',
  grossKg: 'gross mass',
};

function axlesOf(truck: Truck, placements: readonly Placement[]): TruckResultOne['axles'] {
  const stops = [...new Set(placements.map((each) => each.firstOff))].sort((a, b) => a - b);
  const loadsWith = (pieces: readonly Placement[]) =>
    axleLoads(
      truck,
      pieces.reduce((sum, each) => sum + each.massKg, 0),
      pieces.reduce((sum, each) => sum + each.massKg * (each.xMm + each.alongMm / 2), 0),
    ) ?? {};
  const whole = loadsWith(placements);
  const after = stops.slice(0, -1).map((stop) => loadsWith(placements.filter((each) => each.firstOff > stop)));
  const limits = new Map(axleLimits(truck, whole.grossKg ?? 0).map((each) => [each.axle, each.most]));
  return Object.entries(whole).map(([axle, loadKg]) => {
    const limitKg = limits.get(axle) ?? null;
    return {
      axle: axleNames[axle]!,
      loadKg,
      limitKg,
      share: limitKg === null ? null : loadKg / limitKg,
      worstAfterStopsKg: Math.max(loadKg, ...after.map((each) => each[axle]!)),
    };
  });
}

function axleWorking(truck: Truck, placements: readonly Placement[]): TruckResultOne['working'] {
  const massKg = placements.reduce((sum, each) => sum + each.massKg, 0);
  const centreMm = massKg === 0 ? 0 : placements.reduce((sum, each) => sum + each.massKg * (each.xMm + each.alongMm / 2), 0) / massKg;
  const base = [
    { what: 'load', value: massKg, unit: 'kg' },
    { what: 'its centre, from the nose', value: centreMm, unit: 'mm' },
  ];
  if (truck.semiTrailer)
    return {
      terms: [
        ...base,
        { what: 'kingpin, from the nose', value: truck.semiTrailer.kingpinXMm, unit: 'mm' },
        { what: 'axle group, from the nose', value: truck.semiTrailer.axleGroupXMm, unit: 'mm' },
      ],
      rule: 'Axle group = its tare + load × (centre − kingpin) / (axle group − kingpin); the kingpin takes the rest, and the tractor shares it between drive and steer by its lever.',
      source: 'balance of moments; levers and tare as filed with the truck',
    };
  if (truck.rigid)
    return {
      terms: [
        ...base,
        { what: 'front axle, from the nose', value: truck.rigid.frontAxleXMm, unit: 'mm' },
        { what: 'rear axle, from the nose', value: truck.rigid.rearAxleXMm, unit: 'mm' },
      ],
      rule: 'Rear axle = its tare + load × (centre − front axle) / (rear axle − front axle); the front axle takes the rest.',
      source: 'balance of moments; levers and tare as filed with the truck',
    };
  return { terms: base, rule: 'No axle figures are on file for this truck: its axle loads are not known.', source: 'none on file' };
}
