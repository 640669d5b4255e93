import { writeCsv } from '#kernel';
import { type Item, type ModelKind, csvColumns, modelCell, modelColumns } from '#tour-file';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

type Cells = Record<string, string>;

/** Two people open the same form, each changes something, both save. */
describe('two edits of one form', () => {
  let test: TestApp;
  let warehouse: Agent;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, system] = await Promise.all([test.as('warehouse'), test.as('system')]);
  });
  afterAll(() => test.close());

  const save = async (who: Agent, path: string, was: Cells, wanted: Cells) => {
    const heading = Object.keys(was);
    const row = (cells: Cells) => heading.map((name) => cells[name] ?? '');
    const reply = await who.fetch(`/api/csv/${path}/edit`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: writeCsv([heading, row(was), row(wanted)]),
    });
    return { status: reply.status, body: (await reply.json()) as any };
  };
  const item = async (id: string): Promise<Cells> => {
    const { item: found } = (await warehouse.graphql('query($id: ID!) { item(id: $id) { item } }', { id })).data;
    return Object.fromEntries(csvColumns('box').map(({ heading, cell }) => [heading, cell(found.item as Item)]));
  };
  const model = async (kind: ModelKind, name: string): Promise<Cells> => {
    const { catalogueModels } = (await warehouse.graphql('{ catalogueModels { kind model data } }')).data;
    const { data } = catalogueModels.find((each: any) => each.kind === kind && each.model === name);
    return Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(data, column)]));
  };

  it('of different cells of an item are both kept, whoever comes first', async () => {
    for (let round = 0; round < 4; round++) {
      const was = await item('P-003');
      const edits = [
        () => save(warehouse, 'items/box', was, { ...was, owner: `Owner ${round}` }),
        () => save(system, 'items/box', was, { ...was, 'asset identifier': `A-${round}` }),
      ];
      const answers = await Promise.all((round % 2 === 0 ? edits : edits.reverse()).map((edit) => edit()));
      expect(answers.map((each) => each.status)).toEqual([200, 200]);
      expect(await item('P-003')).toEqual({ ...was, owner: `Owner ${round}`, 'asset identifier': `A-${round}` });
    }
  });

  it('of one cell of an item: the second is shown both, and decides', async () => {
    for (let round = 0; round < 4; round++) {
      const was = await item('P-004');
      expect((await save(warehouse, 'items/box', was, { ...was, owner: `First ${round}` })).status).toBe(200);
      const wanted = { ...was, owner: `Second ${round}` };
      const second = await save(system, 'items/box', was, wanted);
      expect(second.status).toBe(422);
      expect(second.body.faults).toEqual([
        expect.objectContaining({ column: 'owner', value: `Second ${round}`, onFile: `First ${round}` }),
      ]);
      expect(second.body.faults[0].wanted).toContain(`“First ${round}”`);
      expect((await item('P-004')).owner).toBe(`First ${round}`);
      expect((await save(system, 'items/box', { ...was, owner: `First ${round}` }, wanted)).status).toBe(200);
      expect((await item('P-004')).owner).toBe(`Second ${round}`);
    }
  });

  it('of a model are merged by cells, and shown where they meet', async () => {
    const was = await model('boxes', 'Plover');
    expect((await save(warehouse, 'models/boxes', was, { ...was, maker: 'First works' })).status).toBe(200);
    const mass = Object.keys(was).find((name) => name.startsWith('mass')) ?? '';
    expect((await save(system, 'models/boxes', was, { ...was, [mass]: String(Number(was[mass]) + 1) })).status).toBe(200);
    expect(await model('boxes', 'Plover')).toMatchObject({ maker: 'First works', [mass]: String(Number(was[mass]) + 1) });
    const second = await save(system, 'models/boxes', was, { ...was, maker: 'Second works' });
    expect(second.body.faults).toEqual([expect.objectContaining({ column: 'maker', value: 'Second works', onFile: 'First works' })]);
  });

  it('of a regime are merged by fields, and shown where they meet', async () => {
    const write = 'mutation($rule: ModelJson!, $was: ModelJson) { saveLoadRule(rule: $rule, was: $was) }';
    const read = async () => (await system.graphql('{ rules }')).data.rules.loadRules[0];
    const was = await read();
    expect((await system.graphql(write, { rule: { ...was, title: 'First title' }, was })).errors).toBeUndefined();
    expect((await system.graphql(write, { rule: { ...was, dynamicFactor: 1.6 }, was })).errors).toBeUndefined();
    expect(await read()).toMatchObject({ title: 'First title', dynamicFactor: 1.6 });
    const second = await system.graphql(write, { rule: { ...was, title: 'Second title' }, was });
    expect(second.errors?.[0]?.extensions.faults).toEqual([
      expect.objectContaining({ field: 'title', value: 'Second title', onFile: 'First title' }),
    ]);
    const unread = await system.graphql(write, { rule: { ...was, title: 'Third title' } });
    expect(unread.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'was' });
  });

  it('of a person: name and role are both kept, and of one of them the second is shown both values', async () => {
    const safety = await test.as('safety');
    const person = { name: 'Lark Hove', email: 'lark@cartwright.example', role: 'warehouse', password: 'given by another' };
    const { id } = (await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person })).data
      .addPerson;
    const rename = (who: Agent, name: string, was: string) =>
      who.graphql('mutation($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { name } }', {
        id,
        name,
        was,
      });
    const changeRole = (who: Agent, role: string, was: string) =>
      who.graphql('mutation($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }', { id, role, was });
    const onFile = async () =>
      (await safety.graphql('{ people { id name role } }')).data.people.find((each: { id: string }) => each.id === id);
    const both = await Promise.all([rename(system, 'Lark Heath', 'Lark Hove'), changeRole(safety, 'system', 'warehouse')]);
    expect(both.map((each) => each.errors)).toEqual([undefined, undefined]);
    expect(await onFile()).toMatchObject({ name: 'Lark Heath', role: 'system' });
    const second = await rename(safety, 'Lark Hyde', 'Lark Hove');
    expect(second.errors?.[0]?.extensions.faults).toEqual([
      expect.objectContaining({ field: 'name', value: 'Lark Hyde', onFile: 'Lark Heath', wanted: expect.stringContaining('“Lark Heath”') }),
    ]);
    expect((await changeRole(system, 'warehouse', 'warehouse')).errors?.[0]?.extensions.faults).toEqual([
      expect.objectContaining({ field: 'role', value: 'warehouse', onFile: 'system' }),
    ]);
    expect(await onFile()).toMatchObject({ name: 'Lark Heath', role: 'system' });
    expect((await rename(safety, 'Lark Hyde', 'Lark Heath')).errors).toBeUndefined();
    expect((await rename(system, 'Lark Hyde', 'Lark Hove')).errors).toBeUndefined();
  });
});
