import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { LogSealer } from '../../apps/api/src/platform/seal/log-sealer.js';
import { sealAll } from '../../apps/api/src/platform/seal/seal-log.js';
import { type LogFault, type LogVerdict, verifyLog } from '../../apps/api/src/platform/seal/verify-log.js';
import { writeBackup } from '../../apps/cli/keeping/write-backup.js';
import { main } from '../../apps/cli/verify-log.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

/** A house whose owner tampers with the log: triggers off, one statement, triggers on; every try is undone after it was looked at. */
describe('the seals of the log', () => {
  let test: TestApp;
  let owner: pg.Client;
  let safety: Agent;
  let first: string;
  let second: string;
  beforeAll(async () => {
    test = await startTestApp();
    safety = await test.as('safety');
    owner = new pg.Client({ connectionString: test.databaseUrl });
    await owner.connect();
    await quarantine('SH-1', 'thread worn');
    first = (await test.app.get(LogSealer).head())!.head;
    await quarantine('P-002', 'bow bent');
    await quarantine('P-003', 'bag wet');
    second = (await test.app.get(LogSealer).head())!.head;
  });
  afterAll(async () => {
    await owner.end();
    await test.close();
  });

  const quarantine = async (item: string, reason: string) => {
    const { errors } = await safety.graphql(
      'mutation($item: ID!, $reason: String!) { quarantine(itemId: $item, reason: $reason) { item } }',
      {
        item,
        reason,
      },
    );
    return errors;
  };
  const verify = (head?: string): Promise<LogVerdict> => verifyLog(async (sql, values) => (await owner.query(sql, values)).rows, head);
  const tampered = async (...statements: string[]): Promise<LogFault | null> => {
    await owner.query('BEGIN');
    try {
      for (const table of ['event', 'seal', 'sealed_line']) await owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
      for (const statement of statements) expect((await owner.query(statement)).rowCount).toBeGreaterThan(0);
      return (await verify(second)).fault;
    } finally {
      await owner.query('ROLLBACK');
    }
  };
  const lineOf = async (words: string): Promise<string> =>
    (await owner.query(`SELECT id FROM event WHERE sentence LIKE $1 ORDER BY id DESC LIMIT 1`, [`%${words}%`])).rows[0].id;

  const placeOf = async (line: string): Promise<string> =>
    (await owner.query('SELECT place FROM sealed_line WHERE event_id = $1', [line])).rows[0].place;

  it('agree with a log that nobody touched, from the first line to the head on paper and on', async () => {
    const verdict = await verify(first);
    expect(verdict).toMatchObject({ fault: null, seals: 2, unsealed: 0 });
    expect(verdict.wantedAt!.lines).toBeLessThan(verdict.lines);
    expect(verdict.lines).toBe(Number((await owner.query('SELECT count(*) FROM event')).rows[0].count));
  });

  it('are refused any change by the application and by the tables themselves', async () => {
    for (const table of ['seal', 'sealed_line']) await expect(owner.query(`DELETE FROM ${table}`)).rejects.toThrow('append only');
  });

  it('find a changed word, a changed fact, a person put in the place of another', async () => {
    const line = await lineOf('thread worn');
    const changed = { kind: 'changed', line };
    expect(await tampered(`UPDATE event SET sentence = 'Looked at.' WHERE id = ${line}`)).toMatchObject({
      ...changed,
      now: expect.stringContaining('Looked at.'),
    });
    expect(await tampered(`UPDATE event SET at = at - interval '1 second' WHERE id = ${line}`)).toMatchObject(changed);
    expect(await tampered(`UPDATE event SET person_id = gen_random_uuid() WHERE id = ${line}`)).toMatchObject(changed);
    expect(await tampered(`UPDATE event SET item_id = 'P-002' WHERE id = ${line}`)).toMatchObject(changed);
    const [row] = (await owner.query(`SELECT id FROM event WHERE row_table = 'item' AND row_key = 'SH-1' AND before IS NOT NULL LIMIT 1`))
      .rows;
    expect(await tampered(`UPDATE event SET after = '{"state": "in service"}' WHERE id = ${row.id}`)).toMatchObject({
      kind: 'changed',
      line: row.id,
    });
  });

  it('find a line that was taken out, and lines that were exchanged', async () => {
    const [line, other] = [await lineOf('bow bent'), await lineOf('bag wet')];
    expect(await tampered(`DELETE FROM event WHERE id = ${line}`)).toMatchObject({ kind: 'missing', line });
    const [one, two] = await Promise.all([placeOf(line), placeOf(other)]);
    expect(
      await tampered(
        `UPDATE sealed_line SET place = -1 WHERE event_id = ${line}`,
        `UPDATE sealed_line SET place = ${one} WHERE event_id = ${other}`,
        `UPDATE sealed_line SET place = ${two} WHERE event_id = ${line}`,
      ),
    ).toMatchObject({ kind: 'out of order' });
    expect(await tampered(`DELETE FROM sealed_line WHERE event_id = ${line}`, `DELETE FROM event WHERE id = ${line}`)).toMatchObject({
      kind: 'out of order',
    });
  });

  it('find a seal that was changed or taken out, and a chain that was sealed anew', async () => {
    expect(await tampered(`UPDATE seal SET made_at = made_at - interval '1 day' WHERE number = 2`)).toMatchObject({
      kind: 'seal',
      seal: '2',
    });
    expect(await tampered(`UPDATE seal SET head = repeat('0', 64) WHERE number = 1`)).toMatchObject({ kind: 'seal', seal: '1' });
    expect(await tampered(`DELETE FROM sealed_line WHERE seal_number = 2`, `DELETE FROM seal WHERE number = 2`)).toEqual({
      kind: 'head',
      head: second,
    });
    const line = await lineOf('thread worn');
    expect(
      await tampered(
        `UPDATE sealed_line SET leaf = repeat('1', 64) WHERE event_id = ${line}`,
        `UPDATE event SET sentence = 'Looked at.' WHERE id = ${line}`,
      ),
    ).toMatchObject({ kind: 'changed', line });
    await owner.query('BEGIN');
    for (const table of ['event', 'seal', 'sealed_line']) await owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
    await owner.query(`UPDATE event SET sentence = 'Looked at.' WHERE id = ${line}`);
    await owner.query('DELETE FROM sealed_line');
    await owner.query('DELETE FROM seal');
    await sealAll(
      (work) => work(async (sql, values) => (await owner.query(sql, values)).rows),
      () => new Date('2027-02-26T09:00:00Z'),
    );
    expect(await verify()).toMatchObject({ fault: null });
    expect((await verify(second)).fault).toEqual({ kind: 'head', head: second });
    await owner.query('ROLLBACK');
  });

  it('find a line that was put in behind what is sealed', async () => {
    const found = await tampered(
      `INSERT INTO event (id, at, who, what, sentence) OVERRIDING SYSTEM VALUE VALUES (-5, now(), 'Ines Aldous', 'released', 'Released it.')`,
    );
    expect(found).toMatchObject({ kind: 'put in', line: '-5', now: 'Released it.' });
  });

  it('know that a person who left went out of the words, and that nothing else did', async () => {
    const system = await test.as('system');
    const person = { name: 'Quill Barrow', email: 'quill@example.org', role: 'warehouse', password: 'twelve letters' };
    const added = await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person });
    expect(added.errors).toBeUndefined();
    await test.app.get(LogSealer).seal();
    const line = await lineOf('thread worn');
    for (const words of ['Looked at.', 'Quill Barrow looked at it.'])
      expect(
        await tampered(
          `UPDATE event SET sentence = '${words}' WHERE id = ${line}`,
          `UPDATE account SET disabled_at = now() WHERE name = 'Quill Barrow'`,
          `SELECT leave_house(id) FROM account WHERE name = 'Quill Barrow'`,
        ),
      ).toMatchObject({ kind: 'changed', line });
    const { errors } = await system.graphql('mutation($id: ID!) { removePerson(id: $id) }', { id: added.data.addPerson.id });
    expect(errors).toBeUndefined();
    expect((await owner.query(`SELECT count(*)::int AS n FROM event WHERE event::text ~* 'quill'`)).rows[0].n).toBe(0);
    const after = await verify(first);
    expect(after.fault).toBeNull();
    expect(after.reworded).toBeGreaterThan(0);
    await test.app.get(LogSealer).seal();
    const reworded = (await owner.query(`SELECT jsonb_object_keys(after) AS line FROM event WHERE what = 'reworded' LIMIT 1`)).rows[0].line;
    expect(await tampered(`UPDATE event SET who = 'Ines Aldous' WHERE id = ${reworded}`)).toMatchObject({
      kind: 'changed',
      line: reworded,
    });
  });

  it('are made by one at a time while many write, and miss nothing', async () => {
    const sealers = [test.app.get(LogSealer), test.app.get(LogSealer)];
    const writes = Array.from({ length: 12 }, (_, index) => quarantine(`P-0${10 + index}`, `try ${index}`));
    await Promise.all([...writes, ...Array.from({ length: 6 }, (_, index) => sealers[index % 2]!.seal())]);
    expect(await Promise.all(writes)).toEqual(writes.map(() => undefined));
    await sealers[0]!.seal();
    expect(await verify(first)).toMatchObject({ fault: null, unsealed: 0 });
  });

  it('stand on the backup, which holds no line that is not sealed', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'cartwright-seals-'));
    await quarantine('P-030', 'before the backup');
    const { manifest } = await writeBackup(owner, join(folder, 'a.backup'), '0.0.0', new Date('2027-02-26T10:00:00Z'));
    rmSync(folder, { recursive: true });
    const verdict = await verify(manifest.log!.head);
    expect(verdict).toMatchObject({ fault: null, unsealed: 0, head: manifest.log!.head, wantedAt: { lines: manifest.log!.lines } });
  });

  it('are verified by the command: what is right with exit code 0, what is not with 1, by name', async () => {
    const run = async (...args: string[]) => {
      const said: string[] = [];
      const write = process.stdout.write.bind(process.stdout);
      process.env.DATABASE_URL = test.databaseUrl;
      process.stdout.write = (text: string) => said.push(text) > 0;
      try {
        return { code: await main(args, process.cwd()), said: said.join('') };
      } finally {
        process.stdout.write = write;
        delete process.env.DATABASE_URL;
      }
    };
    expect(await run('--head', first)).toMatchObject({ code: 0, said: expect.stringContaining(`The head ${first} stands for the first`) });
    const line = await lineOf('bow bent');
    await owner.query('ALTER TABLE event DISABLE TRIGGER USER');
    await owner.query(`UPDATE event SET sentence = 'Never was.' WHERE id = ${line}`);
    await owner.query('ALTER TABLE event ENABLE TRIGGER USER');
    const found = await run('--head', first);
    expect(found.code).toBe(1);
    expect(found.said).toContain(`line ${line} of seal 2 was changed`);
  });
});
