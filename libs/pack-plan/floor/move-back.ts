import type { MoveBackRefusal } from '#trade';

/** A box move: from and to are carts' ids, or "floor". */
export interface MoveMade {
  readonly box: string;
  readonly from: string;
  readonly to: string;
}

/** What is on record of a floor, oldest first. `read anew`: somebody wrote down how a cart of the move, or its box, stands. */
export type FloorRecord = ({ readonly what: 'moved' | 'moved back' } & MoveMade) | { readonly what: 'read anew' };

/**
 * What speaks against taking a move back; null where nothing does. A move is the last that was made with its box and its carts, or something stands on it:
 * what was moved since, and not moved back, comes first. The floor itself has no top.
 */
export function againstMoveBack(records: readonly FloorRecord[], move: MoveMade): MoveBackRefusal | null {
  const standing = records.reduce<readonly FloorRecord[]>((made, record) => {
    if (record.what !== 'moved back') return [...made, record];
    const undone = made.findLastIndex(
      (each) => each.what === 'moved' && isSame(each, { box: record.box, from: record.to, to: record.from }),
    );
    return made.filter((_each, index) => index !== undone);
  }, []);
  const at = standing.findLastIndex((each) => each.what === 'moved' && isSame(each, move));
  if (at < 0) return { code: 'not-moved', ...move };
  const since = standing.slice(at + 1).find((each) => each.what !== 'moved' || touches(each, move));
  if (!since) return null;
  return since.what === 'read anew' ? { code: 'read-anew', ...move } : { code: 'moved-since', ...move, later: since.box };
}

export const isSame = (one: MoveMade, other: MoveMade): boolean => one.box === other.box && one.from === other.from && one.to === other.to;

function touches(one: MoveMade, other: MoveMade): boolean {
  const carts = [other.from, other.to].filter((each) => each !== 'floor');
  return one.box === other.box || carts.includes(one.from) || carts.includes(one.to);
}
