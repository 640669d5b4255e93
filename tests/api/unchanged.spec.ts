import { writeCsv } from '#kernel';
import { csvColumns, itemKinds, loadRule, modelCell, modelColumns, modelKinds, riggingSystem } from '#tour-file';
import { regimeFrom, regimeText } from '../../apps/web/src/features/register/regime-text.js';
import { systemFrom, systemText } from '../../apps/web/src/features/register/system-text.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

/** What is read, put into its form and saved as it stands leaves every row of every table as it was. */
describe('saved unchanged', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, safety] = await Promise.all([test.as('system'), test.as('safety')]);
  });
  afterAll(() => test.close());

  /** Every row of every table as text; requests, sessions and work under way are no part of the records. */
  async function rows(): Promise<Record<string, string>> {
    const tables: { name: string }[] = await test.dataSource.query(
      `SELECT relname AS name FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace ORDER BY relname`,
    );
    const all: Record<string, string> = {};
    for (const { name } of tables.filter((each) => !/session|job|answer|request|attempt/.test(each.name))) {
      const [{ text }] = await test.dataSource.query(
        `SELECT coalesce(string_agg(t::text, E'\\n' ORDER BY t::text), '') AS text FROM "${name}" t`,
      );
      all[name] = text;
    }
    return all;
  }

  async function changesNothing(save: () => Promise<unknown>): Promise<void> {
    const before = await rows();
    expect(before.event).not.toBe('');
    await save();
    expect(await rows()).toEqual(before);
  }

  const kit = async () => (await (await system.fetch('/api/tours/harbour-lights/file')).json()) as { catalogue: any; items: any[] };

  it('a load rule', async () => {
    const { loadRules } = (await safety.graphql('{ rules }')).data.rules;
    expect(loadRules.length).toBeGreaterThan(0);
    const write = 'mutation($rule: ModelJson!, $was: ModelJson) { saveLoadRule(rule: $rule, was: $was) }';
    for (const rule of loadRules)
      await changesNothing(async () => {
        const { errors } = await safety.graphql(write, { rule: regimeFrom(regimeText(loadRule.parse(rule))), was: rule });
        expect(errors).toBeUndefined();
      });
  });

  it('a rigging system, which keeps its approval', async () => {
    const { riggingSystems } = (await system.graphql('{ riggingSystems }')).data;
    expect(riggingSystems.some((each: { approved?: object }) => each.approved)).toBe(true);
    const write = 'mutation($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }';
    for (const each of riggingSystems)
      await changesNothing(async () => {
        const { errors } = await system.graphql(write, { system: systemFrom(systemText(riggingSystem.parse(each)), false), was: each });
        expect(errors).toBeUndefined();
      });
  });

  const edit = async (what: string, table: readonly (readonly string[])[]) => {
    const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
    const reply = await system.fetch(`/api/csv/${what}/edit?`, { method: 'POST', headers, body: writeCsv(table.map((each) => [...each])) });
    expect(await reply.json()).toMatchObject({ changed: [], faults: [] });
  };

  it.each(modelKinds)('each model of %s', async (kind) => {
    const columns = modelColumns(kind);
    const models: object[] = (await kit()).catalogue[kind];
    expect(models.length).toBeGreaterThan(0);
    await changesNothing(async () => {
      for (const model of models) {
        const row = columns.map((each) => modelCell(model, each));
        await edit(`models/${kind}`, [columns.map((each) => each.heading), row, row]);
      }
    });
  });

  it.each(itemKinds)('a few of each %s', async (kind) => {
    const columns = csvColumns(kind);
    const items = (await kit()).items.filter((each) => each.kind === kind).slice(0, 3);
    expect(items.length).toBeGreaterThan(0);
    await changesNothing(async () => {
      for (const item of items) {
        const row = columns.map((each) => each.cell(item));
        await edit(`items/${kind}`, [columns.map((each) => each.heading), row, row]);
      }
    });
  });
});
