import fc from 'fast-check';
import { mergeEdit } from './merge-edit.js';

describe('an edit over what others changed meanwhile', () => {
  const was = { maker: 'Heron', massKg: 60, note: 'dry' };

  it('keeps both where they are of different fields', () =>
    expect(mergeEdit(was, { ...was, maker: 'Gull' }, { ...was, massKg: 62 })).toEqual({
      merged: { maker: 'Gull', massKg: 62, note: 'dry' },
    }));

  it('names the field that both changed, with both values', () =>
    expect(mergeEdit(was, { ...was, massKg: 61 }, { ...was, massKg: 62 })).toEqual({
      clashes: [{ field: 'massKg', yours: 61, onFile: 62 }],
    }));

  it('takes for agreed what both changed alike', () =>
    expect(mergeEdit(was, { ...was, massKg: 62 }, { ...was, massKg: 62 })).toEqual({ merged: { ...was, massKg: 62 } }));

  it('lets a field go that one took away, and clashes where the other wrote it', () => {
    const { note: _note, ...without } = was;
    expect(mergeEdit(was, without, { ...was, massKg: 62 })).toEqual({ merged: { maker: 'Heron', massKg: 62 } });
    expect(mergeEdit(was, without, { ...was, note: 'wet' })).toEqual({ clashes: [{ field: 'note', yours: undefined, onFile: 'wet' }] });
  });

  it('never loses a change of either', () => {
    const fields = fc.record({ a: fc.nat(2), b: fc.nat(2), c: fc.nat(2) });
    fc.assert(
      fc.property(fields, fields, fields, (before, wanted, now) => {
        const outcome = mergeEdit(before, wanted, now);
        for (const name of ['a', 'b', 'c'] as const) {
          const told = 'clashes' in outcome && outcome.clashes.some((each) => each.field === name);
          const held = 'merged' in outcome ? outcome.merged[name] : undefined;
          if ('merged' in outcome && wanted[name] !== before[name]) expect(held).toBe(wanted[name]);
          if ('merged' in outcome && now[name] !== before[name]) expect(held).toBe(now[name]);
          expect(told).toBe(wanted[name] !== before[name] && now[name] !== before[name] && wanted[name] !== now[name]);
        }
      }),
    );
  });
});
