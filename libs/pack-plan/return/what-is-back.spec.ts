import type { CartLoad } from '../contract/index.js';
import { type Sighting, type Travelling, whatIsBack } from './index.js';

const load = (id: string, cart: string | null, serials: readonly string[]) =>
  ({ id, cart, boxes: serials.map((serial, index) => ({ slot: index + 1, serial })) }) as unknown as CartLoad;
const thing = (id: string, kind: string, more: Partial<Travelling> = {}): Travelling => ({
  id,
  kind,
  model: 'M',
  cart: null,
  slot: null,
  ...more,
});

const loads = [load('Right 1-2', 'K-2', ['B-3', 'B-4']), load('Left 1-2', 'K-1', ['B-1', 'B-2'])];
const things = [
  thing('B-1', 'box', { cart: 'K-1', slot: 1 }),
  thing('B-2', 'box', { cart: 'K-1', slot: 2 }),
  thing('B-3', 'box', { cart: 'K-9', slot: 2 }),
  thing('B-4', 'box'),
  thing('H-1', 'hoist'),
  thing('G-1', 'grid'),
  thing('K-1', 'cart'),
  thing('K-2', 'cart'),
];
const row = (item: string, moment: string, by: string): Sighting => ({
  item,
  moment,
  by,
  place: { code: 'row', way: 'off', truck: 'T1', row: 4 },
});
const record = (item: string, moment: string, by: string): Sighting => ({
  item,
  moment,
  by,
  place: { code: 'record', sentence: 'Stands.' },
});

describe('what is back', () => {
  it('stands in the order of the carts, each cart before its boxes, and what rides on none by its kind', () => {
    expect(whatIsBack(things, loads, [], []).map((each) => each.id)).toEqual(['K-2', 'B-4', 'B-3', 'K-1', 'B-1', 'B-2', 'G-1', 'H-1']);
  });

  it('is what somebody scanned in, by whom and when last', () => {
    const returned = [
      { item: 'B-1', moment: '2027-03-08T02:00:00Z', by: 'Wren' },
      { item: 'B-1', moment: '2027-03-08T01:00:00Z', by: 'Sol' },
    ];
    const [b1, b2] = whatIsBack(things, loads, returned, []).filter((each) => each.load === 'Left 1-2' && each.kind === 'box');
    expect(b1?.back).toEqual({ moment: '2027-03-08T02:00:00Z', by: 'Wren' });
    expect(b2?.back).toBeNull();
  });

  it('of what is not: the last that anybody saw of it, of the cart that it flew from, or of the cart that it stands on', () => {
    const sightings = [
      record('B-3', '2027-03-01T10:00:00Z', 'Sol'),
      row('K-2', '2027-03-05T10:00:00Z', 'Ines'),
      row('K-9', '2027-03-06T10:00:00Z', 'Wren'),
      record('K-1', '2027-03-02T10:00:00Z', 'Sol'),
    ];
    const seen = new Map(whatIsBack(things, loads, [], sightings).map((each) => [each.id, each.seen]));
    expect(seen.get('B-3')).toMatchObject({ by: 'Wren', with: 'K-9', place: { code: 'row', truck: 'T1' } });
    expect(seen.get('B-4')).toMatchObject({ by: 'Ines' });
    expect(seen.get('B-2')).toMatchObject({ by: 'Sol', place: { code: 'record' } });
    expect(seen.get('K-1')?.with).toBeNull();
    expect(seen.get('H-1')).toBeNull();
  });

  it('what is back has no last place', () => {
    const back = whatIsBack(
      things,
      loads,
      [{ item: 'B-3', moment: '2027-03-08T02:00:00Z', by: 'Wren' }],
      [record('B-3', '2027-03-01T10:00:00Z', 'Sol')],
    );
    expect(back.find((each) => each.id === 'B-3')?.seen).toBeNull();
  });
});
