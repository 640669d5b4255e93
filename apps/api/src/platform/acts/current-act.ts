import { AsyncLocalStorage } from 'node:async_hooks';
import type { SignedIn } from '../sign-in/person.js';

/** What is being done: by whom, and by which operation or address. */
export interface CurrentAct {
  readonly who?: SignedIn | undefined;
  readonly via: string;
}

const storage = new AsyncLocalStorage<CurrentAct>();

export const insideAct = <T>(act: CurrentAct, work: () => T): T => storage.run(act, work);

/** Undefined for what the program does by itself: jobs, set-up, commands. */
export const currentAct = (): CurrentAct | undefined => storage.getStore();
