import { AsyncLocalStorage } from 'node:async_hooks';
import type { Author } from '../sign-in/person.js';

/** What is being done: by whom, and by which operation, address or job. */
export interface CurrentAct {
  readonly who?: Author | undefined;
  readonly via: string;
}

const storage = new AsyncLocalStorage<CurrentAct>();

export const insideAct = <T>(act: CurrentAct, work: () => T): T => storage.run(act, work);

/** Undefined for what the program does by itself: set-up, commands. */
export const currentAct = (): CurrentAct | undefined => storage.getStore();
