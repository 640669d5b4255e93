import { useEffect, useState } from 'react';
import type { MoveMade } from '#pack-plan';

const most = 40;
const keyOf = (planId: string) => `moves made ${planId}`;

/** Moves that were made on this device, the last first: what can be taken back here. Kept over a reload. */
export function useMadeHere(planId: string) {
  const [made, setMade] = useState<readonly MoveMade[]>(() => JSON.parse(localStorage.getItem(keyOf(planId)) ?? '[]') as MoveMade[]);
  useEffect(() => {
    try {
      localStorage.setItem(keyOf(planId), JSON.stringify(made));
    } catch {
      // the device is full: until the page is left it is known all the same
    }
  }, [planId, made]);
  return {
    last: made[0],
    add: (move: MoveMade) => setMade((before) => [move, ...before].slice(0, most)),
    takeLast: () => setMade((before) => before.slice(1)),
    /** Nothing was noted of it: a move cannot be taken back then, and one that was to be taken back still can. */
    unmade: (kind: 'move' | 'undo', { box, from, to }: MoveMade) =>
      setMade((before) => {
        if (kind === 'undo') return [{ box, from, to }, ...before];
        const at = before.findIndex((each) => each.box === box && each.from === from && each.to === to);
        return at < 0 ? before : before.toSpliced(at, 1);
      }),
  };
}
