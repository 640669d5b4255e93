import { writeCsv } from '#kernel';
import { type ListedItem, decideListed } from '#records';
import { type ListedRow, examinationCells, examinationColumns, examinationExamples, readExaminationsCsv } from '#tour-file';
import { parse } from 'csv-parse/sync';
import { examination } from '../tour-file/shapes/index.js';
import { wholeValue } from '../../tests/support/whole-value.js';

const headings = examinationColumns.map((each) => each.heading);
const file = (cells: readonly (readonly string[])[]): string[][] => parse(writeCsv([headings, ...cells]), {});
const row = (serial: string, more: object = {}, at = 2, pieces?: number): ListedRow => ({
  ...{ row: at, serial, ...(pieces === undefined ? {} : { pieces }) },
  examination: examination.parse({ on: '2027-02-01', outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-1', ...more }),
});
const item = (more: Partial<ListedItem> = {}): ListedItem => ({
  ...{ kind: 'hoist', state: 'in service', count: null, intervals: ['P12M'], records: [], waiting: [], incidents: [], reportFiles: [] },
  ...more,
});
const by = { latestDay: '2027-02-26', rules: [], wanted: (field: string) => `${field} wanted`, isOfficer: false };
const decide = (one: ListedRow, on: ListedItem | undefined, isOfficer = false, rows: readonly ListedRow[] = [one]) => {
  const said = decideListed(rows, { ...by, isOfficer })(one, on);
  return said.is === 'faulty' ? said.faults.map(({ row: at, column, value, wanted }) => `${at} ${column}: ${value}: ${wanted}`) : said.is;
};

describe('a row of an examiner’s list', () => {
  it.each(Array.from({ length: 12 }, (_, turn) => turn))('loses nothing of an examination with every field but its file (%i)', (turn) => {
    const { reportFile: _file, ...whole } = wholeValue(examination, turn) as Record<string, unknown>;
    const days = {
      on: '2026-03-04',
      nextLatestOn: '2026-03-04',
      defectBy: '2026-03-04',
      satisfies: ['P6M', 'P1Y'],
      answers: ['2026-03-01'],
    };
    const defects = [
      { part: 'hook; latch', what: 'bent | by \\ 3 mm', dangerousBy: '2026-03-04', repair: '=1+1', remediedOn: '2026-03-05' },
      { part: 'chain', what: 'worn', dangerousBy: '2026-03-09' },
    ];
    const particulars = {
      ...(whole['particulars'] as object),
      defects,
      previousOn: turn % 2 ? 'none' : '2026-01-01',
      reportOn: '2026-03-05',
    };
    const data = examination.parse({ ...whole, ...days, particulars });
    expect(Object.keys(data).sort()).toEqual(
      Object.keys(examination.shape)
        .filter((key) => key !== 'reportFile')
        .sort(),
    );
    const { rows, faults } = readExaminationsCsv(file([examinationCells({ serial: 'H 1', pieces: 3, examination: data })]));
    expect(faults).toEqual([]);
    expect(rows).toEqual([{ row: 2, serial: 'H 1', pieces: 3, examination: data }]);
  });

  it('of the example file is read as it was written', () => {
    const { rows, faults } = readExaminationsCsv(file(examinationExamples.map(examinationCells)));
    expect(faults).toEqual([]);
    expect(rows.map(({ row: _row, ...listed }) => listed)).toEqual(examinationExamples);
  });

  it.each([
    ['an unknown outcome', { outcome: 'maybe' }, 'outcome', 'maybe'],
    ['no outcome', { outcome: '' }, 'outcome', ''],
    ['a day that does not exist', { 'examined on': '2027-02-30' }, 'examined on', '2027-02-30'],
    ['a next day before it', { 'next no later than': '2027-01-31' }, 'next no later than', '2027-01-31'],
    ['half a piece', { pieces: '0.5' }, 'pieces', '0.5'],
    ['an interval that is none', { 'kind of examination': 'yearly' }, 'kind of examination', 'yearly'],
    ['a defect in one word', { defects: 'worn' }, 'defects', 'worn'],
    ['no serial', { serial: '' }, 'serial', ''],
    ['a pass with a danger now', { defects: 'chain | worn' }, 'defects', ''],
  ])('with %s is a fault by row and column', (_what, change, column, value) => {
    const cells: Record<string, string> = { serial: 'H-1', 'examined on': '2027-02-01', outcome: 'pass', ...change };
    const { rows, faults } = readExaminationsCsv(file([headings.map((each) => cells[each] ?? '')]));
    expect(rows).toEqual([]);
    expect(faults).toMatchObject([{ row: 2, column, value }]);
    expect(faults[0]?.wanted).not.toBe('');
  });
});

describe('an examiner’s list against the register', () => {
  it('what passed waits unless the safety officer brings it, what failed counts at once', () => {
    expect(decide(row('H-1'), item())).toBe('waits');
    expect(decide(row('H-1'), item(), true)).toBe('counts');
    expect(decide(row('H-1', { outcome: 'fail' }), item())).toBe('counts');
  });

  it('what is on file or waits with the same contents is there already, with others it is a fault', () => {
    const said = row('H-1', { particulars: { remarks: 'oiled' } });
    const kept = { ...said.examination, reportFile: '7b4c1d5e-2f6a-4b8c-9d0e-1f2a3b4c5d6e' };
    for (const one of [item({ records: [kept] }), item({ waiting: [said.examination] })]) {
      expect(decide(said, one)).toBe('already');
      expect(decide(row('H-1', { outcome: 'fail' }), one)).toEqual([
        expect.stringMatching(/^2 report: R-1: the contents that (are on file|wait)/),
      ]);
    }
    expect(decide(said, item({ records: [{ ...kept, report: 'R-2' }] }))).toBe('waits');
    expect(decide(said, item({ records: [kept], state: 'retired' }))).toBe('already');
  });

  it.each([
    ['an unknown serial', row('H-9'), undefined, '2 serial: H-9: the serial of an item on file'],
    ['a retired item', row('H-1'), item({ state: 'retired' }), '2 serial: H-1: an item that is not retired'],
    ['a day ahead', row('H-1', { on: '2027-02-27' }), item(), '2 examined on: 2027-02-27: no later than today, 2027-02-26'],
    ['nobody', row('H-1', { examiner: undefined }), item(), '2 examiner: : the name of who examined it'],
    ['no report', row('H-1', { report: undefined }), item(), '2 report: : the number of the report, or the report itself'],
    ['17 of 16', row('S-1', {}, 2, 17), item({ kind: 'shackle', count: 16 }), '2 pieces: 17: at most 16: S-1 holds 16'],
    ['5 of 16', row('S-1', {}, 2, 5), item({ kind: 'shackle', count: 16 }), /^2 pieces: 5: 16, the whole batch/],
    ['pieces of one thing', row('H-1', {}, 2, 2), item(), '2 pieces: 2: empty: H-1 is one thing, no batch'],
    ['an interval of no rule', row('H-1', { satisfies: ['P4Y'] }), item(), /^2 kind of examination: P4Y: of the intervals of H-1: P12M/],
    [
      'an incident that was none',
      row('H-1', { answers: ['2027-01-01'] }),
      item(),
      /^2 answers incidents of: 2027-01-01: the day of an incident/,
    ],
    [
      'a pass after a fail that day',
      row('H-1'),
      item({ records: [row('H-1', { outcome: 'fail', report: 'R-0' }).examination] }),
      /^2 outcome: pass/,
    ],
  ] as const)('%s is a fault that says what would be right', (_what, one, on, wanted) => {
    const said = decide(one, on, true);
    expect(said).toEqual([typeof wanted === 'string' ? wanted : expect.stringMatching(wanted)]);
  });

  it('says which row an examination stands in already, and finds a pass and a fail of one day in one file', () => {
    const rows = [row('H-1'), row('H-1', {}, 3), row('H-1', { outcome: 'fail', report: 'R-2' }, 4)];
    expect(decide(row('H-1', {}, 3), item(), false, rows)).toEqual(['3 report: R-1, as in row 2: each examination of an item once']);
    expect(decide(row('H-1'), item(), false, rows)).toEqual([expect.stringMatching(/^2 outcome: pass: no pass on the day/)]);
  });
});
