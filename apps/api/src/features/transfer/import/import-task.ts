import type { SignedIn } from '../../../platform/sign-in/person.js';

/** What the thread is given: plain data. */
export interface ImportTask {
  readonly id: string;
  readonly databaseUrl: string;
  /** "items/box", "models/boxes", "examinations". */
  readonly of: string;
  readonly bytes: Uint8Array;
  readonly dryRun: boolean;
  readonly reason: string;
  readonly who: SignedIn;
  /** The moment at which it was sent, ms. */
  readonly at: number;
  /** Written by the thread: step, rows in all, checked, written, with their days. */
  readonly figures: SharedArrayBuffer;
}
