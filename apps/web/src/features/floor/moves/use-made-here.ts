import { useState } from 'react';
import type { MoveMade } from '#pack-plan';

const most = 40;
const keyOf = (planId: string) => `moves made ${planId}`;

/** Moves that were made on this device, the last first: what can be taken back here. Kept over a reload. */
export function useMadeHere(planId: string) {
  const [made, setMade] = useState<readonly MoveMade[]>(() => JSON.parse(localStorage.getItem(keyOf(planId)) ?? '[]') as MoveMade[]);
  const keep = (next: readonly MoveMade[]) => {
    localStorage.setItem(keyOf(planId), JSON.stringify(next));
    setMade(next);
  };
  return {
    last: made[0],
    add: (move: MoveMade) => keep([move, ...made].slice(0, most)),
    takeLast: () => keep(made.slice(1)),
  };
}
