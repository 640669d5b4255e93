import { type Action, type Answer, type KeptAction, afterAnswer, isTooOld, tooOldReason } from './queue.js';

/** Where actions are kept; every change is on disk when its promise is fulfilled. */
export interface OutboxStore {
  add(action: Action): Promise<KeptAction>;
  all(): Promise<readonly KeptAction[]>;
  /** The oldest of a person that waits: order is kept, so that a move follows the move that it needs. */
  next(personId: string): Promise<KeptAction | undefined>;
  put(action: KeptAction): Promise<void>;
  remove(place: number): Promise<void>;
}

export interface WorkOff {
  readonly store: OutboxStore;
  readonly personId: string;
  readonly send: (action: KeptAction) => Promise<Answer>;
  readonly now: () => Date;
  /** After each change of what is kept; `taken` is what the house now has. */
  readonly changed: (taken: KeptAction | null) => void;
}

/** Sends one after the other, in order, until nothing waits or there is a reason to stop. */
export async function workOff({ store, personId, send, now, changed }: WorkOff): Promise<'empty' | 'after a pause' | 'when signed in'> {
  for (;;) {
    const action = await store.next(personId);
    if (!action) return 'empty';
    const answer: Answer = isTooOld(action, now()) ? { is: 'refused', reason: tooOldReason } : await send(action);
    const next = afterAnswer(action, answer);
    if (next.action === null) await store.remove(action.place);
    else if (next.action !== action) await store.put(next.action);
    changed(next.action === null ? action : null);
    if (next.goOn !== 'at once') return next.goOn;
  }
}
