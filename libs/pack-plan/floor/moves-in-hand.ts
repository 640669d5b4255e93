import { type MoveMade, isSame } from './move-back.js';
import type { Floor } from './work-list.js';

/** Something done with a move on this device that the list does not show yet, in the order in which it was done. */
export interface MoveAction {
  readonly kind: 'move' | 'undo';
  readonly move: MoveMade;
}

export interface MovesInHand<Move extends MoveMade> {
  /** What is left, first the next; moves that were taken back lead. */
  readonly left: readonly (Move | MoveMade)[];
  /** The floor as it stands with what is on its way. */
  readonly floor: Floor;
}

/** A work list with what was done on this device since it was read. */
export function movesInHand<Move extends MoveMade>(
  { moves, floor }: { readonly moves: readonly Move[]; readonly floor: Floor },
  actions: readonly MoveAction[],
): MovesInHand<Move> {
  const open = unsettled(moves, actions);
  const done = open.filter((each) => each.kind === 'move').map(({ move }) => move);
  const back = open.filter((each) => each.kind === 'undo').map(({ move }) => move);
  const isDone = (move: MoveMade) => done.some((each) => isSame(each, move));
  return {
    left: [...[...back].reverse().filter((each) => !moves.some((move) => isSame(move, each))), ...moves.filter((each) => !isDone(each))],
    floor: open.reduce((now, { kind, move }) => afterMove(now, kind === 'move' ? move : { ...move, from: move.to, to: move.from }), floor),
  };
}

/** What the list does not show yet. Of what was done with one move the last word counts; a move that is not on the list any more is made. */
function unsettled(moves: readonly MoveMade[], actions: readonly MoveAction[]): readonly MoveAction[] {
  return actions.filter(({ kind, move }, index) => {
    const isLast = !actions.slice(index + 1).some((later) => isSame(later.move, move));
    const isOnList = moves.some((each) => isSame(each, move));
    return isLast && isOnList === (kind === 'move');
  });
}

/** The floor after one move; where the box is not on top of where it comes from, the floor as it was. */
export function afterMove(floor: Floor, { box, from, to }: MoveMade): Floor {
  const isThere = from === 'floor' ? floor.loose.includes(box) : floor.carts.some((each) => each.cart === from && each.boxes[0] === box);
  if (!isThere) return floor;
  return {
    carts: floor.carts.map((each) => {
      if (each.cart === from) return { ...each, boxes: each.boxes.slice(1) };
      return each.cart === to ? { ...each, boxes: [box, ...each.boxes] } : each;
    }),
    loose: to === 'floor' ? [...floor.loose, box] : floor.loose.filter((each) => each !== box),
  };
}
