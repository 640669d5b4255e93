import { connect } from 'node:net';

/** A request that nobody means well with, and what it is answered. */
export interface Hostile {
  readonly what: string;
  readonly status: number;
  readonly says: RegExp;
  send(target: Target): Promise<{ status: number; body: string }>;
}

export interface Target {
  readonly address: string;
  /** The session of a system tech, who may send operations of their own: the limits hold for those too. */
  readonly cookie: string;
}

const json = { 'content-type': 'application/json' };
const own = { 'x-cartwright': '1' };

async function answerOf(response: Promise<Response>): Promise<{ status: number; body: string }> {
  const { status, text } = await response.then(async (each) => ({ status: each.status, text: await each.text() }));
  return { status, body: text };
}

const ask = (what: string, status: number, says: RegExp, query: string, variables: object = {}): Hostile => ({
  what,
  status,
  says,
  send: ({ address, cookie }) =>
    answerOf(fetch(`${address}/graphql`, { method: 'POST', headers: { ...json, cookie }, body: JSON.stringify({ query, variables }) })),
});

const sent = (
  what: string,
  status: number,
  says: RegExp,
  { path = '/graphql', isSignedIn = false, headers = json, body, method = 'POST' }: Sent,
): Hostile => ({
  what,
  status,
  says,
  send: ({ address, cookie }) =>
    answerOf(
      fetch(address + path, {
        method,
        headers: { ...headers, ...(isSignedIn ? { cookie } : {}) },
        ...(body === undefined ? {} : { body: body() }),
      }),
    ),
});

interface Sent {
  readonly path?: string;
  readonly isSignedIn?: boolean;
  readonly headers?: Record<string, string>;
  readonly body?: () => string;
  readonly method?: string;
}

/** Bytes as they are, over a socket: what no client library would send. Ends when the other side closes, or has answered. */
const raw = (what: string, status: number, says: RegExp, text: string): Hostile => ({
  what,
  status,
  says,
  send: ({ address }) =>
    new Promise((done, failed) => {
      let answer = '';
      const socket = connect(Number(new URL(address).port), '127.0.0.1', () => socket.write(text));
      socket.setEncoding('utf8');
      socket.on('data', (chunk: string) => (answer += chunk));
      socket.on('error', (fault: NodeJS.ErrnoException) =>
        fault.code === 'ECONNRESET' || fault.code === 'EPIPE' ? undefined : failed(fault),
      );
      socket.on('close', () => done({ status: Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1] ?? 0), body: answer }));
    }),
});

const nested = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
const fragments = Array.from({ length: 60 }, (_, index) => `fragment F${index} on Account { id ...F${index + 1} ...F${index + 1} }`).join(
  ' ',
);

/** Twenty kinds of it. */
export const hostileRequests: readonly Hostile[] = [
  sent('a body of 19 MB from a stranger', 413, /at most 16 KB/, { body: () => JSON.stringify({ query: 'x'.repeat(19_000_000) }) }),
  sent('a body of 5 MB from somebody signed in', 413, /an operation of at most 1 MB/, {
    isSignedIn: true,
    body: () => JSON.stringify({ query: 'x'.repeat(5_000_000) }),
  }),
  sent('a file of 20 MB from a stranger, whose body is not read', 401, /Sign in first/, {
    path: '/api/tours/file?dryRun=true',
    headers: { ...json, ...own },
    body: () => ' '.repeat(20_000_000),
  }),
  sent('a file of 21 MB', 413, /at most 20 MB/, {
    path: '/api/tours/file?dryRun=true',
    isSignedIn: true,
    headers: { ...json, ...own },
    body: () => ' '.repeat(21_500_000),
  }),
  ask('1,000 aliases', 400, /tokens|aliases/, `{ ${Array.from({ length: 1000 }, (_, index) => `a${index}: me { id }`).join(' ')} }`),
  ask('30 aliases', 400, /more than 15 aliases/, `{ ${Array.from({ length: 30 }, (_, index) => `a${index}: me { id }`).join(' ')} }`),
  ask('a document of 20,000 tokens', 400, /tokens/, `{ ${'me { id } '.repeat(5_000)} }`),
  ask('13 levels', 400, /levels|depth exceeded/, `{ __schema { types ${'{ fields { type '.repeat(6)} { name } ${'} }'.repeat(6)} } }`),
  ask(
    'pages of 200 ten times over',
    400,
    /it costs/,
    `{ ${Array.from({ length: 8 }, (_, index) => `p${index}: items(first: 200) { edges { cursor node { id kind model state depot place dueOn } } }`).join(' ')} }`,
  ),
  ask(
    'eleven fields at the top',
    400,
    /11 fields/,
    `{ ${['people { id }', 'depots', 'rules', 'riggingSystems', 'me { id }', 'openHolds { id }', 'venues { id }', 'tours { edges { cursor } }', 'examinedItems { edges { cursor } }', 'attention { edges { cursor } }', 'items { totalCount }'].join(' ')} }`,
  ),
  ask('fragments that double sixty times', 400, /too many selections/, `{ me { ...F0 } } ${fragments} fragment F60 on Account { id }`),
  ask('fragments in a circle', 400, /itself/, '{ me { ...A } } fragment A on Account { id ...B } fragment B on Account { id ...A }'),
  ask(
    'values of a thousand levels',
    400,
    /deeper than 64/,
    'mutation($t: TourJson!) { saveTour(tour: $t) { id } }',
    JSON.parse(`{"t":${nested(1000)}}`) as object,
  ),
  sent('many operations in one request', 400, /One operation a request/, {
    isSignedIn: true,
    body: () => JSON.stringify(Array.from({ length: 100 }, () => ({ query: '{ me { id } }' }))),
  }),
  sent('introspection by a stranger', 401, /Sign in first/, { body: () => JSON.stringify({ query: '{ __schema { types { name } } }' }) }),
  sent('an operation of a stranger’s own', 401, /Sign in first/, { body: () => JSON.stringify({ query: 'mutation { signOut }' }) }),
  sent('an operation that the screens do not have', 400, /Load it again/, {
    body: () => JSON.stringify({ extensions: { persistedQuery: { version: 1, sha256Hash: '0'.repeat(64) } } }),
  }),
  sent('an operation by GET, as another site may cause it', 405, /sent by POST/, {
    method: 'GET',
    isSignedIn: true,
    path: '/graphql?query=%7Bme%7Bid%7D%7D',
  }),
  sent('a form of another site', 415, /application\/json/, {
    isSignedIn: true,
    headers: { 'content-type': 'text/plain' },
    body: () => '{"query":"mutation { signOut }"}',
  }),
  sent('a write of another site to a plain route', 403, /x-cartwright/, {
    path: '/api/csv/items/box',
    isSignedIn: true,
    headers: { 'content-type': 'text/csv' },
    body: () => 'serial,model\n',
  }),
  raw('a head of 100 KB', 431, /431/, `GET / HTTP/1.1\r\nhost: x\r\nx-long: ${'a'.repeat(100_000)}\r\n\r\n`),
  raw(
    'two lengths for one body',
    400,
    /400/,
    'POST /graphql HTTP/1.1\r\nhost: x\r\ncontent-length: 5\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n',
  ),
];
