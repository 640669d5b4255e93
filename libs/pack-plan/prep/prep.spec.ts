import type { CartLoad } from '../contract/index.js';
import { afterBench, leavesTheHouse, pickList, splaysToSet, trunkLines, wrongCounts, wrongSplays } from './index.js';

describe('a bench test', () => {
  it('passes where nothing failed', () => expect(afterBench([])).toBeNull());

  it('takes a box out by the gravest of what failed', () => {
    expect(afterBench(['label', 'drivers', 'links'])).toEqual({ kind: 'rigging', then: 'out' });
    expect(afterBench(['label', 'drivers'])).toEqual({ kind: 'sound', then: 'out' });
  });

  it('a label alone keeps no box at home', () => expect(afterBench(['label'])).toEqual({ kind: 'looks', then: 'flies' }));
});

describe('splays read back', () => {
  const box = (slot: number, splayDeg: number, splaySet: string) => ({ slot, splayDeg, splaySet });
  const load = { boxes: [box(1, 2, 'at the point'), box(2, 0.5, 'in the cart'), box(3, 0, 'in the cart')] } as unknown as CartLoad;

  it('are those that are set in the cart', () => expect(splaysToSet(load).map((each) => each.slot)).toEqual([2, 3]));

  it('are wrong where another was read, or none', () => {
    const wrong = (...read: [number, number][]) => wrongSplays(load, new Map(read)).map((each) => each.slot);
    expect(wrong([2, 0.5], [3, 0])).toEqual([]);
    expect(wrong([2, 1], [3, 0])).toEqual([2]);
    expect(wrong([2, 0.5])).toEqual([3]);
  });
});

describe('a trunk', () => {
  const lines = [
    {
      key: 'Pin 12',
      item: 'front pin',
      takenFrom: [
        { lot: 'P-A', trunk: 'HT-2', count: 6 },
        { lot: 'P-B', trunk: null, count: 60 },
      ],
    },
    { key: 'Pin 8', item: 'lock pin', takenFrom: [{ lot: 'L-A', trunk: 'HT-1', count: 12 }] },
  ];

  it('should hold what is taken from its batches', () => {
    expect([...trunkLines(lines)]).toEqual([
      ['HT-1', [{ key: 'Pin 8', item: 'lock pin', lot: 'L-A', count: 12 }]],
      ['HT-2', [{ key: 'Pin 12', item: 'front pin', lot: 'P-A', count: 6 }]],
    ]);
  });

  it('is wrong by every line of which another number was counted, or none', () => {
    const [[, one] = ['', []]] = [...trunkLines(lines)];
    expect(wrongCounts(one, new Map([['L-A', 12]]))).toEqual([]);
    expect(wrongCounts(one, new Map([['L-A', 11]]))).toMatchObject([{ lot: 'L-A', count: 12, counted: 11 }]);
    expect(wrongCounts(one, new Map([['L-A', 13]]))).toMatchObject([{ counted: 13 }]);
    expect(wrongCounts(one, new Map())).toMatchObject([{ counted: null }]);
  });
});

describe('what is picked', () => {
  const used = (id: string, kind: string, inside: string | null, depot = 'Yard', count: number | null = null) => ({
    ...{ id, kind, model: `${kind} one`, inside, depot, count },
  });

  it('goes place by place: what stands by itself, then what lies in something', () => {
    const list = pickList([
      used('P-1', 'pin', 'HT-1', 'Yard', 6),
      used('H-2', 'hoist', null),
      used('G-1', 'grid', null),
      used('C-1', 'cart', null, 'Annex'),
    ]);
    expect(list.map(({ depot, inside, items }) => [depot, inside, ...items.map((each) => each.id)])).toEqual([
      ['Annex', null, 'C-1'],
      ['Yard', null, 'G-1', 'H-2'],
      ['Yard', 'HT-1', 'P-1'],
    ]);
  });

  it('is read out by kind and model, batches by their pieces', () => {
    expect(leavesTheHouse([used('P-1', 'pin', null, 'Yard', 6), used('P-2', 'pin', null, 'Yard', 4), used('H-1', 'hoist', null)])).toEqual([
      { kind: 'hoist', model: 'hoist one', pieces: 1 },
      { kind: 'pin', model: 'pin one', pieces: 10 },
    ]);
  });
});
