import { Refused } from './refused.js';

/** What a request goes over: the browser's own, or one that loses answers, in a test. */
export interface Wire {
  fetch(path: string, init: RequestInit): Promise<Response>;
  pause(milliseconds: number): Promise<void>;
  makeId(): string;
  /** True where the device knows that nothing can leave it. */
  isOffline(): boolean;
}

export interface Delivery {
  readonly path: string;
  readonly init: RequestInit & { readonly headers: Readonly<Record<string, string>> };
  /** The id of a write, the same each time it is sent; undefined for what only reads. */
  readonly requestId?: string | undefined;
  readonly timeoutMs: number;
}

/** Waits between the tries of a write whose answer was lost, milliseconds. */
const againAfterMs = [500, 2_000];

const offline = 'No connection. What you see is the last that was read; what you typed is kept here.';
const open = 'No answer came back. Whether it was saved is not known yet.';

/** A gateway that gave up on an API, or an API whose database went away in the middle: the work may have been done. */
const answerLost = new Set([502, 503, 504]);

/** Of these the house itself says in a sentence that it cannot just now; a gateway that gave up has no such words. */
const isOwnWord = (response: Response | undefined): response is Response =>
  response?.status === 503 && /json/.test(response.headers.get('content-type') ?? '');

/**
 * Sends and gives the answer. A read is tried once. A write whose answer is lost is sent again under the same id, which the other side carries out
 * once: whatever comes back in the end is true. Where nothing comes back, it says so, with the id to ask for; a house that said each time what became
 * of it is believed.
 */
export async function deliver(wire: Wire, delivery: Delivery): Promise<Response> {
  if (wire.isOffline()) throw new Refused(offline, 'network');
  const said: (Response | undefined)[] = [];
  for (const pauseMs of [0, ...(delivery.requestId === undefined ? [] : againAfterMs)]) {
    if (pauseMs > 0) await wire.pause(pauseMs);
    const response = await sendOnce(wire, delivery).catch(() => undefined);
    if (response && !(delivery.requestId !== undefined && answerLost.has(response.status))) return response;
    said.push(response);
  }
  const last = said.at(-1);
  if (last && said.every(isOwnWord)) return last;
  throw delivery.requestId === undefined
    ? new Refused(offline, 'network')
    : new Refused(open, 'network', { openRequestId: delivery.requestId });
}

function sendOnce(wire: Wire, { path, init, requestId, timeoutMs }: Delivery): Promise<Response> {
  const key: Record<string, string> = requestId === undefined ? {} : { 'idempotency-key': `"${requestId}"` };
  return wire.fetch(path, {
    ...init,
    headers: { ...init.headers, ...key },
    credentials: 'same-origin',
    signal: AbortSignal.timeout(timeoutMs),
  });
}

/** The last word on a write: what has not come by now will not be taken. `unknown yet` while nobody answers. */
export async function settle(wire: Wire, requestId: string): Promise<'saved' | 'not saved' | 'unknown yet'> {
  const response = await sendOnce(wire, {
    path: `/api/requests/${requestId}/settle`,
    init: { method: 'POST', headers: { 'content-type': 'application/json', 'x-cartwright': '1' } },
    timeoutMs: 10_000,
  }).catch(() => undefined);
  if (!response?.ok) return 'unknown yet';
  const { outcome } = (await response.json()) as { outcome: 'saved' | 'not saved' };
  return outcome;
}
