import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

const home = join('libs', 'kernel', 'csv.ts');

/** Signs of a second writer: cells joined by a separator and ended as lines, or a library that writes. */
const signs: Readonly<Record<string, RegExp>> = {
  'cells joined and ended as lines': /\.join\((['"`])(,|;|\\t)\1\)[^;\n]{0,40}(\\r)?\\n/,
  'a library that writes': /from '(csv-stringify|csv-stringify\/sync|csv-writer|fast-csv|papaparse|json2csv|xlsx|exceljs)'/,
};

const signsIn = (text: string): string[] => Object.keys(signs).filter((each) => signs[each]?.test(text));

describe('one writer of CSV', () => {
  const sources = ['apps', 'libs', 'migrations'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((each) => /\.(ts|tsx|mjs)$/.test(each) && !each.endsWith('.spec.ts'))
      .map((each) => join(folder, each)),
  );
  const writers = sources.filter((each) => signsIn(readFileSync(each, 'utf8')).length > 0);

  it('stands in the kernel, alone', () => {
    expect(sources.length).toBeGreaterThan(500);
    expect(writers).toEqual([home]);
    expect(signsIn(readFileSync(home, 'utf8'))).toEqual(['cells joined and ended as lines']);
  });

  it.each([
    ["rows.map((row) => row.join(',') + '\\r\\n')", 'cells joined and ended as lines'],
    ['`${cells.join(";")}\\n`', 'cells joined and ended as lines'],
    ["import { stringify } from 'csv-stringify/sync';", 'a library that writes'],
  ])('a second one is seen: %s', (text, sign) => expect(signsIn(text)).toEqual([sign]));

  it('what is sent as text/csv comes from it', () => {
    const sending = sources.filter((each) => /setHeader\('content-type', 'text\/csv/.test(readFileSync(each, 'utf8')));
    expect(sending.length).toBeGreaterThanOrEqual(2);
    expect(sending.filter((each) => !/writeCsv|CsvService/.test(readFileSync(each, 'utf8')))).toEqual([]);
  });
});
