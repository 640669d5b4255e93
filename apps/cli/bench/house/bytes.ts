import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { DataSource } from 'typeorm';
import { startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { loadDemo } from '../../../api/src/features/transfer/demo.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { cookieOf } from './house.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { makeDemoPlan } from './demo-plan.js';
import { say } from '../arguments.js';

const today = '2027-02-26';
const email = 'system@cartwright.example';
const head =
  'id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { sentence } hangs trucks show { name venue from to number of }';

interface Sent {
  readonly bytes: number;
  readonly body: Buffer;
  readonly cookie: string;
}

/** Bytes of bodies as they go over the wire to a browser that takes gzip: a tick, a poll, the show page's first data, the first load. */
export async function run(_args: readonly string[], root: string): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  await migrate(database.url);
  const webFolder = join(root, 'dist', 'web');
  const app = await createApp({ config: configOf(database.url, { webFolder }) });
  try {
    await app.listen(0, '127.0.0.1');
    await loadDemo(app.get(DataSource), app.get(TourFileService), root, today, () => 'bench only 1');
    const planId = await makeDemoPlan(app.get(DataSource));
    const port = (app.getHttpServer().address() as AddressInfo).port;
    const measured = await measure(port, planId, webFolder, app.get(DataSource));
    const goals: Record<string, number> = { tick: 1024, poll: 1024, showPage: 60 * 1024, firstLoad: 250 * 1024 };
    for (const [what, bytes] of Object.entries(measured))
      say(`${what.padEnd(24)}${String(bytes).padStart(10)}${goals[what] ? ` of ${goals[what]}` : ''}`);
    const over = Object.entries(goals).flatMap(([what, most]) => (measured[what]! > most ? [what] : []));
    say(JSON.stringify({ ...measured, goals, over }));
    return over.length > 0 ? 1 : 0;
  } finally {
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure(port: number, id: string, webFolder: string, dataSource: DataSource): Promise<Record<string, number>> {
  const [{ tourId, showId }]: [{ tourId: string; showId: string }] = await dataSource.query(
    `SELECT tour_id AS "tourId", show_id AS "showId" FROM pack_plan WHERE id = $1`,
    [id],
  );
  const cookie = await cookieOf(`http://127.0.0.1:${port}`, email, 'bench only 1');
  const sent = async (query: string, variables: object = { id }) => {
    const { bytes, body } = await ask(port, cookie, query, variables);
    if (body.includes('"errors"')) throw new Error(`${query.slice(0, 80)} was refused: ${body.toString().slice(0, 300)}`);
    return { bytes, body };
  };
  const page = await sent(
    `query($tourId: ID!, $showId: ID!) { showPage(tourId: $tourId, showId: $showId) { tourId showId name tourName released { ${head} } draft { ${head} } revisions { id state revision releasedAt releasedBy } } }`,
    { tourId, showId },
  );
  const parts = [
    'findings { code weight section subject date sentence fact }',
    'carts',
    'picks',
    'hardware',
    'truckHead',
    'due',
    'ticks cartChecks { load checkedBy }',
  ];
  const rest = await Promise.all(parts.map((part) => sent(`query($id: ID!) { plan(id: $id) { ${part} } }`)));
  const names = await hangsAndTrucks(dataSource, id);
  for (const [part, key] of names)
    rest.push(await sent(`query($id: ID!, $key: String!) { plan(id: $id) { ${part}(${part}: $key) } }`, { id, key }));
  const what = `${names.find(([part]) => part === 'truck')![1]} row 1`;
  const tick = await sent('mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }', { id, what });
  const poll = await sent('query($tourId: ID!, $showId: ID!) { showVersion(tourId: $tourId, showId: $showId) }', { tourId, showId });
  const register = await sent(
    '{ items(first: 50) { totalCount pageInfo { hasNextPage endCursor } edges { node { id kind model state depot count place dueOn dueState } } } }',
    {},
  );
  return {
    tick: tick.bytes,
    poll: poll.bytes,
    showPage: [page, ...rest].reduce((sum, each) => sum + each.bytes, 0),
    showPagePlain: [page, ...rest].reduce((sum, each) => sum + each.body.length, 0),
    registerPage: register.bytes,
    ...(await firstLoad(port, webFolder)),
  };
}

/** Hangs and trucks of the plan, each a field of its own. */
async function hangsAndTrucks(dataSource: DataSource, id: string): Promise<[part: 'hang' | 'truck', key: string][]> {
  const rows: { part: 'hang' | 'truck'; key: string }[] = await dataSource.query(
    `SELECT part, key FROM plan_part WHERE plan_id = $1 AND part IN ('hang', 'truck') ORDER BY part, place`,
    [id],
  );
  return rows.map(({ part, key }) => [part, key]);
}

/** The page, what it names, what that imports before the first screen stands, and the two fonts of the Latin letters. */
async function firstLoad(port: number, webFolder: string): Promise<{ firstLoad: number; firstScripts: number; firstFonts: number }> {
  const page = await get(port, '/');
  const named = [...page.body.toString().matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].map((match) => match[1]!);
  const files = withImports(webFolder, named);
  const style = files.filter((each) => each.endsWith('.css')).map((each) => readFileSync(join(webFolder, each), 'utf8'));
  const fonts = [...style.join('').matchAll(/url\((\/assets\/[^)]*-latin-wght[^)]*\.woff2)\)/g)].map((match) => match[1]!);
  if (style.length === 0 || fonts.length === 0) throw new Error('the first load has no style or no fonts');
  const bytesOf = async (paths: readonly string[]) => {
    let sum = 0;
    for (const path of paths) sum += (await get(port, path)).bytes;
    return sum;
  };
  const [firstScripts, firstFonts] = [await bytesOf(files), await bytesOf(fonts)];
  return { firstLoad: page.bytes + firstScripts + firstFonts, firstScripts, firstFonts };
}

/** Files with everything that they import; of what is asked for later, the start with its style. */
function withImports(webFolder: string, named: readonly string[]): string[] {
  const found = new Set<string>();
  const take = (path: string): void => {
    if (found.has(path)) return;
    found.add(path);
    if (!path.endsWith('.js')) return;
    const text = readFileSync(join(webFolder, path), 'utf8');
    for (const [, file] of text.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) take(`/assets/${file}`);
    for (const [, file] of text.matchAll(/assets\/(start-[^"'`]+\.css)/g)) take(`/assets/${file}`);
    for (const [, file] of text.matchAll(/import\([`"']\.\/(start-[^"'`]+\.js)/g)) take(`/assets/${file}`);
  };
  named.forEach(take);
  return [...found];
}

const get = (port: number, path: string): Promise<Sent> => exchange(port, 'GET', path, '', '');
const ask = (port: number, cookie: string, query: string, variables: object): Promise<Sent> =>
  exchange(port, 'POST', '/graphql', cookie, JSON.stringify({ query, variables }));

/** One exchange; `bytes` of the body as it was sent, `body` as it is read. */
function exchange(port: number, method: string, path: string, cookie: string, body: string): Promise<Sent> {
  return new Promise((resolve, reject) => {
    const headers = { 'accept-encoding': 'gzip', 'content-type': 'application/json', cookie };
    const call = request({ port, method, path, headers }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('end', () => {
        const raw = Buffer.concat(chunks);
        const read = answer.headers['content-encoding'] === 'gzip' ? gunzipSync(raw) : raw;
        resolve({ bytes: raw.length, body: read, cookie: (answer.headers['set-cookie']?.[0] ?? '').split(';')[0]! });
      });
    });
    call.on('error', reject);
    call.end(body);
  });
}
