import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { unguardCell, writeCsv } from '#kernel';
import { formulasIn, payloads } from './csv-injection.js';

/** RFC 4180; the other side is csv-parse, a general-purpose reader. */
describe('CSV by RFC 4180', () => {
  it('ends records with CRLF, quotes what needs it, doubles quotes', () => {
    expect(writeCsv([['a"b,c\nd', 'plain']])).toBe('"a""b,c\nd",plain\r\n');
  });

  it.each([
    ['a comma', 'a,b', '"a,b"'],
    ['a quote', 'say "go"', '"say ""go"""'],
    ['CRLF', 'a\r\nb', '"a\r\nb"'],
    ['blanks, which are part of a field', ' a ', '" a "'],
    ['nothing', '', ''],
  ])('writes %s', (_what, field, written) => expect(writeCsv([[field, 'x']])).toBe(`${written},x\r\n`));

  /** As read by a general-purpose reader, before anything is taken off. */
  const readBy = (written: string): string => (parse(written, { record_delimiter: '\r\n' }) as [[string]])[0][0];

  it.each(payloads)('a published payload is text, whoever reads it, and comes back: $text ($source)', ({ text }) => {
    // Written as it is, or between quotes that are not doubled, it is one to somebody; the first of the second list does nothing by itself.
    if (!text.startsWith('DDE')) expect([...formulasIn(`x,${text},3\r\n`), ...formulasIn(`x,"${text}",3\r\n`)]).not.toEqual([]);
    for (const row of [
      [text, 'x', 'y'],
      ['x', text, 'y'],
      ['x', 'y', text],
    ]) {
      const written = writeCsv([['name', 'note', 'mass'], row]);
      expect(formulasIn(written)).toEqual([]);
      const read: string[][] = parse(written, { record_delimiter: '\r\n' });
      // The list of OWASP as it stands.
      for (const cell of read.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/);
      expect(read[1]?.map(unguardCell)).toEqual(row);
    }
  });

  it.each([-3, '-3', '-0.5', '+2', '1e-3', '-1.5e+6', 0, '62'])('a number stays a number: %j', (value) =>
    expect(readBy(writeCsv([[value, 'x']]))).toBe(String(value)),
  );

  it('whatever is typed is no formula in any reader, and comes back as it was', () => {
    const text = fc.string({
      unit: fc.constantFrom('=', '+', '-', '@', "'", '"', ';', ' ', '\t', '\r', '\n', '1', 'e', '.', 'a'),
      maxLength: 8,
    });
    const check = (given: string) => {
      const written = writeCsv([['x', given, 'y']]);
      const read: string[][] = parse(written, { record_delimiter: '\r\n' });
      expect(unguardCell(read[0]?.[1] ?? '')).toBe(given);
      expect(formulasIn(written)).toEqual([]);
    };
    fc.assert(fc.property(text, check), { numRuns: 2000 });
  });

  it('comes back as it was, whatever the fields hold', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', ';', '\t', 'ß', '\u{1F69A}'), maxLength: 8 });
    fc.assert(
      fc.property(fc.array(fc.tuple(field, field, field), { minLength: 1, maxLength: 8 }), (rows) => {
        const given = rows.map((row) => ['x', ...row]);
        const read: string[][] = parse(writeCsv(given), { record_delimiter: '\r\n' });
        expect(read.map((row) => row.map(unguardCell))).toEqual(given);
      }),
    );
  });
});
