import { type Wire, deliver, settle } from './deliver.js';
import { type Fault, type RefusalKind, Refused } from './refused.js';

/** A typed operation of `#contracts`: text of the document with the types of its answer and variables. */
export interface Operation<Answer, Variables> {
  toString(): string;
  /** The hash under which the house knows the document. */
  readonly __meta__?: { readonly hash?: string } | undefined;
  readonly __apiType?: (variables: Variables) => Answer;
}

/** What an operation answers. */
export type AnswerOf<O> = O extends Operation<infer Answer, never> ? Answer : never;

export interface RequestOptions {
  /** Of a write that was made earlier and that the caller sends until it is answered; a new one where nothing is said. */
  readonly requestId?: string;
  /** When it was done by the clock of this device, ISO 8601. */
  readonly doneAt?: string;
}

interface GraphQlError {
  readonly message: string;
  readonly extensions?: { readonly code?: string; readonly incident?: string; readonly faults?: Fault[] };
}

interface GraphQlAnswer<Answer> {
  readonly data?: Answer | null;
  readonly errors?: readonly GraphQlError[];
}

/** An operation that the house knows goes as its hash; one that is made up on the way goes as its text, and needs the right to. */
function named(operation: Pick<Operation<never, never>, '__meta__'>, document: string): object {
  const hash = operation.__meta__?.hash;
  if (hash === undefined) return { query: document };
  const operationName = /^\s*(?:query|mutation)\s+(\w+)/.exec(document)?.[1];
  return { operationName, extensions: { persistedQuery: { version: 1, sha256Hash: hash } } };
}

const readTimeoutMs = 30_000;
const writeTimeoutMs = 90_000;

/** What talks to the API over a wire. Every write carries an id of its own, so that it happens once. */
export function requestsOver(wire: Wire) {
  const request = async <Answer, Variables>(
    operation: Operation<Answer, Variables>,
    variables?: Variables,
    { requestId, doneAt }: RequestOptions = {},
  ): Promise<Answer> => {
    const document = operation.toString();
    const id = document.trimStart().startsWith('mutation') ? (requestId ?? wire.makeId()) : undefined;
    const response = await deliver(wire, {
      path: '/graphql',
      init: {
        method: 'POST',
        headers: { 'content-type': 'application/json', ...(doneAt === undefined ? {} : { 'x-done-at': doneAt }) },
        body: JSON.stringify({ ...named(operation, document), variables }),
      },
      requestId: id,
      timeoutMs: id === undefined ? readTimeoutMs : writeTimeoutMs,
    });
    const answer = (await response.json().catch(() => ({}))) as GraphQlAnswer<Answer>;
    const error = answer.errors?.[0];
    // Who keeps the id sends it again: to settle it would make it void.
    const toSettle = requestId === undefined ? id : undefined;
    if (error) throw await told(wire, toSettle, error);
    if (!answer.data)
      throw await told(wire, toSettle, { message: `The server answered ${response.status}.`, extensions: { code: 'FAULT' } });
    return answer.data;
  };

  /** A file to or from the plain routes. */
  const sendFile = async (path: string, body: Blob | string, type: string): Promise<unknown> => {
    const id = wire.makeId();
    const response = await deliver(wire, {
      path,
      init: { method: 'POST', headers: { 'content-type': type, 'x-cartwright': '1' }, body },
      requestId: id,
      timeoutMs: writeTimeoutMs,
    });
    const answer = (await response.json().catch(() => ({}))) as { message?: string; faults?: Fault[]; incident?: string };
    if (response.ok) return answer;
    const code = response.status === 401 ? 'NOT_SIGNED_IN' : response.status >= 500 ? 'FAULT' : 'REFUSED';
    throw await told(wire, id, {
      message: answer.message ?? `The server answered ${response.status}.`,
      extensions: { code, ...(answer.faults && { faults: answer.faults }), ...(answer.incident && { incident: answer.incident }) },
    });
  };

  return { request, sendFile, settleRequest: (requestId: string) => settle(wire, requestId) };
}

const kinds: Readonly<Record<string, RefusalKind>> = {
  BAD_INPUT: 'bad input',
  NOT_SIGNED_IN: 'signed out',
  FAULT: 'fault',
  OUTCOME_UNKNOWN: 'fault',
  // A page that is older than the house keeps what it has to send: the next one sends it.
  OPERATION_UNKNOWN: 'network',
  DATABASE_AWAY: 'network',
  BUSY: 'network',
};

/** A fault in the middle of a write says nothing about what was saved: that is looked up before a word is said. */
async function told(wire: Wire, requestId: string | undefined, { message, extensions = {} }: GraphQlError): Promise<Refused> {
  const { code = '', incident, faults } = extensions;
  const kind = kinds[code] ?? 'refused';
  if (kind !== 'fault') return new Refused(message, kind, { faults });
  const found = incident === undefined ? '' : ` Incident ${incident}.`;
  const what = 'Something went wrong here, not with what you typed.';
  if (requestId === undefined) return new Refused(`${what}${found}`, kind, { incident });
  const outcome = await settle(wire, requestId);
  if (outcome === 'unknown yet') return new Refused(`${what}${found}`, kind, { incident, openRequestId: requestId });
  const sentence = outcome === 'saved' ? 'It was saved all the same: look at it again.' : 'Nothing was saved.';
  return new Refused(`${what} ${sentence}${found}`, kind, { incident });
}

/** A UUID (RFC 9562, version 4); `crypto.randomUUID` is not there where the page did not come over TLS. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const marked = bytes.map((byte, at) => (at === 6 ? (byte & 0x0f) | 0x40 : at === 8 ? (byte & 0x3f) | 0x80 : byte));
  const hex = [...marked].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
