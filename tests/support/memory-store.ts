import type { KeptAction } from '../../apps/web/src/platform/outbox/queue.js';
import type { OutboxStore } from '../../apps/web/src/platform/outbox/work-off.js';

/** The store of a device, in memory. */
export function memoryStore(): OutboxStore & { readonly kept: Map<number, KeptAction> } {
  const kept = new Map<number, KeptAction>();
  let last = 0;
  return {
    kept,
    add: (each) => {
      const row = { ...each, since: each.doneAt, place: ++last, state: 'waiting' as const, reason: null, faults: 0 };
      kept.set(row.place, row);
      return Promise.resolve(row);
    },
    all: () => Promise.resolve([...kept.values()]),
    next: (personId) => Promise.resolve([...kept.values()].find((each) => each.personId === personId && each.state === 'waiting')),
    put: (each) => Promise.resolve(void kept.set(each.place, each)),
    remove: (place) => Promise.resolve(void kept.delete(place)),
  };
}
