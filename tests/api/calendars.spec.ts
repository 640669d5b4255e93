import ICAL from 'ical.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

interface Seen {
  readonly uid: string;
  readonly on: string;
  readonly sequence: number;
  readonly status: string;
  readonly summary: string;
}

describe('a calendar that somebody subscribes to', () => {
  let test: TestApp;
  let safety: Agent;
  let token: string;
  let depot: string;
  const visit = 'a0000000-0000-4000-8000-000000000001';
  beforeAll(async () => {
    test = await startTestApp();
    safety = await test.as('safety');
    [{ depot }] = await test.dataSource.query(`SELECT DISTINCT depot FROM item WHERE kind = 'hoist'`);
    await test.dataSource.query(
      `INSERT INTO visit (id, on_day, depot, state, list, changed_at) VALUES ($1, '2027-03-20', $2, 'agreed', '[{"id": "H-01"}, {"id": "H-02"}]', now())`,
      [visit, depot],
    );
    token = (await safety.graphql('mutation { renewCalendar }')).data.renewCalendar;
  });
  afterAll(() => test.close());

  const asked = (secret: string, file = 'examinations.ics') => fetch(`${test.address}/api/calendar/${secret}/${file}`);
  const seen = async (): Promise<Seen[]> => {
    const reply = await asked(token);
    expect([reply.status, reply.headers.get('content-type'), reply.headers.get('cache-control')]).toEqual([
      200,
      'text/calendar; charset=utf-8',
      'private, no-store',
    ]);
    const calendar = new ICAL.Component(ICAL.parse(await reply.text()) as []);
    return calendar.getAllSubcomponents('vevent').map((each) => {
      const { uid, startDate, sequence, summary } = new ICAL.Event(each);
      return { uid, on: startDate.toString(), sequence, status: String(each.getFirstPropertyValue('status')), summary };
    });
  };
  const ofVisit = async () => (await seen()).find((each) => each.uid.startsWith(`visit-${visit}`))!;

  it('shows visits, last days of use and incidents to answer, without signing in', async () => {
    await safety.graphql('mutation { recordIncident(itemId: "H-01", on: "2027-02-25", what: "shock load") { id } }');
    const entries = await seen();
    expect(await ofVisit()).toMatchObject({ on: '2027-03-20', sequence: 0, status: 'CONFIRMED', summary: `Examiner at ${depot}: 2 items` });
    expect(entries.filter((each) => each.uid.startsWith('incident-')).map((each) => each.summary)).toContain('To answer: H-01, shock load');
    const days: { on: string; count: string }[] = await test.dataSource.query(
      `SELECT due_on::text AS on, count(*) FROM item WHERE state = 'in service' AND due_on BETWEEN '2027-02-26' AND '2028-02-27' GROUP BY due_on, depot ORDER BY due_on, depot`,
    );
    expect(days.length).toBeGreaterThan(2);
    expect(entries.filter((each) => each.uid.startsWith('last-day-')).map((each) => each.on)).toEqual(days.map((each) => each.on));
    expect(new Set(entries.map((each) => each.uid)).size).toBe(entries.length);
    expect(await seen()).toEqual(entries);
  });

  it('keeps the id of a visit that is moved and counts its changes, also where it falls away and comes back', async () => {
    const before = await ofVisit();
    await safety.graphql(`mutation { moveVisit(id: "${visit}", onDay: "2027-03-23", expectedVersion: 1) }`);
    const moved = await ofVisit();
    expect(moved).toEqual({ ...before, on: '2027-03-23', sequence: before.sequence + 1 });
    await safety.graphql(`mutation { cancelVisit(id: "${visit}", expectedVersion: 2) }`);
    expect(await ofVisit()).toEqual({ ...moved, status: 'CANCELLED', sequence: moved.sequence + 1 });
    await test.dataSource.query(`UPDATE visit SET state = 'agreed' WHERE id = $1`, [visit]);
    expect(await ofVisit()).toEqual({ ...moved, sequence: moved.sequence + 2 });
  });

  it('takes an answered incident away', async () => {
    const examination = { on: '2027-02-26', outcome: 'pass', examiner: 'Rosa Tamm (invented)', report: 'RT-7' };
    await safety.graphql('mutation($examination: AnyJson!) { recordExamination(itemId: "H-01", examination: $examination) { id } }', {
      examination,
    });
    const [answered] = (await seen()).filter((each) => each.summary === 'To answer: H-01, shock load');
    expect(answered?.status ?? 'CANCELLED').toBe('CANCELLED');
  });

  it('comes as rows for a spreadsheet as well', async () => {
    const text = await (await asked(token, 'examinations.csv')).text();
    expect(text.split('\r\n')[0]).toBe('day,state,what,place,description,uid,sequence');
    expect(text.split('\r\n').length - 2).toBe((await seen()).length);
  });

  it('has a secret address, kept as a hash, that is renewed and withdrawn', async () => {
    const [kept] = await test.dataSource.query('SELECT * FROM calendar_feed');
    expect(JSON.stringify(kept)).not.toContain(token);
    const log = await test.dataSource.query(`SELECT * FROM event`);
    expect(JSON.stringify(log)).not.toContain(token);
    expect((await asked(token.replace(/.$/, (last) => (last === 'A' ? 'B' : 'A')))).status).toBe(404);
    expect((await asked('x')).status).toBe(404);
    const second = (await safety.graphql('mutation($depot: String) { renewCalendar(depot: $depot) }', { depot })).data.renewCalendar;
    expect([(await asked(token)).status, (await asked(second)).status]).toEqual([404, 200]);
    const own = (await safety.graphql('{ ownCalendars { id depot } }')).data.ownCalendars;
    expect(own).toEqual([{ id: own[0].id, depot }]);
    const other = await test.as('warehouse');
    expect((await other.graphql('mutation($id: ID!) { withdrawCalendar(id: $id) }', { id: own[0].id })).errors?.[0]?.extensions.code).toBe(
      'NOT_FOUND',
    );
    expect((await safety.graphql('mutation($id: ID!) { withdrawCalendar(id: $id) }', { id: own[0].id })).data).toEqual({
      withdrawCalendar: true,
    });
    expect((await asked(second)).status).toBe(404);
  });
});
