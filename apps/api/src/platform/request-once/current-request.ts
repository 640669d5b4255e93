import { AsyncLocalStorage } from 'node:async_hooks';

/** The write that is being answered, as its client named it. */
export interface CurrentRequest {
  readonly id: string;
  readonly personId: string;
  readonly operation: string;
  /** SHA-256 of the values that were sent with it, hex. */
  readonly valuesHash: string;
  readonly doneAt: Date | null;
  /** How many of its transactions have been committed, now or when it came before. */
  step: number;
  /** Set when it has been answered: what runs on after that belongs to nobody. */
  isAnswered: boolean;
}

const storage = new AsyncLocalStorage<CurrentRequest>();

export const insideRequest = <T>(request: CurrentRequest, work: () => T): T => storage.run(request, work);

/** For what is started by a request and outlives it. */
export const outsideRequest = <T>(work: () => T): T => storage.exit(work);

export function currentRequest(): CurrentRequest | undefined {
  const request = storage.getStore();
  return request?.isAnswered ? undefined : request;
}
