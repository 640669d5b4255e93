import { useState } from 'react';
import { nameRead } from './name-read.js';
import { signal } from './signal.js';

/** Boxes as they are read, the top first. */
export function useTopDown(planId: string, known: readonly { readonly id: string; readonly kind: string }[]) {
  const [boxes, setBoxes] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<string | null>(null);
  const stop = (sentence: string) => {
    signal(false);
    setSaid(sentence);
  };
  const read = async (code: string) => {
    const name = await nameRead(planId, code, known);
    if (name.is === 'said') return stop(name.sentence);
    if (name.kind !== 'box') return stop(`${name.id} is no box.`);
    signal(true);
    setSaid(null);
    return setBoxes((before) => (before.includes(name.id) ? before : [...before, name.id]));
  };
  const set = (next: readonly string[]) => {
    setSaid(null);
    setBoxes(next);
  };
  return {
    boxes,
    said,
    onCode: (code: string) => void read(code),
    takeLast: () => set(boxes.slice(0, -1)),
    takeAll: set,
  };
}
