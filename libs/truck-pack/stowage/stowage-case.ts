import { type Piece, type PlacementAnswer, type Truck, headroomOf } from '../case/index.js';
import { type ContainerBox, type ContainerInput, type ContainerPlacement, type StowageLimits } from '../container/index.js';

/** A container to be filled, and which pieces are of each of its kinds. */
export interface StowageCase {
  readonly input: ContainerInput;
  readonly kinds: readonly (readonly Piece[])[];
}

/** Pieces that are alike but for a little of their mass are one kind, as heavy as the heaviest of it: so whatever the search allows holds for each of them. */
const alikeWithinKg = 20;

/** The container search's case of a load space, `lengthMm` of it from the nose; upright always, lying never. */
export function stowageCase(truck: Truck, pieces: readonly Piece[], lengthMm = truck.innerLengthMm): StowageCase {
  const alike = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const { lengthMm: long, widthMm: wide, heightMm, mayTurn, maxOnTopKg, floorOnly, massKg } = piece;
    const key = [long, wide, heightMm, mayTurn, maxOnTopKg, floorOnly, Math.floor(massKg / alikeWithinKg)].join();
    const list = alike.get(key);
    if (list) list.push(piece);
    else alike.set(key, [piece]);
  }
  const kinds = [...alike.values()];
  const payloadKg = Math.min(truck.payloadKg ?? Infinity, truck.maxGrossKg ?? Infinity);
  const limits: StowageLimits = {
    ...(payloadKg === Infinity ? {} : { payloadKg }),
    mostKgPerMetre: truck.maxKgPerMetre,
    // Where the load is kept short of the whole length, its centre is brought to the middle afterwards.
    mostEndOffset: lengthMm === truck.innerLengthMm ? truck.maxEndOffsetMm : undefined,
    mostSideOffset: truck.maxSideOffsetMm,
  };
  return {
    kinds,
    input: {
      length: lengthMm,
      width: truck.innerWidthMm,
      height: headroomOf(truck),
      boxes: kinds.map(boxOf),
      support: 'full',
      blocked: truck.blocked.map(({ xMm, yMm, zMm, lengthMm: dx, widthMm: dy, heightMm: dz }) => ({ x: xMm, y: yMm, z: zMm, dx, dy, dz })),
      limits,
    },
  };
}

const boxOf = (alike: readonly Piece[]): ContainerBox => {
  const { lengthMm, widthMm, heightMm, mayTurn, maxOnTopKg, floorOnly } = alike[0]!;
  return {
    edges: [lengthMm, widthMm, heightMm],
    mayStand: [false, false, true],
    mayTurn,
    count: alike.length,
    massKg: Math.max(...alike.map((each) => each.massKg)),
    mostOnTopKg: maxOnTopKg,
    isFloorOnly: floorOnly,
  };
};

/** The pieces for the boxes of a packing; of one kind the heavier come lower. */
export function piecesAt(
  { kinds }: StowageCase,
  placements: readonly ContainerPlacement[],
): readonly (PlacementAnswer & { readonly piece: Piece })[] {
  const left = kinds.map((alike) => [...alike].sort((a, b) => a.massKg - b.massKg || (a.id < b.id ? 1 : -1)));
  return [...placements]
    .sort((a, b) => a.z - b.z || a.x - b.x || a.y - b.y)
    .map(({ box, x, y, z, dx, dy }) => {
      const piece = left[box]!.pop()!;
      return { piece, id: piece.id, xMm: x, yMm: y, zMm: z, turned: dx !== piece.lengthMm || dy !== piece.widthMm };
    });
}
