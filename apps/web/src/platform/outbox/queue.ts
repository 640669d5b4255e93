/** Something that somebody did on the floor, as it is kept on the device until the house has it. */
export interface Action {
  /** Made here; the house carries an id out once, however often it comes (RFC 9562). */
  readonly id: string;
  /** Which of the floor's actions it is. */
  readonly kind: string;
  readonly values: Readonly<Record<string, unknown>>;
  /** What was done, for the person. */
  readonly words: string;
  /** By the clock of this device, ISO 8601. */
  readonly doneAt: string;
  readonly personId: string;
  readonly personName: string;
  readonly tourId: string;
  readonly showId: string;
}

export interface KeptAction extends Action {
  /** Order on this device. */
  readonly place: number;
  /** Since when it waits, ISO 8601: when it was done, or when the person had it sent again. */
  readonly since: string;
  /** `not taken`: the house said no; kept with its reason until the person has seen it. */
  readonly state: 'waiting' | 'not taken';
  readonly reason: string | null;
  /** How often something broke on the other side while it was sent. */
  readonly faults: number;
}

/** How the sending of one action went. */
export type Answer =
  | { readonly is: 'taken' }
  | { readonly is: 'refused'; readonly reason: string }
  | { readonly is: 'broken'; readonly reason: string }
  | { readonly is: 'no network' }
  | { readonly is: 'signed out' };

/** What becomes of the action, and how to go on. */
export interface Next {
  /** null: it is done and leaves the device. */
  readonly action: KeptAction | null;
  readonly goOn: 'at once' | 'after a pause' | 'when signed in';
}

/** The house forgets a request after thirty days: later it could be carried out twice. */
const daysToSend = 29;
const dayMs = 86_400_000;

/** An action that breaks the other side each time must not hold up all that follow. */
const mostFaults = 8;

export const isTooOld = (action: Pick<KeptAction, 'since'>, now: Date): boolean =>
  now.getTime() - Date.parse(action.since) > daysToSend * dayMs;

export const tooOldReason = `It has waited for more than ${daysToSend} days. See whether it has been done since, and do it again if not.`;

export function afterAnswer(action: KeptAction, answer: Answer): Next {
  switch (answer.is) {
    case 'taken':
      return { action: null, goOn: 'at once' };
    case 'refused':
      return { action: { ...action, state: 'not taken', reason: answer.reason }, goOn: 'at once' };
    case 'broken': {
      const faults = action.faults + 1;
      if (faults >= mostFaults) return { action: { ...action, faults, state: 'not taken', reason: answer.reason }, goOn: 'at once' };
      return { action: { ...action, faults }, goOn: 'after a pause' };
    }
    case 'no network':
      return { action, goOn: 'after a pause' };
    case 'signed out':
      return { action, goOn: 'when signed in' };
  }
}

const shortestPauseMs = 1_000;
const longestPauseMs = 60_000;

/** Doubled with each failure in a row, up to a minute; `chance` from 0 to 1 spreads devices that came back at the same moment. */
export function pauseAfter(failuresInARow: number, chance: number): number {
  return Math.min(longestPauseMs, shortestPauseMs * 2 ** Math.min(10, failuresInARow - 1)) * (0.5 + chance / 2);
}
