import { createHash } from 'node:crypto';
import { sendRows } from '../support/register-edits.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';
import { tinyPng } from '../support/tiny-pictures.js';

const list = '{ lentKit { itemId owner lent barredBy } }';
const takeIn = 'mutation($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }';
const clear = 'mutation($id: ID!, $reason: String!) { clearLentPaper(itemId: $id, reason: $reason) }';
const give = 'mutation($id: ID!, $on: String!) { giveBackLentKit(itemId: $id, on: $on, condition: "chain dirty") }';
const hold = 'mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename ... on Hold { barred } } }';
const hoist = {
  ...{ serial: 'L-1', kind: 'hoist', model: 'Chain hoist 2.5 t', by: 'lender', owner: 'Quay Hire (invented)', depot: 'Ferry Lane' },
  ...{ on: '2027-02-25', condition: 'clean', ratedLoad: '2500 kg' },
};

describe('kit of others', () => {
  let test: TestApp;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, safety] = await Promise.all([test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const kit = async (id: string) => (await warehouse.graphql(list)).data.lentKit.find((each: any) => each.itemId === id);
  const faultOf = (reply: any) => reply.errors?.[0]?.extensions.faults?.[0];
  let holds = 0;
  /** What the gate says where somebody promises it. */
  const barred = async (id: string): Promise<string> => {
    const wanted = { name: `Hold ${++holds}`, items: [id], from: `2029-0${holds}-01`, to: `2029-0${holds}-02`, hours: 1 };
    return (await warehouse.graphql(hold, { hold: wanted })).data.placeHold.barred.join('; ');
  };

  it('is taken in, and is barred until its paper was seen', async () => {
    // From the warehouse it would wait besides: a hoist of this model is out of use, and it may be that one.
    expect((await safety.graphql(takeIn, { kit: hoist })).data.takeInLentKit).toEqual({ itemId: 'L-1', waits: [] });
    expect(await kit('L-1')).toMatchObject({
      owner: 'Quay Hire (invented)',
      barredBy: 'paper-missing',
      lent: { delivered: { condition: 'clean' } },
    });
    expect(await barred('L-1')).toMatch(/kit of Quay Hire \(invented\): nobody has seen its paper/);
    const cells = { serial: 'L-1', model: hoist.model, depot: 'Ferry Lane', owner: 'nobody', state: 'in service' };
    await sendRows(warehouse, 'items/hoist', [cells]);
    expect((await kit('L-1')).barredBy).toBe('paper-missing');
  });

  it.each([
    ['a serial that is here', { serial: 'L-1' }, 'serial'],
    ['a serial of the company', { serial: 'H-01' }, 'serial'],
    ['a plate of another rating', { serial: 'L-8', ratedLoad: '1000 kg' }, 'ratedLoad'],
    ['a plate of another rating in another unit', { serial: 'L-8', ratedLoad: '2.6 t' }, 'ratedLoad'],
    ['short tons where tonnes are on file', { serial: 'L-8', ratedLoad: '2.5 short ton' }, 'ratedLoad'],
    ['a model that is not on file', { serial: 'L-8', model: 'Nothing' }, 'model'],
    ['a day ahead', { serial: 'L-8', on: '2028-01-01' }, 'on'],
    ['a day that does not exist', { serial: 'L-8', on: '2027-02-30' }, 'lent.delivered.on'],
    ['an owner of another kind', { serial: 'L-8', by: 'friend' }, 'by'],
    ['no condition', { serial: 'L-8', condition: ' ' }, 'lent.delivered.condition'],
  ])('with %s is refused, and nothing is on file', async (_what, change, field) => {
    const reply = await warehouse.graphql(takeIn, { kit: { ...hoist, ...change } });
    expect(reply.errors?.[0]?.extensions.faults?.map((each: any) => each.field)).toContain(field);
    expect(await kit('L-8')).toBeUndefined();
  });

  it('is cleared by the safety officer alone, with a reason', async () => {
    expect((await warehouse.graphql(clear, { id: 'L-1', reason: 'fine' })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect(faultOf(await safety.graphql(clear, { id: 'L-1', reason: ' ' }))?.field).toBe('reason');
    expect((await safety.graphql(clear, { id: 'L-1', reason: 'plate read on site' })).errors).toBeUndefined();
    expect(await kit('L-1')).toMatchObject({ barredBy: null, lent: { cleared: { by: 'Ines Aldous', reason: 'plate read on site' } } });
    expect(await barred('L-1')).not.toMatch(/paper/);
  });

  it('without a serial gets a name; its paper is kept with its hash, and a file that is not what it says is refused', async () => {
    const { itemId } = (await warehouse.graphql(takeIn, { kit: { ...hoist, serial: null, ratedLoad: '2.5 t' } })).data.takeInLentKit;
    expect(itemId).toBe('LENT-1');
    const headers = { 'content-type': 'image/png', 'x-cartwright': '1' };
    const send = (body: Buffer) =>
      warehouse.fetch(`/api/papers/${itemId}?name=plate.png`, { method: 'POST', headers, body: new Uint8Array(body) });
    expect((await send(Buffer.from('%PDF-1.7'))).status).toBe(415);
    expect((await kit(itemId)).barredBy).toBe('paper-missing');
    const png = tinyPng;
    expect((await send(png.subarray(0, 8))).status).toBe(415);
    expect((await send(png)).status).toBe(200);
    const { barredBy, lent } = await kit(itemId);
    expect([barredBy, lent.paper.sha256, lent.paper.seenBy]).toEqual([
      null,
      createHash('sha256').update(png).digest('hex'),
      'Wren Castellan',
    ]);
    expect((await warehouse.fetch(`/api/reports/${lent.paper.file}`)).status).toBe(200);
  });

  it('is given back, never used after that, and comes again as new', async () => {
    expect(faultOf(await warehouse.graphql(give, { id: 'L-1', on: '2027-02-20' }))?.field).toBe('on');
    expect((await warehouse.graphql(give, { id: 'L-1', on: '2027-02-26' })).errors).toBeUndefined();
    expect(await kit('L-1')).toMatchObject({ barredBy: 'given-back', lent: { givenBack: { condition: 'chain dirty' } } });
    expect(await barred('L-1')).toMatch(/given back on 2027-02-26/);
    expect(faultOf(await safety.graphql(clear, { id: 'L-1', reason: 'again' }))?.wanted).toMatch(/given back/);
    expect((await warehouse.graphql(takeIn, { kit: { ...hoist, on: '2027-02-26' } })).errors).toBeUndefined();
    expect(await kit('L-1')).toMatchObject({ barredBy: 'paper-missing' });
    const { edges } = (await warehouse.graphql('{ item(id: "L-1") { history(first: 20) { edges { node { sentence } } } } }')).data.item
      .history;
    const said = edges.map((each: any) => each.node.sentence).join('\n');
    for (const part of [
      'Taken in, kit of Quay Hire',
      'Cleared without its paper: plate read on site.',
      'Given back on 2027-02-26: chain dirty.',
    ])
      expect(said).toContain(part);
  });
});
