import { brotliDecompressSync } from 'node:zlib';
import { request } from 'node:http';
import { type DatabaseProxy, startDatabaseProxy } from '../support/database-proxy.js';
import { type Agent, type TestApp, passwordOf, postListed, startTestApp } from '../support/test-app.js';

/** What the log held, line by line. */
const lines: string[] = [];
const logged = (id: string): Record<string, any>[] => lines.map((line) => JSON.parse(line)).filter((each) => each.req?.id === id);

const readyOf = async (address: string) => {
  const reply = await fetch(`${address}/readyz`);
  return { status: reply.status, ...((await reply.json()) as { database: string; migrations: string; queue: string }) };
};

/** One number of the exposition, by its name and labels as they stand there. */
const numberIn = (text: string, start: string): number =>
  Number(
    text
      .split('\n')
      .find((line) => line.startsWith(`${start} `))
      ?.split(' ')
      .at(-1),
  );

describe('a house that is watched', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp({ web: true, config: { logLevel: 'info' }, logTo: { write: (line) => lines.push(line) } });
    system = await test.as('system');
  });
  afterAll(() => test.close());

  const metrics = async (): Promise<string> => (await fetch(`${test.address}/metrics`)).text();

  it('keeps the id that came with a request, makes one where none or no good one came, and sends it back', async () => {
    const idOf = async (given?: string) =>
      (await system.fetch('/api/reports/zz', given === undefined ? {} : { headers: { 'x-request-id': given } })).headers.get(
        'x-request-id',
      );
    expect(await idOf('gate-7.a')).toBe('gate-7.a');
    expect(await idOf('two words "and" more')).toMatch(/^[0-9a-f-]{36}$/);
    expect(await idOf()).toMatch(/^[0-9a-f-]{36}$/);
  });

  it('logs one line a request: id, method, path without what stands behind the question mark, operation, status, time', async () => {
    await system.fetch('/graphql?secret=word', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-request-id': 'one-line' },
      body: JSON.stringify({ query: '{ items(search: "Achterberg") { totalCount } }' }),
    });
    expect(logged('one-line')).toEqual([
      {
        level: 'info',
        time: expect.any(String),
        req: { id: 'one-line', method: 'POST', path: '/graphql' },
        operation: 'query items',
        status: 200,
        ms: expect.any(Number),
        msg: 'answered',
      },
    ]);
  });

  it('puts the incident of a fault in one line with its request, and tells the caller no more than the incident', async () => {
    await test.dataSource.query('ALTER TABLE item RENAME TO item_away');
    try {
      const reply = await system.fetch('/graphql', {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-request-id': 'broken' },
        body: JSON.stringify({ query: '{ items(search: "Achterberg") { totalCount } }' }),
      });
      const { errors } = (await reply.json()) as { errors: { message: string; extensions: { incident: string } }[] };
      const { incident } = errors[0]!.extensions;
      expect(errors[0]!.message).toBe(`Something went wrong here, not with what you typed. Nothing was saved. Incident ${incident}.`);
      const fault = logged('broken').find((each) => each.incident === incident)!;
      expect(fault).toMatchObject({ level: 'error', context: 'fault', err: { type: 'QueryFailedError', code: '42P01' } });
      expect(JSON.stringify(fault)).not.toContain('Achterberg');

      const route = await system.fetch('/api/csv/items/box', { headers: { 'x-request-id': 'broken-route' } });
      expect(route.status).toBe(500);
      const told = (await route.json()) as { incident: string };
      expect(logged('broken-route').map((each) => each.incident)).toContain(told.incident);
    } finally {
      await test.dataSource.query('ALTER TABLE item_away RENAME TO item');
    }
    expect(numberIn(await metrics(), 'cartwright_faults_total{where="operation"}')).toBe(1);
    expect(numberIn(await metrics(), 'cartwright_faults_total{where="route"}')).toBe(1);
  });

  it('logs no password, cookie, email or other word of a person', async () => {
    await postListed(test.address, 'SignIn', { email: 'warehouse@cartwright.example', password: 'not-the-password-42' });
    await system.graphql('mutation { nothing(password: "inline-word-43") }');
    const all = lines.join('');
    expect(lines.length).toBeGreaterThan(5);
    for (const word of [
      'not-the-password-42',
      'inline-word-43',
      passwordOf('system'),
      'cartwright_session',
      system.cookie.split('=')[1]!,
      'cartwright.example',
    ])
      expect({ word, written: all.includes(word) }).toEqual({ word, written: false });
  });

  it('counts requests, operations by what became of them, and tells the state of jobs, database and process', async () => {
    const before = await metrics();
    const count = (text: string, operation: string, outcome: string) =>
      numberIn(text, `cartwright_operations_total{operation="${operation}",outcome="${outcome}"}`) || 0;
    await system.graphql('query AnyNameOfTheCallers { tours { pageInfo { hasNextPage } } }');
    await system.graphql('{ plan(id: "zz") { id } }');
    await system.graphql('mutation { cancelJob(id: "00000000-0000-4000-8000-000000000000") { id } }');
    await postListed(test.address, 'Tours', {});
    await postListed(test.address, 'SignIn', { email: 'a@b.example', password: 'x' });
    const after = await metrics();
    const grew = (operation: string, outcome: string) => count(after, operation, outcome) - count(before, operation, outcome);
    expect({
      done: grew('query tours', 'done'),
      badInput: grew('query plan', 'bad input'),
      notFound: grew('mutation cancelJob', 'not found'),
      notAllowed: grew('query tours', 'not allowed'),
      refused: grew('mutation signIn', 'refused'),
    }).toEqual({ done: 1, badInput: 1, notFound: 1, notAllowed: 1, refused: 1 });
    expect(after).not.toContain('AnyNameOfTheCallers');
    expect(numberIn(after, 'cartwright_operation_seconds_count{operation="query tours"}')).toBeGreaterThan(0);
    expect(numberIn(after, 'cartwright_http_requests_total{method="POST",route="/graphql",status="200"}')).toBeGreaterThan(4);
    expect(numberIn(after, 'cartwright_database_bytes')).toBeGreaterThan(1_000_000);
    expect(numberIn(after, 'cartwright_database_waiting')).toBe(0);
    expect(numberIn(after, 'nodejs_eventloop_lag_p99_seconds')).toBeGreaterThan(0);
  });

  it('tells the metrics to this machine only, not through a proxy, and with a token in the configuration to its bearer only', async () => {
    const ask = async (address: string, headers: Record<string, string> = {}) => (await fetch(`${address}/metrics`, { headers })).status;
    expect(await ask(test.address)).toBe(200);
    expect(await ask(test.address, { 'x-forwarded-for': '192.0.2.1' })).toBe(403);
    const other = await startTestApp({ demo: false, config: { metricsToken: 'a token of the house' } });
    try {
      expect(await ask(other.address)).toBe(403);
      expect(await ask(other.address, { authorization: 'Bearer another of the hou' })).toBe(403);
      expect(await ask(other.address, { authorization: 'Bearer a token of the house' })).toBe(200);
    } finally {
      await other.close();
    }
  });

  it('is ready only at the version of the database that it was written for', async () => {
    expect(await readyOf(test.address)).toEqual({ status: 200, database: 'up', migrations: 'up', queue: 'up' });
    const [last] = await test.dataSource
      .query('DELETE FROM migrations WHERE id = (SELECT max(id) FROM migrations) RETURNING timestamp, name')
      .then(([rows]) => rows);
    expect(await readyOf(test.address)).toMatchObject({ status: 503, migrations: `1 still to run, first ${last.name}` });
    await test.dataSource.query('INSERT INTO migrations (timestamp, name) VALUES ($1, $2), (1, $3)', [
      last.timestamp,
      last.name,
      'FromTheFuture1',
    ]);
    expect(await readyOf(test.address)).toMatchObject({ status: 503, migrations: 'the database is ahead of this program: FromTheFuture1' });
    await test.dataSource.query(`DELETE FROM migrations WHERE name = 'FromTheFuture1'`);
    expect((await readyOf(test.address)).status).toBe(200);
  });

  it('sends strict headers, and compresses what is large enough', async () => {
    const page = await fetch(`${test.address}/tours`);
    expect(page.headers.get('content-security-policy')).toMatch(
      /default-src 'self';script-src 'self' 'wasm-unsafe-eval';script-src-attr 'none';.*style-src 'self';.*object-src 'none'/,
    );
    expect(page.headers.get('content-security-policy')).not.toMatch(/'unsafe|upgrade/);
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
    expect(page.headers.get('x-frame-options')).toBe('DENY');
    expect(page.headers.get('strict-transport-security')).toBe(null);
    expect(page.headers.get('x-powered-by')).toBe(null);
    expect(page.headers.get('cache-control')).toBe('no-cache');
    const html = await page.text();
    expect(html).not.toMatch(/<script(?![^>]* src=)|<style| style=| on\w+=/);
    const script = /src="(\/assets\/[^"]+\.js)"/.exec(html)![1]!;
    const asset = await raw(`${test.address}${script}`, { 'accept-encoding': 'br, gzip' });
    expect(asset.headers).toMatchObject({ 'content-encoding': 'br', 'cache-control': 'public, max-age=31536000, immutable' });
    expect(brotliDecompressSync(asset.body).length).toBeGreaterThan(2 * asset.body.length);
    expect((await raw(`${test.address}${script}`, { 'accept-encoding': 'gzip' })).headers['content-encoding']).toBe('gzip');
    expect((await raw(`${test.address}${script}`, {})).headers['content-encoding']).toBe(undefined);
  });
});

/** The answer as it came, not unpacked. */
function raw(url: string, headers: Record<string, string>): Promise<{ headers: Record<string, unknown>; body: Buffer }> {
  return new Promise((resolve, reject) => {
    request(url, { headers }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => resolve({ headers: response.headers, body: Buffer.concat(parts) }));
    })
      .once('error', reject)
      .end();
  });
}

describe('a house whose database stops', () => {
  let between: DatabaseProxy;
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp({
      demo: false,
      config: { logLevel: 'silent' },
      through: async (databaseUrl) => (between = await startDatabaseProxy(databaseUrl)).url,
    });
  });
  afterAll(async () => {
    between.turn('open');
    await test.close();
    await between.close();
  });

  it('is alive and not ready while it is away, says so in good time, and is ready again when it is back', async () => {
    expect((await readyOf(test.address)).status).toBe(200);
    for (const state of ['shut', 'silent'] as const) {
      between.turn(state);
      expect(await (await fetch(`${test.address}/healthz`)).json()).toEqual({ status: 'ok' });
      expect(await readyOf(test.address)).toEqual({
        status: 503,
        database: expect.stringMatching(/^does not answer/),
        migrations: 'not known',
        queue: 'not known',
      });
    }
    between.turn('open');
    expect((await readyOf(test.address)).status).toBe(200);
  });
});
