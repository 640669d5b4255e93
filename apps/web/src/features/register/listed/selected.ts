import { useState } from 'react';
import type { ItemLine } from './items-asked.js';

/** As many as are changed, printed or given out one by one at once. */
export const mostSelected = 200;

/** Items picked out of a list: they stay picked whatever the list shows next. */
export function useSelected() {
  const [selected, setSelected] = useState<ReadonlyMap<string, ItemLine>>(new Map());
  const pick = (lines: readonly ItemLine[], isPicked: boolean) =>
    setSelected((before) => {
      const next = new Map(before);
      for (const each of lines) {
        if (!isPicked) next.delete(each.id);
        else if (next.size < mostSelected || next.has(each.id)) next.set(each.id, each);
      }
      return next;
    });
  return { selected, pick, clear: () => setSelected(new Map()) };
}

export type Selected = ReturnType<typeof useSelected>;
