import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { planTables } from '../../../apps/cli/plan-tables.js';
import { exportHouse } from '../../../apps/cli/keeping/export-house.js';
import { formulasIn, payloads } from '../../reference/csv-injection.js';
import { csvColumns, type ItemKind, itemKinds } from '#tour-file';
import { type Cells, itemCells, sendRows, sendTour } from '../../support/register-edits.js';
import { type Agent, type TestApp, startTestApp } from '../../support/test-app.js';
import { declaredWays } from './declared-ways.js';

/** Payloads that fit on one line and into a name. */
const typed = payloads.map(({ text }) => text).filter((text) => text.length < 60 && text === text.trim() && !/[\0\r\n\t;,]/.test(text));
const inWords = payloads.map(({ text }) => text).filter((text) => text.length < 200 && !text.includes('\0'));

describe('what somebody typed, on its way out as CSV', () => {
  let test: TestApp;
  let folder: string;
  let all: Record<'warehouse' | 'system' | 'safety', Agent>;
  beforeAll(async () => {
    test = await startTestApp();
    folder = mkdtempSync(join(tmpdir(), 'cartwright-csv-'));
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    all = { warehouse, system, safety };
    await typeEverywhere();
  });
  afterAll(async () => {
    rmSync(folder, { recursive: true, force: true });
    await test.close();
  });

  let next = 0;
  const one = (): string => typed[next++ % typed.length] ?? '';
  const done = ({ errors }: { errors?: unknown }) => expect(errors).toBeUndefined();

  /** Names of people, items, models, tours, shows and hangs; reasons, remarks and reports: formulas, all of them. */
  async function typeEverywhere(): Promise<void> {
    const { warehouse, system, safety } = all;
    for (const text of inWords)
      done(await warehouse.graphql('mutation($r: String!) { quarantine(itemId: "P-001", reason: $r) { summary { id } } }', { r: text }));
    // A name of a person has letters: the first payload that does.
    const person = {
      name: typed.find((text) => /\p{L}{2}/u.test(text)),
      email: '=1+1@cartwright.example',
      role: 'warehouse',
      password: 'given by another',
    };
    done(await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person }));
    const examination = { on: '2027-02-20', outcome: 'pass', examiner: one(), report: one() };
    done(
      await safety.graphql('mutation($e: AnyJson!) { recordExamination(itemId: "H-02", examination: $e) { summary { id } } }', {
        e: examination,
      }),
    );
    const name = encodeURIComponent(one());
    const headers = { 'content-type': 'application/pdf', 'x-cartwright': '1' };
    expect((await safety.fetch(`/api/reports/H-02?name=${name}`, { method: 'POST', headers, body: '%PDF-1.7' })).status).toBe(200);
    const hold = { name: one(), from: '2027-06-01', to: '2027-06-02', hours: 24, items: ['P-060'] };
    done(await warehouse.graphql('mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename } }', { hold }));
    await typeItems();
    await typeTour();
  }

  /** A new item of each kind whose serial, and what else takes any words, is a formula. */
  async function typeItems(): Promise<void> {
    for (const kind of itemKinds) {
      const [like] = (await all.system.graphql('query($kind: String) { items(kind: $kind, first: 1) { edges { node { id } } } }', { kind }))
        .data.items.edges;
      const words = csvColumns(kind)
        .map(({ heading }) => heading)
        .filter((heading) => /serial|depot|reason|note|owner/.test(heading));
      const { in: _in, ...was } = await itemCells(all.safety, like.node.id);
      const cells: Cells = {
        ...was,
        ...Object.fromEntries(words.map((heading) => [heading, heading === 'serial' ? `${one()}-${kind}` : one()])),
        state: 'in service',
        ...cartIsEmpty(kind),
      };
      expect(await sendRows(all.safety, `items/${kind}`, [cells], 'as typed')).toMatchObject({ status: 200, body: { faults: [] } });
    }
  }
  const cartIsEmpty = (kind: ItemKind): Cells => (kind === 'cart' ? { 'boxes, top first': '' } : {});

  async function typeTour(): Promise<void> {
    const file = (await (await all.system.fetch('/api/tours/harbour-lights/file')).json()) as any;
    file.tour.id = 'typed';
    file.tour.name = one();
    for (const show of file.tour.shows) {
      show.name = one();
      for (const hang of show.hangs) hang.name = one();
    }
    file.bookings = [];
    expect(await sendTour(all.system, file)).toMatchObject({ status: 200 });
  }

  const seen = (text: string): number => text.match(/'["']*[=+@\u2013\uff0b\uff0d\uff1d\uff20-]/g)?.length ?? 0;

  it('no route gives out a formula, of any kind', async () => {
    const routes = declaredWays(test.app).filter(({ name }) => name.startsWith('GET /api/') && name !== 'GET /api/events');
    let guarded = 0;
    let sent = 0;
    for (const { path } of routes) {
      const reply = await all.safety.fetch(path);
      const text = await reply.text();
      if (!reply.headers.get('content-type')?.startsWith('text/csv')) continue;
      sent++;
      expect({ path, formulas: formulasIn(text) }).toEqual({ path, formulas: [] });
      guarded += seen(text);
    }
    expect(sent).toBeGreaterThan(30);
    expect(guarded).toBeGreaterThan(itemKinds.length);
  });

  it('no table of a plan, from the points to the findings', async () => {
    const { data, errors } = await all.system.graphql(
      'mutation { makePackPlan(tourId: "typed", showId: "quayside") { __typename ... on PlanMade { plan { id plan } } } }',
    );
    expect(errors).toBeUndefined();
    const { id, plan } = data.makePackPlan.plan;
    const points = await (await all.system.fetch(`/api/points/${id}/points.csv`)).text();
    const tables = Object.entries({ ...planTables(plan), 'points of the house': points });
    expect(tables.length).toBeGreaterThan(9);
    for (const [name, text] of tables) expect({ name, formulas: formulasIn(text) }).toEqual({ name, formulas: [] });
    expect(tables.filter(([, text]) => seen(text) > 0).map(([name]) => name)).toEqual(
      expect.arrayContaining(['points', 'truck', 'due', 'findings', 'points of the house']),
    );
  });

  it('no file of an export, the records of what was done among them', async () => {
    const out = join(folder, 'out');
    await exportHouse(test.databaseUrl, out);
    const files = readdirSync(out, { recursive: true, encoding: 'utf8' }).filter((each) => each.endsWith('.csv'));
    expect(files.length).toBeGreaterThan(30);
    for (const file of files) expect({ file, formulas: formulasIn(readFileSync(join(out, file), 'utf8')) }).toEqual({ file, formulas: [] });
    const holding = files.filter((file) => seen(readFileSync(join(out, file), 'utf8')) > 0);
    expect(holding).toEqual(
      expect.arrayContaining(['records/event.csv', 'records/person.csv', 'records/report_file.csv', 'register/box.csv']),
    );
  });
});
