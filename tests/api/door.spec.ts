import { readFileSync } from 'node:fs';
import type { Socket } from 'node:net';
import { Lexer, Source, TokenKind, buildSchema, parse } from 'graphql';
import { persistedOperations } from '#contracts/operations';
import { costOf, operationLimits } from '../../apps/api/src/platform/door/operation-limits.js';
import { holdPlace } from '../support/hold-place.js';
import { someValues } from '../support/some-values.js';
import { type Agent, type TestApp, passwordOf, post, postListed, startTestApp } from '../support/test-app.js';
import { type Hostile, hostileRequests } from '../../apps/cli/bench/house/hostile-requests.js';

/** Who is let in, and with what: each hostile request gets its status and its sentence, and the house answers on. */
describe('at the door', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp({ config: { ownOperations: ['system'] } });
    [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
  });
  afterAll(() => test.close());

  const isAnswering = async () => (await system.graphql('{ items(first: 1) { totalCount } }')).data?.items.totalCount as number;

  it.each(hostileRequests.map((each) => [each.what, each] as const))('refuses %s', async (_what, hostile: Hostile) => {
    const { status, body } = await hostile.send({ address: test.address, cookie: system.cookie });
    expect({ status, sentence: hostile.says.test(body) || body }).toEqual({ status: hostile.status, sentence: true });
    expect(await isAnswering()).toBeGreaterThan(0);
  });

  it.each(['cross-site', 'same-site'])('nothing is written for a page of another site (%s), whatever cookie goes with it', async (from) => {
    const sent = await fetch(`${test.address}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: system.cookie, 'sec-fetch-site': from },
      body: JSON.stringify({ query: 'mutation { signOut }' }),
    });
    expect([sent.status, ((await sent.json()) as { errors: { extensions: { code: string } }[] }).errors[0]?.extensions.code]).toEqual([
      403,
      'NOT_ALLOWED',
    ]);
    expect((await system.graphql('{ me { role } }')).data.me).toEqual({ role: 'system' });
  });

  it('nothing is written either where a browser says the origin alone, unless it is this house', async () => {
    const ask = async (origin: string) => {
      const headers = { 'content-type': 'application/json', cookie: system.cookie, origin };
      return (await fetch(`${test.address}/graphql`, { method: 'POST', headers, body: '{"query":"{ me { role } }"}' })).status;
    };
    const others = [
      'http://evil.example',
      'null',
      test.address.replace('127.0.0.1', '127.0.0.2'),
      test.address.replace(/\d$/, (last) => (last === '1' ? '2' : '1')),
    ];
    expect(await Promise.all([test.address, ...others].map(ask))).toEqual([200, 403, 403, 403, 403]);
  });

  it('takes operations of the screens by their hash from everybody whom they are for', async () => {
    const me = await (await postListed(test.address, 'Me', {})).json();
    expect(me).toEqual({ data: { me: null } });
    const tours = await (await postListed(test.address, 'Tours', {}, { cookie: warehouse.cookie })).json();
    expect(tours).toMatchObject({ data: { tours: { edges: expect.any(Array) } } });
  });

  it.each([
    ['of another version', { version: 2, sha256Hash: '0'.repeat(64) }],
    ['without a version', { sha256Hash: '0'.repeat(64) }],
    ['with a hash that is none', { version: 1, sha256Hash: 'zz' }],
    ['with a hash that is a list', { version: 1, sha256Hash: ['0'.repeat(64)] }],
    ['without a hash', { version: 1 }],
    ['that is a word', 'persisted'],
    ['that is a number', 7],
    ['that is nothing', null],
  ])('a persisted query %s is a mistake of who sends it, with or without a document, and no fault', async (_, persistedQuery) => {
    const faults = async () =>
      Number(/^cartwright_faults_total\S* (\d+)/m.exec(await (await fetch(`${test.address}/metrics`)).text())?.[1] ?? 0);
    const before = await faults();
    const send = (body: object) =>
      fetch(`${test.address}/graphql`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', cookie: system.cookie },
        body: JSON.stringify({ ...body, extensions: { persistedQuery } }),
      });
    const alone = await send({});
    expect([alone.status, await alone.text()]).toEqual([400, expect.stringContaining('version 1 and the SHA-256')]);
    const beside = await send({ query: '{ me { role } }' });
    expect([beside.status, await beside.json()]).toEqual([200, { data: { me: { role: 'system' } } }]);
    expect(await faults()).toBe(before);
  });

  it('takes operations of one’s own, introspection too, only from the roles that the house lets send them', async () => {
    const schema = '{ __schema { queryType { name } } }';
    expect((await system.graphql(schema)).data.__schema.queryType.name).toBe('Query');
    const refused = await warehouse.graphql(schema);
    expect(refused.errors?.[0]).toMatchObject({
      message: expect.stringContaining('for the system tech'),
      extensions: { code: 'NOT_ALLOWED' },
    });
    expect((await post(test.address, '', schema)).status).toBe(401);
    // Signing in needs no right, as long as it is the screens' own.
    expect((await post(test.address, '', 'mutation { signIn(email: "a", password: "b") { __typename } }')).status).toBe(401);
  });

  it('has room for each of the screens’ own operations several times over', () => {
    const schema = buildSchema(readFileSync('libs/contracts/schema.graphql', 'utf8'));
    const worst = { tokens: 0, cost: 0 };
    for (const document of Object.values(persistedOperations)) {
      const lexer = new Lexer(new Source(document));
      let tokens = 0;
      while (lexer.advance().kind !== TokenKind.EOF) tokens++;
      worst.tokens = Math.max(worst.tokens, tokens);
      const read = parse(document);
      worst.cost = Math.max(worst.cost, costOf(schema, read, someValues(schema, read)));
    }
    expect(worst.tokens).toBeGreaterThan(50);
    expect(worst.tokens * 3).toBeLessThan(operationLimits.tokens);
    expect(worst.cost * 3).toBeLessThan(operationLimits.cost);
  });

  describe('bodies of strangers that never come', () => {
    let house: TestApp;
    beforeAll(async () => {
      house = await startTestApp({ beside: test, config: { trustProxy: 1 } });
    });
    afterAll(() => house.close());

    const closed = (socket: Socket) =>
      new Promise<string>((done) => {
        let answer = '';
        socket.on('data', (bytes: Buffer) => (answer += bytes.toString()));
        socket.once('close', () => done(answer));
      });
    const signsIn = async () => {
      const values = { email: 'sol@cartwright.example', password: 'not the one' };
      const { status } = await postListed(house.address, 'SignIn', values, { 'x-forwarded-for': '192.0.2.200' });
      return status;
    };

    it.each([
      ['one address', () => '192.0.2.1', 36],
      ['an address each', (index: number) => `198.51.100.${index}`, 8],
    ])('forty from %s keep nobody out: those longest on their way are given up', async (_, from, givenUp) => {
      const sockets: Socket[] = [];
      const ends: Promise<string>[] = [];
      for (let index = 0; index < 40; index++) {
        const socket = await holdPlace(house.address, '', from(index));
        sockets.push(socket);
        ends.push(closed(socket));
      }
      expect(await signsIn()).toBe(200);
      for (const answer of await Promise.all(ends.slice(0, givenUp)))
        expect(answer).toMatch(/^HTTP\/1\.1 408 [^]*dawdled while others came/);
      // What came last is still waited for; one more may have made room for the sign-in.
      expect(sockets.slice(givenUp + 1).filter((each) => each.destroyed)).toHaveLength(0);
      for (const each of sockets) each.destroy();
    });
  });

  describe('a house that is full', () => {
    const atOnce = { all: 4, person: 2, strangers: 1, knownDevices: 1, address: 1, halfSent: { all: 4, address: 4 } };
    let small: TestApp;
    beforeAll(async () => {
      small = await startTestApp({ beside: test, config: { atOnce } });
    });
    afterAll(() => small.close());

    const hold = (cookie: string) => holdPlace(small.address, cookie);
    const untilStatus = async (wanted: number, send: () => Promise<Response>): Promise<Response> => {
      for (;;) {
        const response = await send();
        if (response.status === wanted) return response;
      }
    };

    it('says so with 503 and when to come again; one person alone does not fill it, nor do strangers', async () => {
      const ask = (cookie: string) => postListed(small.address, 'Me', {}, { cookie });
      const known = { email: (await system.graphql('{ me { email } }')).data.me.email, password: passwordOf('system') };
      const device =
        (await postListed(small.address, 'SignIn', known)).headers
          .getSetCookie()
          .map((each) => each.split(';')[0] ?? '')
          .find((each) => each.startsWith('cartwright_device=')) ?? '';
      const tries = test.dataSource.createQueryRunner();
      await tries.startTransaction();
      await tries.query('LOCK TABLE sign_in_try');
      const stranger = postListed(small.address, 'SignIn', { email: 'nobody@cartwright.example', password: 'some password' });
      // It has its place once it stands before the lock.
      const standing = `SELECT FROM pg_locks WHERE NOT granted AND relation = 'sign_in_try'::regclass AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`;
      while ((await test.dataSource.query(standing)).length === 0) await new Promise((resolve) => setTimeout(resolve, 20));
      const refused = await untilStatus(429, () => ask(''));
      expect(await refused.text()).toContain('not signed in');
      expect((await ask('cartwright_device=made-up')).status).toBe(429);
      expect((await ask(device)).status).toBe(200);
      expect((await ask(system.cookie)).status).toBe(200);
      const own = [await hold(system.cookie), await hold(system.cookie)];
      const mine = await untilStatus(429, () => ask(system.cookie));
      expect(await mine.text()).toContain('You have 2 requests under way');
      expect((await ask(warehouse.cookie)).status).toBe(200);
      const last = await hold(warehouse.cookie);
      const full = await untilStatus(503, () => ask(warehouse.cookie));
      expect(full.headers.get('retry-after')).toBe('2');
      expect(await full.text()).toContain('more to do than it can take');
      for (const each of [...own, last]) each.destroy();
      await tries.commitTransaction();
      await tries.release();
      expect((await stranger).status).toBe(200);
      await untilStatus(200, () => ask(''));
    });
  });
});
