import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { writeCsv } from '#kernel';

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

  it('comes back as it was, whatever the fields hold', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', ';', '\t', 'ß', '\u{1F69A}'), maxLength: 8 });
    fc.assert(
      fc.property(fc.array(fc.tuple(field, field, field), { minLength: 1, maxLength: 8 }), (rows) => {
        const given = rows.map((row) => ['x', ...row]);
        expect(parse(writeCsv(given), { record_delimiter: '\r\n' })).toEqual(given);
      }),
    );
  });
});
