import { AsyncLocalStorage } from 'node:async_hooks';

/** What the transactions of one call have written so far: nothing, something that is committed, or something of which the answer was lost. */
export type Written = 'nothing' | 'saved' | 'open';

const storage = new AsyncLocalStorage<{ written: Written }>();
const ofFault = new WeakMap<object, Written>();

/** Keeps the account of one call. */
export const whileCounting = <T>(account: { written: Written }, work: () => T): T => storage.run(account, work);

/** Said by whoever commits; what is open stays open until it is known. */
export function noteWritten(written: Exclude<Written, 'nothing'>): void {
  const account = storage.getStore();
  if (account && account.written !== 'open') account.written = written;
}

/** Goes with the fault to where it is told. */
export function noteFault(fault: unknown, written: Written): void {
  if (typeof fault === 'object' && fault !== null) ofFault.set(fault, written);
}

/** A fault that no call was the account of came before anything was written. */
export const writtenBefore = (fault: unknown): Written =>
  typeof fault === 'object' && fault !== null ? (ofFault.get(fault) ?? 'nothing') : 'nothing';
