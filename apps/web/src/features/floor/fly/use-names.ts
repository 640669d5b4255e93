import { useState } from 'react';

/** Who flies a hang: chosen once, kept on this device. */
export interface Names {
  /** Who leads the lift, and who watches it. */
  readonly leads: string;
  readonly watches: string;
}

/** Two people of different names; null until they are chosen. */
export function useNames(planId: string, hang: string) {
  const key = `flies ${planId} ${hang}`;
  const [names, setNames] = useState<Names | null>(() => JSON.parse(localStorage.getItem(key) ?? 'null') as Names | null);
  const choose = (next: Names | null) => {
    if (next) localStorage.setItem(key, JSON.stringify(next));
    else localStorage.removeItem(key);
    setNames(next);
  };
  return { names, choose };
}

export const isTwo = ({ leads, watches }: Names): boolean =>
  leads.trim() !== '' && watches.trim() !== '' && leads.trim().toLowerCase() !== watches.trim().toLowerCase();
