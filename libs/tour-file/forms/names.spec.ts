import { readInput } from '#kernel';
import { item, readItemsCsv } from '#tour-file';

const box = { id: 'P-1', kind: 'box', model: 'Plover', depot: 'Ferry Lane' };
const unseen = [
  ['zero width space', '\u200b', 'U+200B'],
  ['right-to-left override', '\u202e', 'U+202E'],
  ['soft hyphen', '\u00ad', 'U+00AD'],
  ['next line (C1)', '\u0085', 'U+0085'],
  ['line separator', '\u2028', 'U+2028'],
  ['paragraph separator', '\u2029', 'U+2029'],
  ['private use', '\ue000', 'U+E000'],
  ['half a pair', '\ud800', 'U+D800'],
  ['Hangul filler', '\u3164', 'U+3164'],
] as const;

describe('names and serials', () => {
  it.each(unseen)('hold no %s, wherever they come from', (_what, sign, code) => {
    const text = `P${sign}-1`;
    const wanted = `a text without characters that nobody sees (${code}, character 2)`;
    for (const field of ['id', 'model', 'depot', 'owner', 'assetId'])
      expect(readInput(item, { ...box, [field]: text })).toMatchObject({
        ok: false,
        error: [{ field, wanted: expect.stringContaining(wanted) }],
      });
    const { faults } = readItemsCsv('box', [
      ['serial', 'model', 'depot'],
      [text, 'Plover', 'Ferry Lane'],
    ]);
    expect(faults).toEqual([expect.objectContaining({ row: 2, column: 'serial', wanted: expect.stringContaining(wanted) })]);
  });

  it('are the same with blanks at their ends as without, in a tour file and in a CSV', () => {
    const read = readInput(item, { ...box, id: ' P-1\u00a0', owner: '\tFerry Works ' });
    expect(read).toMatchObject({ ok: true, value: { id: 'P-1', owner: 'Ferry Works' } });
    const { items } = readItemsCsv('box', [
      ['serial', 'model', 'depot', 'owner'],
      [' P-1\u00a0', 'Plover', 'Ferry Lane', '\tFerry Works '],
    ]);
    expect(items).toMatchObject([{ id: 'P-1', owner: 'Ferry Works' }]);
    expect(readInput(item, { ...box, id: ' ' })).toMatchObject({ ok: false, error: [{ field: 'id' }] });
  });
});
