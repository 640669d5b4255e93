import { mostPayloadKg } from '../bound/index.js';
import { type Piece, type Truck, fits } from '../case/index.js';
import type { TruckRows } from '../rows/index.js';

/** Pieces that belong together and the floor that they need, millimetres of a truck's length. */
interface Unit {
  readonly pieces: readonly Piece[];
  readonly floorMm: number;
  readonly massKg: number;
}

export interface FleetTask {
  readonly trucks: readonly Truck[];
  readonly pieces: readonly Piece[];
  /** Floor that a piece needs, an estimate, millimetres. */
  readonly floorOf: (piece: Piece) => number;
  /** Floor and mass that what is kept takes of a truck. */
  readonly takenMm: (truck: Truck) => number;
  readonly takenKg: (truck: Truck) => number;
  readonly random: () => number;
  /** Whole groups in a chance order instead of largest first. */
  readonly shake: boolean;
  /** Truck after truck by the unloading order, so that each has few stops; else whole groups. */
  readonly byStops: boolean;
  /** A known load that is changed a little instead of dealing anew. */
  readonly from?: ReadonlyMap<Truck, TruckRows>;
  readonly pack: (truck: Truck, pieces: readonly Piece[]) => TruckRows;
  readonly isOver: () => boolean;
}

interface Hold {
  readonly truck: Truck;
  pieces: Piece[];
  roomMm: number;
  roomKg: number;
  rows: TruckRows | undefined;
}

/** Pieces to trucks: groups whole where they fit, then what finds no room in its truck moves to the one with most to spare. Undefined where the trucks do not hold them in rows. */
export function fillFleet(task: FleetTask): ReadonlyMap<Truck, TruckRows> | undefined {
  const holds = task.from ? changed(task, task.from) : deal(task);
  for (let repair = 0; repair <= 6 * holds.length + 6; repair++) {
    for (const hold of holds) {
      if (task.isOver()) return undefined;
      hold.rows ??= task.pack(hold.truck, hold.pieces);
    }
    const bad = holds.find((hold) => hold.rows!.over.length > 0 || hold.rows!.outsideKg > 0);
    if (!bad) return new Map(holds.map((hold) => [hold.truck, hold.rows!]));
    if (holds.length === 1) return undefined;
    const moving = bad.rows!.over.length > 0 ? bad.rows!.over : someOf(bad.pieces, task.random);
    if (!moveOut(task, holds, bad, moving)) return undefined;
  }
  return undefined;
}

const spareMm = (hold: Hold): number => (hold.rows && hold.rows.space ? hold.truck.innerLengthMm - hold.rows.endMm : hold.roomMm);

function moveOut(task: FleetTask, holds: readonly Hold[], from: Hold, moving: readonly Piece[]): boolean {
  const spare = new Map(holds.map((hold) => [hold, hold.rows && hold.rows.over.length > 0 ? 0 : spareMm(hold)]));
  let moved = false;
  for (const piece of moving) {
    const target = holds
      .filter((hold) => hold !== from && fits(piece, hold.truck) && hold.roomKg >= piece.massKg)
      .sort((a, b) => spare.get(b)! - spare.get(a)! || (task.shake ? task.random() - 0.5 : 0))[0];
    if (!target) continue;
    shift(piece, from, target, task);
    spare.set(target, spare.get(target)! - task.floorOf(piece));
    moved = true;
  }
  return moved;
}

function shift(piece: Piece, from: Hold, to: Hold, { floorOf }: FleetTask): void {
  from.pieces = from.pieces.filter((each) => each !== piece);
  to.pieces = [...to.pieces, piece];
  from.roomKg += piece.massKg;
  to.roomKg -= piece.massKg;
  from.roomMm += floorOf(piece);
  to.roomMm -= floorOf(piece);
  from.rows = to.rows = undefined;
}

/** The known load with a few pieces of one truck moved to another, or exchanged with pieces of it. */
function changed(task: FleetTask, from: ReadonlyMap<Truck, TruckRows>): Hold[] {
  const { trucks, pieces, random, floorOf } = task;
  const own = new Set(pieces);
  const holds = trucks.map((truck): Hold => {
    const rows = from.get(truck);
    const inside = (rows?.space?.placed ?? []).map((each) => each.piece).filter((each) => own.has(each));
    return {
      truck,
      pieces: inside,
      roomMm: truck.innerLengthMm - task.takenMm(truck) - inside.reduce((sum, each) => sum + floorOf(each), 0),
      roomKg: mostPayloadKg(truck) - task.takenKg(truck) - inside.reduce((sum, each) => sum + each.massKg, 0),
      rows,
    };
  });
  const [a, b] = [...holds]
    .map((hold) => [random(), hold] as const)
    .sort(([p], [q]) => p - q)
    .map(([, hold]) => hold);
  const give = (giver: Hold, taker: Hold) => {
    for (const piece of someOf(giver.pieces, random))
      if (fits(piece, taker.truck) && taker.roomKg >= piece.massKg) shift(piece, giver, taker, task);
  };
  if (a && b) {
    give(a, b);
    if (random() < 0.6) give(b, a);
  }
  return holds;
}

/** A few pieces of one stop: what a truck outside its limits gives away. */
function someOf(pieces: readonly Piece[], random: () => number): Piece[] {
  const first = pieces[Math.floor(random() * pieces.length)];
  if (!first) return [];
  return pieces.filter((each) => each.firstOff === first.firstOff).slice(0, 1 + Math.floor(random() * 3));
}

function deal(task: FleetTask): Hold[] {
  const { trucks, pieces, floorOf, random, shake } = task;
  const need = pieces.reduce((sum, each) => sum + floorOf(each), 0);
  const room = trucks.reduce((sum, each) => sum + each.innerLengthMm - task.takenMm(each), 0);
  const share = Math.min(1, (need / room) * 1.02);
  const holds = trucks.map(
    (truck): Hold => ({
      truck,
      pieces: [],
      roomMm: (truck.innerLengthMm - task.takenMm(truck)) * share,
      roomKg: mostPayloadKg(truck) - task.takenKg(truck),
      rows: undefined,
    }),
  );
  if (task.byStops) return dealByStops(task, holds);
  const units = unitsOf(pieces, floorOf);
  const keys = new Map(units.map((unit) => [unit, shake ? unit.floorMm * (0.5 + random()) : unit.floorMm]));
  for (const unit of [...units].sort((a, b) => keys.get(b)! - keys.get(a)!)) place(holds, unit, task);
  return holds;
}

/** Last off first, like beside like, each truck filled to its share: a stop is then split between two trucks at most. */
function dealByStops({ pieces, floorOf, random, shake }: FleetTask, holds: readonly Hold[]): Hold[] {
  const shape = (piece: Piece) => `${piece.lengthMm} ${piece.widthMm} ${piece.heightMm} ${piece.floorOnly}`;
  const chance = new Map([...new Set(pieces.map(shape))].map((each) => [each, shake ? random() : 0]));
  const key = (piece: Piece) => chance.get(shape(piece))!;
  const sorted = pieces
    .map((piece) => ({ piece, shape: shape(piece), key: key(piece) }))
    .sort(
      (a, b) =>
        b.piece.firstOff - a.piece.firstOff ||
        a.key - b.key ||
        (a.shape < b.shape ? -1 : a.shape > b.shape ? 1 : 0) ||
        (a.piece.id < b.piece.id ? -1 : 1),
    )
    .map(({ piece }) => piece);
  let at = 0;
  for (const piece of sorted) {
    const open = () => holds[at]!.roomMm >= floorOf(piece) / 2 && holds[at]!.roomKg >= piece.massKg;
    while (at < holds.length - 1 && !open()) at++;
    const hold = fits(piece, holds[at]!.truck) ? holds[at]! : (holds.find((each) => fits(piece, each.truck)) ?? holds[at]!);
    hold.pieces.push(piece);
    hold.roomMm -= floorOf(piece);
    hold.roomKg -= piece.massKg;
  }
  return [...holds];
}

function unitsOf(pieces: readonly Piece[], floorOf: (piece: Piece) => number): Unit[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = piece.group === undefined ? `stop ${piece.firstOff}` : `group ${piece.group}`;
    const group = groups.get(key);
    if (group) group.push(piece);
    else groups.set(key, [piece]);
  }
  return [...groups.values()].map((each) => ({
    pieces: each,
    floorMm: each.reduce((sum, piece) => sum + floorOf(piece), 0),
    massKg: each.reduce((sum, piece) => sum + piece.massKg, 0),
  }));
}

/** Whole into the fullest truck that takes it; else piece by piece, last off first, into the emptiest. */
function place(holds: readonly Hold[], unit: Unit, { floorOf, isOver }: FleetTask): void {
  const whole = holds
    .filter((hold) => hold.roomMm >= unit.floorMm && hold.roomKg >= unit.massKg && unit.pieces.every((piece) => fits(piece, hold.truck)))
    .sort((a, b) => a.roomMm - b.roomMm)[0];
  for (const piece of [...unit.pieces].sort((a, b) => b.firstOff - a.firstOff || b.massKg - a.massKg)) {
    // What is dealt when the work is used up is not packed any more.
    if (isOver()) return;
    const hold = whole ?? emptiest(holds, piece);
    hold.pieces.push(piece);
    hold.roomMm -= floorOf(piece);
    hold.roomKg -= piece.massKg;
  }
}

/** Of the trucks that take the piece, or take it least badly, the one with most room; the first of equals. */
function emptiest(holds: readonly Hold[], piece: Piece): Hold {
  const able = (hold: Hold) => Number(fits(piece, hold.truck)) * 2 + Number(hold.roomKg >= piece.massKg);
  let [best, most] = [holds[0]!, -1];
  for (const hold of holds) {
    const here = able(hold);
    if (here > most || (here === most && hold.roomMm > best.roomMm)) [best, most] = [hold, here];
  }
  return best;
}
