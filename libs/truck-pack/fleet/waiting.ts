import { type Piece, type Truck, couldRide } from '../case/index.js';

/** What a load does not tell apart but for its mass has the same key: all but the name, the group and the mass. */
const keyOf = (each: Piece): string =>
  `${each.lengthMm} ${each.widthMm} ${each.heightMm} ${each.mayTurn} ${each.firstOff} ${each.maxOnTopKg ?? ''} ${each.floorOnly}`;

interface Queue {
  readonly pieces: Piece[];
  at: number;
}

/** Pieces that wait for a truck in a given order, those that are alike but for their mass together, so that taking some costs no more than those taken. */
export class Waiting {
  private readonly keys = new Map<Piece, string>();
  private readonly alike = new Map<string, Queue>();
  private readonly taken = new Set<Piece>();
  private at = 0;

  constructor(private readonly order: readonly Piece[]) {
    for (const piece of order) {
      const key = keyOf(piece);
      this.keys.set(piece, key);
      const queue = this.alike.get(key);
      if (queue) queue.pieces.push(piece);
      else this.alike.set(key, { pieces: [piece], at: 0 });
    }
  }

  get isEmpty(): boolean {
    return this.taken.size === this.order.length;
  }

  get left(): Piece[] {
    return this.order.filter((each) => !this.taken.has(each));
  }

  take(pieces: Iterable<Piece>): void {
    for (const piece of pieces) this.taken.add(piece);
  }

  /** Those that would go into the truck by themselves, in order. */
  *ableFor(truck: Truck): Generator<Piece> {
    while (this.at < this.order.length && this.taken.has(this.order[this.at] as Piece)) this.at++;
    for (let at = this.at; at < this.order.length; at++) {
      const piece = this.order[at] as Piece;
      if (!this.taken.has(piece) && couldRide(piece, [truck])) yield piece;
    }
  }

  /** For each of the pieces another that waits, alike and no heavier; undefined where there are too few. */
  insteadOf(pieces: readonly Piece[]): ReadonlyMap<Piece, Piece> | undefined {
    const kinds = new Map<string, Piece[]>();
    for (const piece of pieces) {
      const key = this.keys.get(piece) as string;
      const kind = kinds.get(key);
      if (kind) kind.push(piece);
      else kinds.set(key, [piece]);
    }
    const instead = new Map<Piece, Piece>();
    for (const [key, kind] of kinds) {
      const others = this.firstAlike(key, kind.length);
      if (!others) return undefined;
      for (const [rank, piece] of kind.sort(heaviestFirst).entries()) {
        const other = others[rank] as Piece;
        if (other.massKg > piece.massKg) return undefined;
        instead.set(piece, other);
      }
    }
    return instead;
  }

  private firstAlike(key: string, count: number): Piece[] | undefined {
    const queue = this.alike.get(key) as Queue;
    while (queue.at < queue.pieces.length && this.taken.has(queue.pieces[queue.at] as Piece)) queue.at++;
    const found: Piece[] = [];
    for (let at = queue.at; at < queue.pieces.length && found.length < count; at++) {
      const piece = queue.pieces[at] as Piece;
      if (!this.taken.has(piece)) found.push(piece);
    }
    return found.length === count ? found.sort(heaviestFirst) : undefined;
  }
}

const heaviestFirst = (a: Piece, b: Piece): number => b.massKg - a.massKg;

/** The same order, but what it does not tell apart is set like beside like, the heaviest first: a truck's load can then be repeated. */
export function likeBesideLike(pieces: readonly Piece[], worth: (piece: Piece) => number): Piece[] {
  const keyed = pieces.map((piece) => ({ piece, worth: worth(piece), key: keyOf(piece) }));
  const byKey = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return keyed
    .sort(
      (a, b) =>
        b.worth - a.worth ||
        b.piece.heightMm - a.piece.heightMm ||
        byKey(a.key, b.key) ||
        heaviestFirst(a.piece, b.piece) ||
        (a.piece.id < b.piece.id ? -1 : 1),
    )
    .map(({ piece }) => piece);
}
