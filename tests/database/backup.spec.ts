import { createHash, randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { wholePlanHtml } from '#drawings';
import { exportHouse } from '../../apps/cli/keeping/export-house.js';
import { checkIndexes } from '../../apps/cli/keeping/check-indexes.js';
import { sentencesOf } from '../../apps/cli/keeping/log-verdict-words.js';
import { readBackup } from '../../apps/cli/keeping/read-backup.js';
import { restoreBackup } from '../../apps/cli/keeping/restore-backup.js';
import { writeBackup } from '../../apps/cli/keeping/write-backup.js';
import { type TestApp, startTestApp } from '../support/test-app.js';

const at = new Date('2027-02-26T10:00:00Z');

describe('backup and restore', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-backup-'));
  const made: string[] = [];
  let house: TestApp;
  beforeAll(async () => {
    house = await startTestApp();
  });
  afterAll(async () => {
    await house.close();
    for (const name of made) await onServer(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    rmSync(folder, { recursive: true, force: true });
  });

  const server = (): string => process.env.TEST_DATABASE_URL!;
  const onServer = (statement: string) => withClient(server(), (client) => client.query(statement));
  const emptyDatabase = async (): Promise<string> => {
    const name = `restored_${randomUUID().replaceAll('-', '')}`;
    await onServer(`CREATE DATABASE ${name} TEMPLATE template0`);
    made.push(name);
    return Object.assign(new URL(server()), { pathname: `/${name}` }).href;
  };
  const backUp = (url: string, name: string) => withClient(url, (client) => writeBackup(client, join(folder, name), '0.0.0', at));

  it('says whether the log in it is as it was sealed, and names a line that is not', async () => {
    const sound = await backUp(house.databaseUrl, 'sound.backup');
    expect([sound.notSealed, sound.verdict?.fault]).toEqual([null, null]);
    expect(sound.verdict?.lines).toBe(sound.manifest.log?.lines);
    await withClient(house.databaseUrl, async (client) => {
      await client.query('BEGIN; ALTER TABLE event DISABLE TRIGGER USER');
      const { rows } = await client.query(
        `UPDATE event SET sentence = 'x' WHERE id = (SELECT min(event_id) FROM sealed_line) RETURNING id`,
      );
      await client.query('ALTER TABLE event ENABLE TRIGGER USER; COMMIT');
      const { verdict } = await writeBackup(client, join(folder, 'changed.backup'), '0.0.0', at);
      expect(sentencesOf(verdict!)[0]).toContain(`NOT AS SEALED: line ${rows[0].id} of seal 1 was changed.`);
    });
  });

  it('is written while the disk of the database is full, and says that the newest lines are not sealed', async () => {
    await withClient(house.databaseUrl, async (client) => {
      await client.query(`INSERT INTO event (at, who, what, sentence) VALUES (now(), '', 'noted', 'not sealed yet')`);
      await client.query(
        `CREATE FUNCTION full_disk() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'No space left on device' USING ERRCODE = '53100'; END $$`,
      );
      await client.query('CREATE TRIGGER full_disk BEFORE INSERT ON seal FOR EACH ROW EXECUTE FUNCTION full_disk()');
      try {
        const { notSealed, verdict } = await writeBackup(client, join(folder, 'full.backup'), '0.0.0', at);
        expect([notSealed, verdict?.unsealed]).toEqual(['the disk of the database is full', expect.any(Number)]);
      } finally {
        await client.query('DROP FUNCTION full_disk() CASCADE');
      }
    });
  });

  it('drill: a house under writes is backed up, restored elsewhere, equal by hash, and its revisions print the same', async () => {
    const system = await house.as('system');
    const draft = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }',
    );
    const released = await system.graphql(
      'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a drill, nothing flies") { ... on PlanView { id } } }',
      {
        id: draft.data.makePackPlan.plan.id,
      },
    );
    const { id } = released.data.releasePackPlan;
    const steps: string[] = (await system.graphql('query($id: ID!) { plan(id: $id) { plan } }', { id })).data.plan.plan.picks.hangs.flatMap(
      (hang: { runningOrder: { goingUp: { key: string; hold: boolean }[] } }) =>
        hang.runningOrder.goingUp.filter((each) => each.hold).map((each) => each.key),
    );
    const state = { over: false, acknowledged: 0 };
    const writes = (async () => {
      for (let index = 0; !state.over; index++) {
        // All ticked one by one, then taken back in the other order, as holds ask for.
        const done = Math.floor(index / steps.length) % 2 === 0;
        const at = index % steps.length;
        const reply = await system.graphql(
          'mutation($id: ID!, $what: String!, $done: Boolean!) { tick(planId: $id, what: $what, done: $done) { id } }',
          { id, done, what: steps[done ? at : steps.length - 1 - at] },
        );
        expect(reply.errors).toBeUndefined();
        state.acknowledged++;
      }
    })();
    while (state.acknowledged < 3) await new Promise((resolve) => setTimeout(resolve, 5));
    const ticksOf = async (url: string) =>
      withClient(url, async (client) => Number((await client.query('SELECT count(*) AS n FROM event')).rows[0].n));
    const before = await ticksOf(house.databaseUrl);
    const { manifest } = await backUp(house.databaseUrl, 'drill.backup');
    state.over = true;
    await writes;

    const copyUrl = await emptyDatabase();
    const restored = await restoreBackup(copyUrl, join(folder, 'drill.backup'), false);
    expect(restored.migrated).toBe(0);
    expect(await ticksOf(copyUrl)).toBeGreaterThanOrEqual(before);
    const again = await backUp(copyUrl, 'again.backup');
    expect(again.manifest.tables).toEqual(manifest.tables);
    expect(again.manifest.sequences).toEqual(manifest.sequences);
    expect(manifest.tables.find((each) => each.name === 'item')?.rows).toBeGreaterThan(100);
    expect(await withClient(copyUrl, checkIndexes)).toMatchObject({ faults: [], indexes: expect.any(Number) });

    const printed = (url: string) =>
      withClient(url, async (client) => {
        const { rows } = await client.query(`SELECT revision, plan FROM pack_plan WHERE state <> 'draft' ORDER BY id`);
        return rows.map(({ revision, plan }) => wholePlanHtml({ plan, revision }));
      });
    const sheets = await printed(house.databaseUrl);
    expect(sheets).toHaveLength(1);
    expect(await printed(copyUrl)).toEqual(sheets);
  });

  it('a restored house keeps its rules and goes on working', async () => {
    const url = await emptyDatabase();
    await restoreBackup(url, join(folder, 'drill.backup'), false);
    await withClient(url, async (client) => {
      await expect(client.query(`UPDATE event SET sentence = 'x'`)).rejects.toThrow('append only');
      const { rows } = await client.query(`SELECT max(id) AS most FROM event`);
      const next = await client.query(`INSERT INTO event (at, who, what, sentence) VALUES (now(), 'a', 'b', 'c') RETURNING id`);
      expect(Number(next.rows[0].id)).toBeGreaterThan(Number(rows[0].most));
    });
  });

  it('a house with something in it is refused, and replaced only when that is said', async () => {
    const url = await emptyDatabase();
    const file = join(folder, 'drill.backup');
    await restoreBackup(url, file, false);
    await withClient(url, (client) => client.query(`INSERT INTO event (at, who, what, sentence) VALUES (now(), 'a', 'b', 'later')`));
    await expect(restoreBackup(url, file, false)).rejects.toThrow('This house is not empty');
    const later = () => withClient(url, async (client) => (await client.query(`SELECT FROM event WHERE sentence = 'later'`)).rowCount);
    expect(await later()).toBe(1);
    await restoreBackup(url, file, true);
    expect(await later()).toBe(0);
  });

  it('a house in which somebody works is refused', async () => {
    await expect(restoreBackup(house.databaseUrl, join(folder, 'drill.backup'), true)).rejects.toThrow('Somebody works in this house');
  });

  it('a file that is cut off, changed or no backup is refused before anything is touched', async () => {
    const whole = readFileSync(join(folder, 'drill.backup'));
    const changed = Buffer.from(whole);
    changed[Math.floor(whole.length / 2)]! ^= 1;
    const files = { cut: whole.subarray(0, whole.length - 5000), changed, other: Buffer.from('no backup'), empty: Buffer.alloc(0) };
    for (const [name, bytes] of Object.entries(files)) {
      writeFileSync(join(folder, name), bytes);
      await expect(readBackup(join(folder, name))).rejects.toThrow(/is damaged|is no backup/);
    }
    await expect(readBackup(join(folder, 'nowhere'))).rejects.toThrow('is not there');
  });

  it('no file is written over another', async () => {
    await expect(backUp(house.databaseUrl, 'drill.backup')).rejects.toThrow('is there already');
  });

  it('everything leaves in open formats, without passwords', async () => {
    const out = join(folder, 'out');
    expect(await exportHouse(house.databaseUrl, out)).toBeGreaterThan(30);
    const hashes = await withClient(house.databaseUrl, async (client) => (await client.query('SELECT password_hash FROM account')).rows);
    expect(hashes).toHaveLength(3);
    const listed = readFileSync(join(out, 'contents.csv'), 'utf8').trimEnd().split('\r\n').slice(1);
    for (const line of listed) {
      const [file, bytes, sha256] = line.split(',') as [string, string, string];
      const content = readFileSync(join(out, file));
      expect([content.length, createHash('sha256').update(content).digest('hex')]).toEqual([Number(bytes), sha256]);
      for (const { password_hash: hash } of hashes) expect(content.includes(hash)).toBe(false);
    }
    expect(readFileSync(join(out, 'register/box.csv'), 'utf8')).toContain('P-001');
    expect(JSON.parse(readFileSync(join(out, 'tours/harbour-lights.json'), 'utf8'))).toMatchObject({ format: 'cartwright tour 1' });
    expect(JSON.parse(readFileSync(join(out, 'plans/harbour-lights-quayside-A.json'), 'utf8'))).toMatchObject({ revision: 'A' });
    // Neither as a column nor in a line of the log, where a hash of it stands.
    const lines = readFileSync(join(out, 'records/event.csv'), 'utf8');
    expect(lines).toContain('account');
    for (const secret of ['password_hash', 'token_hash', 'device_hash']) expect(lines).not.toContain(secret);
    expect(readFileSync(join(out, 'records/calendar_feed.csv'), 'utf8')).not.toContain('token_hash');
    await expect(exportHouse(house.databaseUrl, out)).rejects.toThrow('is not empty');
  });

  it('a backup of an earlier version is restored in its shape and brought to the newest', async () => {
    const old = await emptyDatabase();
    await withClient(old, (client) => client.query(readFileSync('tests/database/landed/2026-11-25.sql', 'utf8')));
    const { manifest } = await backUp(old, 'old.backup');
    const url = await emptyDatabase();
    const { migrated } = await restoreBackup(url, join(folder, 'old.backup'), false);
    expect(migrated).toBeGreaterThan(0);
    await withClient(url, async (client) => {
      const names = (await client.query('SELECT name FROM migrations')).rows.map((each) => each.name);
      expect(names).toHaveLength(manifest.migrations.length + migrated);
      const plans = await client.query(`SELECT count(*)::int AS n FROM pack_plan WHERE revision IS NOT NULL`);
      expect(plans.rows[0].n).toBe(4);
    });
  });
});

async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
