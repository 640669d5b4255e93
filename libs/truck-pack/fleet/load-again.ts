import type { Piece, Truck, TruckAnswer } from '../case/index.js';

/** A truck as it was loaded, and what is in it. */
export interface Loaded {
  readonly truck: Truck;
  readonly answer: TruckAnswer;
  readonly pieces: readonly Piece[];
}

/** What a load does not tell apart has the same key: all but the name and the group. */
export function alikeKeys(pieces: readonly Piece[]): ReadonlyMap<Piece, string> {
  return new Map(
    pieces.map((each) => [
      each,
      [each.lengthMm, each.widthMm, each.heightMm, each.massKg, each.mayTurn, each.firstOff, each.maxOnTopKg ?? '', each.floorOnly].join(
        ' ',
      ),
    ]),
  );
}

/** The load of a truck once more in a truck that is alike, with other pieces that are alike: as valid as the first. Undefined where the truck differs or too few such pieces are left. */
export function loadAgain(
  { truck, answer, pieces }: Loaded,
  into: Truck,
  left: readonly Piece[],
  keys: ReadonlyMap<Piece, string>,
): Loaded | undefined {
  if (JSON.stringify({ ...into, id: truck.id }) !== JSON.stringify(truck)) return undefined;
  const waiting = new Map<string, Piece[]>();
  // Taken from the end of each list: what comes first in the order goes first.
  for (let at = left.length - 1; at >= 0; at--) {
    const [piece, key] = [left[at] as Piece, keys.get(left[at] as Piece) as string];
    const alike = waiting.get(key);
    if (alike) alike.push(piece);
    else waiting.set(key, [piece]);
  }
  const instead = new Map<string, Piece>();
  for (const piece of pieces) {
    const other = waiting.get(keys.get(piece) as string)?.pop();
    if (!other) return undefined;
    instead.set(piece.id, other);
  }
  const idOf = (id: string) => (instead.get(id) as Piece).id;
  return {
    truck: into,
    pieces: [...instead.values()],
    answer: {
      ...answer,
      id: into.id,
      placements: answer.placements.map((each) => ({ ...each, id: idOf(each.id) })),
      loadingOrder: answer.loadingOrder.map(idOf),
    },
  };
}
