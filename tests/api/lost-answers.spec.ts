import type { Wire } from '../../apps/web/src/platform/deliver.js';
import type { Refused } from '../../apps/web/src/platform/refused.js';
import { newId, requestsOver } from '../../apps/web/src/platform/requests-over.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const quarantine = {
  toString: () => 'mutation Quarantine($item: ID!, $reason: String!) { quarantine(itemId: $item, reason: $reason) { item } }',
};

/** What becomes of one sending: it arrives and its answer comes back, its answer is lost, or it never arrives. */
type Fate = 'through' | 'answer lost' | 'never came' | 'gateway gave up';

describe('the screens, when an answer is lost', () => {
  let test: TestApp;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    warehouse = await test.as('warehouse');
  });
  afterAll(() => test.close());

  /** The requests of a browser whose sendings meet these fates in turn; what comes after goes through. */
  function over(...fates: Fate[]) {
    const pauses: number[] = [];
    const wire: Wire = {
      pause: (milliseconds) => Promise.resolve(void pauses.push(milliseconds)),
      makeId: newId,
      isOffline: () => false,
      fetch: async (path, init) => {
        const fate = fates.shift() ?? 'through';
        if (fate === 'never came') throw new TypeError('fetch failed');
        const answer = await warehouse.fetch(path, init);
        if (fate === 'answer lost') throw new TypeError('terminated');
        return fate === 'gateway gave up' ? new Response('', { status: 504 }) : answer;
      },
    };
    return { ...requestsOver(wire), pauses };
  }
  const quarantined = async (item: string): Promise<number> =>
    Number((await test.dataSource.query(`SELECT count(*) FROM event WHERE item_id = $1 AND what = 'quarantined'`, [item]))[0].count);
  const refusalOf = (work: Promise<unknown>): Promise<Refused> =>
    work.then(
      () => {
        throw new Error('it was answered');
      },
      (refused: Refused) => refused,
    );

  it('a write whose answer is lost twice is done once, and answered as if nothing had been', async () => {
    const { request, pauses } = over('answer lost', 'gateway gave up');
    const answer: any = await request(quarantine, { item: 'P-001', reason: 'Lost twice' });
    expect(answer.quarantine.item.state).toBe('quarantined');
    expect(await quarantined('P-001')).toBe(1);
    expect(pauses).toEqual([500, 2_000]);
  });

  it('where no answer comes at all nothing is claimed; asked later, it says saved', async () => {
    const { request, settleRequest } = over('answer lost', 'never came', 'never came', 'never came');
    const refused = await refusalOf(request(quarantine, { item: 'P-002', reason: 'All lost' }));
    expect(refused).toMatchObject({ kind: 'network', openRequestId: expect.any(String) });
    expect(refused.message).toContain('not known yet');
    expect(await settleRequest(refused.openRequestId!)).toBe('unknown yet');
    expect(await settleRequest(refused.openRequestId!)).toBe('saved');
    expect(await quarantined('P-002')).toBe(1);
  });

  it('and says not saved where it never came', async () => {
    const { request, settleRequest } = over('never came', 'never came', 'never came');
    const refused = await refusalOf(request(quarantine, { item: 'P-003', reason: 'Never came' }));
    expect(await settleRequest(refused.openRequestId!)).toBe('not saved');
    expect(await quarantined('P-003')).toBe(0);
  });

  it('after a fault of the house it looks up whether something was saved before it says so', async () => {
    await test.dataSource.query(
      `CREATE FUNCTION break_down() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'broken on purpose'; END $$`,
    );
    await test.dataSource.query(`CREATE TRIGGER break_down BEFORE INSERT ON event FOR EACH ROW EXECUTE FUNCTION break_down()`);
    const { request } = over();
    const refused = await refusalOf(request(quarantine, { item: 'P-004', reason: 'Fault' }));
    await test.dataSource.query(`DROP FUNCTION break_down() CASCADE`);
    expect(refused).toMatchObject({ kind: 'fault', incident: expect.any(String), openRequestId: undefined });
    expect(refused.message).toContain(`Nothing was saved. Incident ${refused.incident}`);
    const [{ count }] = await test.dataSource.query(`SELECT count(*) FROM item WHERE id = 'P-004' AND state = 'quarantined'`);
    expect(count).toBe('0');
  });

  it('tells bad input, refusals and a session that ended apart', async () => {
    const { request } = over();
    expect(await refusalOf(request(quarantine, { item: 'P-005', reason: ' ' }))).toMatchObject({
      kind: 'bad input',
      faults: [{ field: 'reason' }],
    });
    const rule = { toString: () => 'mutation { approveRiggingSystem(id: "x") }' };
    expect(await refusalOf(request(rule))).toMatchObject({ kind: 'refused' });
    const { cookie } = warehouse;
    const stranger = requestsOver({
      pause: () => Promise.resolve(),
      makeId: newId,
      isOffline: () => false,
      fetch: (path, init) => fetch(test.address + path, { ...init, headers: { ...init.headers, cookie: cookie.slice(0, -3) } }),
    });
    expect(await refusalOf(stranger.request(quarantine, { item: 'P-005', reason: 'x' }))).toMatchObject({ kind: 'signed out' });
  });

  it('a device without a connection sends nothing and says so', async () => {
    const { request } = requestsOver({
      pause: () => Promise.resolve(),
      makeId: newId,
      isOffline: () => true,
      fetch: () => Promise.reject(new Error()),
    });
    const refused = await refusalOf(request(quarantine, { item: 'P-006', reason: 'Offline' }));
    expect(refused).toMatchObject({ kind: 'network', openRequestId: undefined });
  });
});
