import { type TestApp, startTestApp } from '../../support/test-app.js';
import { declaredWays } from '../ways/declared-ways.js';
import { type House, acts, leavesNoLine } from './acts.js';

const someId = '00000000-0000-4000-8000-000000000000';

const newest = async (of: TestApp): Promise<string> => (await of.dataSource.query('SELECT coalesce(max(id), 0) AS id FROM event'))[0].id;

/** Every way of writing that the house itself lists is walked once, and has to leave a line that says who did what by which way, with the rows it changed. */
describe('every act leaves a line', () => {
  let house: House;
  let writes: string[];
  /** What the demo's own loading wrote ends here. */
  let from: string;
  const walked: string[] = [];
  beforeAll(async () => {
    const test = await startTestApp({ config: { usualWork: 20_000 } });
    const empty = await startTestApp({ demo: false, config: { setUpCode: 'k4codek4' } });
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    from = await newest(test);
    house = { test, empty, agents: { warehouse, system, safety }, kept: new Map() };
    writes = declaredWays(test.app)
      .map(({ name }) => name.replace(new RegExp(`(reports|papers|pictures)/${someId}`), '$1/:itemId').replace(someId, ':id'))
      .filter((name) => /^(mutation|POST|PUT|PATCH|DELETE) /.test(name) && !name.endsWith(' /graphql'));
  });
  afterAll(async () => {
    await house.test.close();
    await house.empty.close();
  });

  it('and every way of writing is walked here, or stands with a reason among those that leave none', () => {
    const known = new Set([...acts.map(([name]) => name), ...Object.keys(leavesNoLine)]);
    expect(writes.filter((name) => !known.has(name))).toEqual([]);
    expect([...known].filter((name) => !writes.includes(name))).toEqual([]);
  });

  it.each(acts)('%s', async (name, call) => {
    const of = name === 'mutation setUp' ? house.empty : house.test;
    const before = await newest(of);
    await call(house);
    const via = name
      .replace(/^mutation /, '')
      .replace('papers/:itemId', 'papers/L-1')
      .replace(':itemId', 'H-08');
    const lines: { id: string; act: string; who: string; sentence: string; via: string | null }[] = await of.dataSource.query(
      `SELECT id, act, who, sentence, via FROM event WHERE id > $1 AND row_table IS NULL AND what <> 'reworded' ORDER BY id`,
      [before],
    );
    const own = lines.filter((each) => each.via === via || each.via === jobOf(via));
    expect(own.map(({ who, sentence }) => ({ who, sentence }))).not.toEqual([]);
    for (const { who, sentence } of own) {
      expect(who).not.toBe('');
      expect(sentence).not.toMatch(/^Saved \(|^$/);
    }
    const rows = await of.dataSource.query(
      `SELECT row_table, before, after FROM event WHERE act = ANY($1) AND row_table IS NOT NULL AND (before IS NOT NULL OR after IS NOT NULL)`,
      [own.map(({ act }) => act)],
    );
    if (!changesNoRow.has(via)) expect(rows).not.toEqual([]);
    walked.push(`${name.padEnd(40)} ${own[0]?.who.padEnd(18)} ${own[0]?.sentence}`);
  });

  it('and no row was changed of which nobody said why', async () => {
    process.stderr.write(
      `${walked.join('\n')}\n${walked.length} ways of writing walked, ${Object.keys(leavesNoLine).length} leave no line\n`,
    );
    // A sign-in uses up a password that another gave: of an account nothing else may change unsaid.
    const alone = await house.test.dataSource.query(
      `SELECT row_table, count(*)::int FROM event one WHERE id > $1 AND row_table IS NOT NULL AND NOT (row_table = 'account' AND NOT coalesce(before, '{}') ?| ARRAY['name', 'role', 'disabled_at']) AND NOT EXISTS (SELECT FROM event said WHERE said.act = one.act AND said.row_table IS NULL) GROUP BY 1`,
      [from],
    );
    expect(alone).toEqual([]);
  });
});

/** What is asked for and done by a job: the line is the job's, under the name of who asked. */
function jobOf(via: string): string | undefined {
  if (via === 'makePackPlan') return 'job make';
  if (via === 'planWholeTour') return 'job tour';
  return wishes.has(via) ? 'job loading' : undefined;
}

const wishes = new Set([
  'keepPieces',
  'letPiecesGo',
  'keepRow',
  'keepLoaded',
  'setGroupEnd',
  'waiveOrder',
  'endWaiver',
  'takeCase',
  'leaveCase',
  'leavePiece',
  'takePieceAlong',
  'swapRows',
]);

/** Its line says what was asked; what is found later is a job's. */
const changesNoRow = new Set(['startSearch', 'agreeVisits']);
