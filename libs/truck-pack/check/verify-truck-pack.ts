import { type KeepOptions, type KeptPlacement, type TruckCase, type TruckPackAnswer, type Violation, unknownKept } from '../case/index.js';

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
export function verifyTruckPack(problem: TruckCase, answer: TruckPackAnswer, options: KeepOptions = {}): readonly Violation[] {
  const found: Violation[] = [...(answer.refused ?? []), ...unknownKept(problem, options)];
  const say = (code: string, subject: string, sentence: string) => found.push({ code, subject, sentence });
  const pieces = new Map(problem.pieces.map((each) => [each.id, each]));
  const waived = new Set(options.waived);
  const loaded = new Set((options.kept ?? []).flatMap((each) => (each.loaded ? [each.id] : [])));
  for (const id of waived)
    if (!answer.waived?.includes(id)) say('waived', id, 'has its unloading order waived, and the answer does not name it');
  const times = new Map<string, number>();
  const count = (id: string) => times.set(id, (times.get(id) ?? 0) + 1);
  answer.leftOver.forEach(({ id, reason }) => {
    count(id);
    if (reason === '') say('no-reason', id, 'is left over without a reason');
  });
  const trucksSeen = new Set<string>();
  for (const load of answer.trucks) {
    const truck = problem.trucks.find((each) => each.id === load.id);
    if (!truck || trucksSeen.has(load.id)) {
      say('unknown-truck', load.id, 'is no truck of the case, or stands twice');
      continue;
    }
    trucksSeen.add(load.id);
    load.placements.forEach(({ id }) => count(id));
    const bodies = bodiesOf(pieces, load.placements, say);
    checkPlaces(truck, bodies, say);
    checkStanding(problem.minSupport, bodies, say);
    checkUnloading(bodies, waived, say);
    checkLoading(bodies, load.loadingOrder, loaded, say);
    checkMass(problem, truck, load, bodies, say);
  }
  for (const { id } of problem.pieces)
    if (times.get(id) !== 1) say('count', id, `is placed or left over ${times.get(id) ?? 0} times instead of once`);
  checkKept(answer, options.kept ?? [], say);
  checkClaims(answer, say);
  return found;
}

/** What is wrong with kept placements by themselves: ids, places, support, what they bear, the order among them. Axles and balance are the whole load's. */
export function verifyKept(problem: TruckCase, options: KeepOptions): readonly Violation[] {
  const found = unknownKept(problem, options);
  if (found.length > 0) return found;
  const say = (code: string, subject: string, sentence: string) => found.push({ code, subject, sentence });
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
    if (truck.payloadKg !== undefined && massKg > truck.payloadKg + 1e-4)
      say(
        'limit',
        truck.id,
        `what is kept in it, ${bodies.map((each) => each.id).join(', ')}, weighs ${massKg} kg, above ${truck.payloadKg}`,
      );
  }
  return found;
}

function bodiesOf(
  pieces: ReadonlyMap<string, TruckCase['pieces'][number]>,
  placements: readonly Omit<KeptPlacement, 'truck'>[],
  say: Say,
): Body[] {
  const bodies: Body[] = [];
  for (const { id, xMm, yMm, zMm, turned } of placements) {
    const piece = pieces.get(id);
    if (!piece) {
      say('unknown-piece', id, 'is no piece of the case');
      continue;
    }
    if (turned && !piece.mayTurn) say('turned', id, 'is turned but may not be');
    if (![xMm, yMm, zMm].every(Number.isInteger)) say('not-whole', id, 'does not stand on whole millimetres');
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

function checkKept(answer: TruckPackAnswer, kept: readonly KeptPlacement[], say: Say): void {
  for (const { truck, id, xMm, yMm, zMm, turned } of kept) {
    const at = answer.trucks.find((each) => each.id === truck)?.placements.find((each) => each.id === id);
    if (!at || at.xMm !== xMm || at.yMm !== yMm || at.zMm !== zMm || at.turned !== turned)
      say('kept', id, `is not where it is kept: ${truck}, ${xMm} / ${yMm} / ${zMm} mm${turned ? ', turned' : ''}`);
  }
}

type Say = (code: string, subject: string, sentence: string) => void;
type Truck = TruckCase['trucks'][number];
type Load = TruckPackAnswer['trucks'][number];

const cross = (a0: number, a1: number, b0: number, b1: number): number => Math.min(a1, b1) - Math.max(a0, b0);
const meet = (a0: number, a1: number, b0: number, b1: number): boolean => cross(a0, a1, b0, b1) > 0;

function checkPlaces(truck: Truck, bodies: readonly Body[], say: Say): void {
  const top = Math.min(truck.innerHeightMm, truck.doorHeightMm ?? truck.innerHeightMm);
  const sorted = [...bodies].sort((a, b) => a.x0 - b.x0);
  sorted.forEach((a, index) => {
    if (a.x0 < 0 || a.y0 < 0 || a.z0 < 0 || a.x1 > truck.innerLengthMm || a.y1 > truck.innerWidthMm || a.z1 > truck.innerHeightMm)
      say('outside', a.id, 'does not stand inside the truck');
    if (a.z1 > top || a.z1 - a.z0 > top) say('door', a.id, 'is higher than the door');
    for (const { xMm, yMm, zMm, lengthMm, widthMm, heightMm } of truck.blocked)
      if (meet(a.x0, a.x1, xMm, xMm + lengthMm) && meet(a.y0, a.y1, yMm, yMm + widthMm) && meet(a.z0, a.z1, zMm, zMm + heightMm))
        say('blocked', a.id, 'stands in a blocked place');
    for (let at = index + 1; at < sorted.length && sorted[at]!.x0 < a.x1; at++) {
      const b = sorted[at]!;
      if (meet(a.x0, a.x1, b.x0, b.x1) && meet(a.y0, a.y1, b.y0, b.y1) && meet(a.z0, a.z1, b.z0, b.z1))
        say('overlap', a.id, `overlaps ${b.id}`);
    }
  });
}

const supportsOf = (body: Body, bodies: readonly Body[]): { under: Body; area: number }[] =>
  bodies.flatMap((under) => {
    if (under === body || under.z1 !== body.z0 || body.z0 === 0) return [];
    const [dx, dy] = [cross(body.x0, body.x1, under.x0, under.x1), cross(body.y0, body.y1, under.y0, under.y1)];
    return dx > 0 && dy > 0 ? [{ under, area: dx * dy }] : [];
  });

function checkStanding(minSupport: number, bodies: readonly Body[], say: Say): void {
  const carried = new Map<Body, number>(bodies.map((each) => [each, 0]));
  // From the top down: when a piece is reached, all that stands on it has been passed on.
  for (const body of [...bodies].sort((a, b) => b.z0 - a.z0)) {
    const on = carried.get(body)!;
    if (body.bears !== undefined && on > body.bears + 1e-6) say('bears', body.id, `carries ${on} kg, more than ${body.bears}`);
    if (body.z0 === 0) continue;
    if (body.floorOnly) say('floor-only', body.id, 'must stand on the floor');
    const supports = supportsOf(body, bodies);
    const area = supports.reduce((sum, each) => sum + each.area, 0);
    const base = (body.x1 - body.x0) * (body.y1 - body.y0);
    if (area === 0 || area < minSupport * base - 1e-6) say('support', body.id, `only ${area} of ${base} mm2 of its base is supported`);
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
      if (restsOn.get(b)!.has(a)) say('order', a.id, `${b.id} rests on it but comes off later`);
      if (inTheWay(b, a)) say('order', a.id, `${b.id} stands in its way to the door but comes off later`);
    }
}

function checkLoading(bodies: readonly Body[], loadingOrder: readonly string[], loaded: ReadonlySet<string>, say: Say): void {
  const byId = new Map(bodies.map((each) => [each.id, each]));
  if (loadingOrder.length !== bodies.length || new Set(loadingOrder).size !== bodies.length || loadingOrder.some((id) => !byId.has(id)))
    return say('loading-order', 'loadingOrder', 'does not name every piece of the truck once');
  const inside: Body[] = [];
  for (const id of loadingOrder) {
    const a = byId.get(id)!;
    for (const { under } of supportsOf(a, bodies))
      if (!inside.includes(under)) say('loading-order', id, `goes in before ${under.id}, on which it stands`);
    if (loaded.has(id) && inside.some((each) => !loaded.has(each.id)))
      say('loading-order', id, 'is loaded already and must go in before the rest');
    for (const b of inside) if (inTheWay(b, a)) say('loading-order', id, `goes in when ${b.id} already stands in its lane`);
    inside.push(a);
  }
}

function checkMass(problem: TruckCase, truck: Truck, load: Load, bodies: readonly Body[], say: Say): void {
  const whole = judgeMass(truck, bodies, '', say);
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-4 * Math.max(1, Math.abs(a), Math.abs(b));
  if (!near(load.massKg, whole.kg)) say('claim', load.id, `says ${load.massKg} kg, weighs ${whole.kg}`);
  if (load.usedLengthMm !== bodies.reduce((far, each) => Math.max(far, each.x1), 0))
    say('claim', load.id, 'usedLengthMm is not the far end of the last piece');
  if (!near(load.sideOffsetMm, whole.side)) say('claim', load.id, `sideOffsetMm is ${whole.side}`);
  for (const [axle, kg] of Object.entries(whole.axles))
    if (load.axles[axle] === undefined || !near(load.axles[axle], kg)) say('claim', load.id, `${axle} is ${kg}, not ${load.axles[axle]}`);
  if (!problem.checkAfterStops) return;
  const stops = [...new Set(bodies.map((each) => each.first))].sort((a, b) => a - b);
  for (const stop of stops.slice(0, -1))
    judgeMass(
      truck,
      bodies.filter((each) => each.first > stop),
      ` after stop ${stop}`,
      say,
    );
}

function judgeMass(
  truck: Truck,
  bodies: readonly Body[],
  when: string,
  say: Say,
): { kg: number; side: number; axles: Record<string, number> } {
  const kg = bodies.reduce((sum, each) => sum + each.kg, 0);
  const side = kg === 0 ? 0 : bodies.reduce((sum, each) => sum + each.kg * ((each.y0 + each.y1) / 2 - truck.innerWidthMm / 2), 0) / kg;
  const axles: Record<string, number> = {};
  const over = (what: string, value: number, most: number | undefined) =>
    most !== undefined && value > most + 1e-4 && say('limit', truck.id, `${what} ${value}${when} is above ${most}`);
  const under = (what: string, value: number, least: number | undefined) =>
    least !== undefined && value < least - 1e-4 && say('limit', truck.id, `${what} ${value}${when} is below ${least}`);
  over('mass', kg, truck.payloadKg);
  over('side offset', Math.abs(side), truck.maxSideOffsetMm);
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
      under(
        'drive axle',
        axles.driveKg,
        tractor.minDriveShareOfGross === undefined ? undefined : tractor.minDriveShareOfGross * axles.grossKg,
      );
      under(
        'steer axle',
        axles.steerKg,
        tractor.minSteerShareOfGross === undefined ? undefined : tractor.minSteerShareOfGross * axles.grossKg,
      );
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
    under('front axle', axles.frontKg, rigid.minFrontShareOfGross === undefined ? undefined : rigid.minFrontShareOfGross * axles.grossKg);
  }
  over('gross mass', axles.grossKg ?? kg, truck.maxGrossKg);
  return { kg, side, axles };
}

function checkClaims(answer: TruckPackAnswer, say: Say): void {
  const length = answer.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  if (answer.bound.trucks > answer.trucks.length)
    say('bound', 'trucks', `the bound ${answer.bound.trucks} is above ${answer.trucks.length}`);
  if (answer.bound.usedLengthMm > length) say('bound', 'usedLengthMm', `the bound ${answer.bound.usedLengthMm} is above ${length}`);
  if (
    answer.status === 'optimal' &&
    (answer.leftOver.some(({ reason }) => reason.startsWith('no place')) ||
      answer.bound.trucks !== answer.trucks.length ||
      answer.bound.usedLengthMm !== length)
  )
    say('status', 'status', 'is optimal but a bound is not met');
}
