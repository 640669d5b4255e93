import {
  type KeepOptions,
  type KeptPlacement,
  type LeftOver,
  type Said,
  type TruckCaseData,
  type TruckPackAnswer,
  type Violation,
  unknownKept,
  violation,
} from '../case/index.js';

/** What is judged of an answer. */
export type Judged = Pick<TruckPackAnswer, 'status' | 'trucks' | 'waived' | 'refused'> & {
  readonly leftOver: readonly Pick<LeftOver, 'id' | 'code'>[];
  readonly bound: Pick<TruckPackAnswer['bound'], 'trucks' | 'usedLengthMm'>;
};

interface Body {
  id: string;
  x0: number;
  x1: number;
  y0: number;
  y1: number;
  z0: number;
  z1: number;
  kg: number;
  first: number;
  bears: number | undefined;
  floorOnly: boolean;
}

/**
 * Judges a load from its placements alone, in whole millimetres; shares no code with the solver. Returns every rule that is broken: places, support, what
 * each piece bears, the unloading order over all pairs, a loading order that can be done, mass, axles and balance, also after each stop where asked.
 * Kept placements must be there exactly; waived pieces are exempt from the unloading order and named in the answer.
 */
export function verifyTruckPack(problem: TruckCaseData, answer: Judged, options: KeepOptions = {}): readonly Violation[] {
  const found: Violation[] = [...(answer.refused ?? []), ...unknownKept(problem, options)];
  const say: Say = (...what) => found.push(violation(...what));
  const pieces = new Map(problem.pieces.map((each) => [each.id, each]));
  const waived = new Set(options.waived);
  const loaded = new Set((options.kept ?? []).flatMap((each) => (each.loaded ? [each.id] : [])));
  for (const id of waived) if (!answer.waived?.includes(id)) say('waived', 'unnamed', id);
  const times = new Map<string, number>();
  const count = (id: string) => times.set(id, (times.get(id) ?? 0) + 1);
  for (const { id } of answer.leftOver) count(id);
  checkLeftOver(problem.trucks, pieces, answer.leftOver, say);
  const trucksSeen = new Set<string>();
  for (const load of answer.trucks) {
    const truck = problem.trucks.find((each) => each.id === load.id);
    if (!truck || trucksSeen.has(load.id)) {
      say('unknown-truck', 'answered', load.id);
      continue;
    }
    trucksSeen.add(load.id);
    load.placements.forEach(({ id }) => count(id));
    const bodies = bodiesOf(pieces, load.placements, say);
    checkPlaces(truck, bodies, say);
    checkStanding(problem.minSupport, bodies, say);
    // Whoever opens a container or a pallet empties it: nothing in it comes off before the rest.
    if (truck.kind === undefined || truck.kind === 'truck') checkUnloading(bodies, waived, say);
    checkLoading(bodies, load.loadingOrder, loaded, say);
    checkMass(problem, truck, load, bodies, say);
  }
  for (const { id } of problem.pieces) if (times.get(id) !== 1) say('count', 'not-once', id, [], { times: times.get(id) ?? 0 });
  checkKept(answer, options.kept ?? [], say);
  checkClaims(answer, say);
  return found;
}

/** What is wrong with kept placements by themselves: ids, places, support, what they bear, the order among them. Axles and balance are the whole load's. */
export function verifyKept(problem: TruckCaseData, options: KeepOptions): readonly Violation[] {
  const found = unknownKept(problem, options);
  if (found.length > 0) return found;
  const say: Say = (...what) => found.push(violation(...what));
  const pieces = new Map(problem.pieces.map((each) => [each.id, each]));
  for (const truck of problem.trucks) {
    const bodies = bodiesOf(
      pieces,
      (options.kept ?? []).filter((each) => each.truck === truck.id),
      say,
    );
    checkPlaces(truck, bodies, say);
    checkStanding(problem.minSupport, bodies, say);
    checkUnloading(bodies, new Set(options.waived), say);
    const massKg = bodies.reduce((sum, each) => sum + each.kg, 0);
    if (truck.payloadKg !== undefined && massKg > truck.payloadKg + slackKgOrMm)
      say(
        'limit',
        'kept-mass',
        truck.id,
        bodies.map((each) => each.id),
        { value: massKg, most: truck.payloadKg },
      );
  }
  return found;
}

function bodiesOf(
  pieces: ReadonlyMap<string, TruckCaseData['pieces'][number]>,
  placements: readonly Omit<KeptPlacement, 'truck'>[],
  say: Say,
): Body[] {
  const bodies: Body[] = [];
  for (const { id, xMm, yMm, zMm, turned } of placements) {
    const piece = pieces.get(id);
    if (!piece) {
      say('unknown-piece', 'placed', id);
      continue;
    }
    if (turned && !piece.mayTurn) say('turned', 'turned', id);
    if (![xMm, yMm, zMm].every(Number.isInteger)) say('not-whole', 'place', id);
    const [l, w] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
    bodies.push({
      id,
      x0: xMm,
      x1: xMm + l,
      y0: yMm,
      y1: yMm + w,
      z0: zMm,
      z1: zMm + piece.heightMm,
      kg: piece.massKg,
      first: piece.firstOff,
      bears: piece.maxOnTopKg,
      floorOnly: piece.floorOnly,
    });
  }
  return bodies;
}

function checkKept(answer: Judged, kept: readonly KeptPlacement[], say: Say): void {
  for (const { truck, id, xMm, yMm, zMm, turned } of kept) {
    const at = answer.trucks.find((each) => each.id === truck)?.placements.find((each) => each.id === id);
    if (!at || at.xMm !== xMm || at.yMm !== yMm || at.zMm !== zMm || at.turned !== turned)
      say('kept', 'elsewhere', id, [truck], { xMm, yMm, zMm, turned: Number(turned) });
  }
}

type Say = (...what: Said) => void;
type Truck = TruckCaseData['trucks'][number];
type Piece = TruckCaseData['pieces'][number];
type Load = Judged['trucks'][number];

/** Published masses are rounded to this, kilograms; of millimetres it is far below what can be measured. */
const slackKgOrMm = 1e-4;

const cross = (a0: number, a1: number, b0: number, b1: number): number => Math.min(a1, b1) - Math.max(a0, b0);
const meet = (a0: number, a1: number, b0: number, b1: number): boolean => cross(a0, a1, b0, b1) > 0;

function checkPlaces(truck: Truck, bodies: readonly Body[], say: Say): void {
  const top = Math.min(truck.innerHeightMm, truck.doorHeightMm ?? truck.innerHeightMm);
  const sorted = [...bodies].sort((a, b) => a.x0 - b.x0);
  sorted.forEach((a, index) => {
    if (a.x0 < 0 || a.y0 < 0 || a.z0 < 0 || a.x1 > truck.innerLengthMm || a.y1 > truck.innerWidthMm || a.z1 > truck.innerHeightMm)
      say('outside', 'truck', a.id);
    if (a.z1 > top || a.z1 - a.z0 > top) say('door', 'high', a.id);
    for (const { xMm, yMm, zMm, lengthMm, widthMm, heightMm } of truck.blocked)
      if (meet(a.x0, a.x1, xMm, xMm + lengthMm) && meet(a.y0, a.y1, yMm, yMm + widthMm) && meet(a.z0, a.z1, zMm, zMm + heightMm))
        say('blocked', 'place', a.id);
    for (let at = index + 1; at < sorted.length && sorted[at]!.x0 < a.x1; at++) {
      const b = sorted[at]!;
      if (meet(a.x0, a.x1, b.x0, b.x1) && meet(a.y0, a.y1, b.y0, b.y1) && meet(a.z0, a.z1, b.z0, b.z1))
        say('overlap', 'piece', a.id, [b.id]);
    }
  });
}

function supportsOf(body: Body, bodies: readonly Body[]): { under: Body; area: number }[] {
  const supports: { under: Body; area: number }[] = [];
  if (body.z0 === 0) return supports;
  for (const under of bodies) {
    if (under === body || under.z1 !== body.z0) continue;
    const [dx, dy] = [cross(body.x0, body.x1, under.x0, under.x1), cross(body.y0, body.y1, under.y0, under.y1)];
    if (dx > 0 && dy > 0) supports.push({ under, area: dx * dy });
  }
  return supports;
}

function checkStanding(minSupport: number, bodies: readonly Body[], say: Say): void {
  const carried = new Map<Body, number>(bodies.map((each) => [each, 0]));
  // From the top down: when a piece is reached, all that stands on it has been passed on.
  for (const body of [...bodies].sort((a, b) => b.z0 - a.z0)) {
    const on = carried.get(body)!;
    if (body.bears !== undefined && on > body.bears + 1e-6) say('bears', 'too-much', body.id, [], { loadKg: on, mostKg: body.bears });
    if (body.z0 === 0) continue;
    if (body.floorOnly) say('floor-only', 'stacked', body.id);
    const supports = supportsOf(body, bodies);
    const area = supports.reduce((sum, each) => sum + each.area, 0);
    const base = (body.x1 - body.x0) * (body.y1 - body.y0);
    if (area === 0 || area < minSupport * base - 1e-6) say('support', 'base', body.id, [], { supportedMm2: area, baseMm2: base });
    for (const each of supports) carried.set(each.under, carried.get(each.under)! + ((body.kg + on) * each.area) / area);
  }
}

const inTheWay = (b: Body, a: Body): boolean => b.x0 >= a.x1 && meet(a.y0, a.y1, b.y0, b.y1) && meet(a.z0, a.z1, b.z0, b.z1);

function checkUnloading(bodies: readonly Body[], waived: ReadonlySet<string>, say: Say): void {
  const restsOn = new Map(bodies.map((body) => [body, new Set<Body>()]));
  for (const body of [...bodies].sort((a, b) => a.z0 - b.z0))
    for (const { under } of supportsOf(body, bodies)) {
      restsOn.get(body)!.add(under);
      for (const below of restsOn.get(under)!) restsOn.get(body)!.add(below);
    }
  for (const a of bodies)
    for (const b of bodies) {
      if (a.first >= b.first || waived.has(a.id) || waived.has(b.id)) continue;
      if (restsOn.get(b)!.has(a)) say('order', 'rests-on', a.id, [b.id]);
      if (inTheWay(b, a)) say('order', 'in-the-way', a.id, [b.id]);
    }
}

function checkLoading(bodies: readonly Body[], loadingOrder: readonly string[], loaded: ReadonlySet<string>, say: Say): void {
  const byId = new Map(bodies.map((each) => [each.id, each]));
  if (loadingOrder.length !== bodies.length || new Set(loadingOrder).size !== bodies.length || loadingOrder.some((id) => !byId.has(id)))
    return say('loading-order', 'incomplete', 'loadingOrder');
  const inside: Body[] = [];
  for (const id of loadingOrder) {
    const a = byId.get(id)!;
    for (const { under } of supportsOf(a, bodies)) if (!inside.includes(under)) say('loading-order', 'before-support', id, [under.id]);
    if (loaded.has(id) && inside.some((each) => !loaded.has(each.id))) say('loading-order', 'after-loaded', id);
    for (const b of inside) if (inTheWay(b, a)) say('loading-order', 'lane-taken', id, [b.id]);
    inside.push(a);
  }
}

function checkMass(problem: TruckCaseData, truck: Truck, load: Load, bodies: readonly Body[], say: Say): void {
  const whole = judgeMass(truck, bodies, undefined, say);
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a), Math.abs(b));
  const far = bodies.reduce((most, each) => Math.max(most, each.x1), 0);
  if (!near(load.massKg, whole.kg)) say('claim', 'mass', load.id, [], { claimed: load.massKg, value: whole.kg });
  if (load.usedLengthMm !== far) say('claim', 'length', load.id, [], { claimed: load.usedLengthMm, value: far });
  if (!near(load.sideOffsetMm, whole.side)) say('claim', 'side', load.id, [], { claimed: load.sideOffsetMm, value: whole.side });
  for (const [axle, value] of Object.entries(whole.axles)) {
    const claimed = load.axles[axle];
    if (claimed === undefined || !near(claimed, value)) say('claim', 'axle', load.id, [axle], { claimed: claimed ?? NaN, value });
  }
  for (const [axle, claimed] of Object.entries(load.axles))
    if (!Object.hasOwn(whole.axles, axle)) say('claim', 'no-such-axle', load.id, [axle], { claimed });
  if (!problem.checkAfterStops) return;
  const stops = [...new Set(bodies.map((each) => each.first))].sort((a, b) => a - b);
  for (const stop of stops.slice(0, -1))
    judgeMass(
      truck,
      bodies.filter((each) => each.first > stop),
      stop,
      say,
    );
}

/** The most that any metre of the length carries, each piece spread evenly along its own; it begins or ends where a piece does. */
function heaviestMetreKg({ innerLengthMm }: Truck, bodies: readonly Body[]): number {
  const last = Math.max(0, innerLengthMm - 1000);
  const starts = bodies.flatMap((each) => [each.x0, each.x1, each.x0 - 1000, each.x1 - 1000]).map((x) => Math.min(last, Math.max(0, x)));
  const onMetre = (x: number) =>
    bodies.reduce((sum, each) => sum + (each.kg * Math.max(0, cross(x, x + 1000, each.x0, each.x1))) / (each.x1 - each.x0), 0);
  return Math.max(0, ...starts.map(onMetre));
}

const shareOf = (kg: number, share: number | undefined): number | undefined => (share === undefined ? undefined : share * kg);

function judgeMass(
  truck: Truck,
  bodies: readonly Body[],
  stop: number | undefined,
  say: Say,
): { kg: number; side: number; axles: Record<string, number> } {
  const kg = bodies.reduce((sum, each) => sum + each.kg, 0);
  const side = kg === 0 ? 0 : bodies.reduce((sum, each) => sum + each.kg * ((each.y0 + each.y1) / 2 - truck.innerWidthMm / 2), 0) / kg;
  const axles: Record<string, number> = {};
  const when: Record<string, number> = stop === undefined ? {} : { stop };
  const over = (what: string, value: number, most: number | undefined) =>
    most !== undefined && value > most + slackKgOrMm && say('limit', 'above', truck.id, [what], { value, most, ...when });
  const under = (what: string, value: number, least: number | undefined) =>
    least !== undefined && value < least - slackKgOrMm && say('limit', 'below', truck.id, [what], { value, least, ...when });
  over('mass', kg, truck.payloadKg);
  over('side offset', Math.abs(side), truck.maxSideOffsetMm);
  const end = kg === 0 ? 0 : bodies.reduce((sum, each) => sum + each.kg * ((each.x0 + each.x1) / 2 - truck.innerLengthMm / 2), 0) / kg;
  over('end offset', Math.abs(end), truck.maxEndOffsetMm);
  if (truck.maxKgPerMetre !== undefined) over('mass on a metre', heaviestMetreKg(truck, bodies), truck.maxKgPerMetre);
  const { semiTrailer: trailer, rigid } = truck;
  if (trailer) {
    const base = trailer.axleGroupXMm - trailer.kingpinXMm;
    axles.kingpinKg =
      trailer.tareKingpinKg + bodies.reduce((sum, each) => sum + (each.kg * (trailer.axleGroupXMm - (each.x0 + each.x1) / 2)) / base, 0);
    axles.axleGroupKg =
      trailer.tareAxleGroupKg + bodies.reduce((sum, each) => sum + (each.kg * ((each.x0 + each.x1) / 2 - trailer.kingpinXMm)) / base, 0);
    under('kingpin', axles.kingpinKg, 0);
    over('kingpin', axles.kingpinKg, trailer.maxKingpinKg);
    over('axle group', axles.axleGroupKg, trailer.maxAxleGroupKg);
    const { tractor } = trailer;
    if (tractor) {
      axles.driveKg = tractor.tareDriveKg + (axles.kingpinKg * (tractor.wheelbaseMm - tractor.kingpinAheadOfDriveMm)) / tractor.wheelbaseMm;
      axles.steerKg = tractor.tareSteerKg + (axles.kingpinKg * tractor.kingpinAheadOfDriveMm) / tractor.wheelbaseMm;
      axles.grossKg = axles.driveKg + axles.steerKg + axles.axleGroupKg;
      over('drive axle', axles.driveKg, tractor.maxDriveKg);
      over('steer axle', axles.steerKg, tractor.maxSteerKg);
      under('drive axle', axles.driveKg, shareOf(axles.grossKg, tractor.minDriveShareOfGross));
      under('steer axle', axles.steerKg, shareOf(axles.grossKg, tractor.minSteerShareOfGross));
    } else axles.grossKg = axles.kingpinKg + axles.axleGroupKg;
  } else if (rigid) {
    const base = rigid.rearAxleXMm - rigid.frontAxleXMm;
    axles.rearKg =
      rigid.tareRearKg + bodies.reduce((sum, each) => sum + (each.kg * ((each.x0 + each.x1) / 2 - rigid.frontAxleXMm)) / base, 0);
    axles.frontKg =
      rigid.tareFrontKg + bodies.reduce((sum, each) => sum + (each.kg * (rigid.rearAxleXMm - (each.x0 + each.x1) / 2)) / base, 0);
    axles.grossKg = axles.frontKg + axles.rearKg;
    over('front axle', axles.frontKg, rigid.maxFrontKg);
    over('rear axle', axles.rearKg, rigid.maxRearKg);
    under('front axle', axles.frontKg, shareOf(axles.grossKg, rigid.minFrontShareOfGross));
  }
  over('gross mass', axles.grossKg ?? kg, truck.maxGrossKg);
  return { kg, side, axles };
}

/** What is left over as too high or too large for every truck is so: alone in an empty one it would stand through the door and under the roof. */
function checkLeftOver(trucks: readonly Truck[], pieces: ReadonlyMap<string, Piece>, left: Judged['leftOver'], say: Say): void {
  for (const { id, code } of left) {
    const piece = pieces.get(id);
    if (!piece || (code !== 'too-high' && code !== 'too-large')) continue;
    const under = trucks.filter(
      (each) => piece.heightMm <= each.innerHeightMm && !(piece.heightMm > (each.doorHeightMm ?? piece.heightMm)),
    );
    const [long, wide] = [piece.lengthMm, piece.widthMm];
    const lies = (alongMm: number, acrossMm: number) => (each: (typeof trucks)[number]) =>
      alongMm <= each.innerLengthMm && acrossMm <= each.innerWidthMm && !(piece.massKg > (each.payloadKg ?? piece.massKg));
    const taking =
      code === 'too-high' ? under : under.filter((each) => lies(long, wide)(each) || (piece.mayTurn && lies(wide, long)(each)));
    if (taking[0]) say('left-over', code, id, [taking[0].id]);
  }
}

function checkClaims({ trucks, leftOver, bound, status }: Judged, say: Say): void {
  const length = trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  if (bound.trucks > trucks.length) say('bound', 'trucks', 'trucks', [], { bound: bound.trucks, value: trucks.length });
  if (bound.usedLengthMm > length) say('bound', 'length', 'usedLengthMm', [], { bound: bound.usedLengthMm, value: length });
  const isLeast = bound.trucks === trucks.length && bound.usedLengthMm === length;
  // What goes into no truck at all could not ride in a better load either.
  const mightRide = leftOver.some(({ code }) => code !== 'too-high' && code !== 'too-large');
  if (status === 'optimal' && (mightRide || !isLeast)) say('status', 'not-optimal', 'status');
}
