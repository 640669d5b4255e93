import { readInput } from '#kernel';
import {
  type InspectedItem,
  askedFields,
  extractRows,
  followDefects,
  itemLife,
  keepUntil,
  lolerSchedule1,
  mayExamine,
  missingFields,
  reportLines,
  rulesOfRecord,
} from '#records';
import { type Examination, type ExaminationRule, examination, examinationRule } from '#tour-file';
import { type RecordField, recordFields } from '#trade';
import { english } from '#words';

const rule = (more: Partial<ExaminationRule> = {}): ExaminationRule => ({
  ...{ jurisdiction: 'UK', kinds: ['hoist'], intervals: ['P12M'], source: 'LOLER 1998 reg. 9(3)(a)(ii)', status: 'found' },
  ...more,
});
const source = 'LOLER 1998 reg. 11';
const listed = rule({ record: { list: 'LOLER 1998 Schedule 1', source: 'LOLER 1998 reg. 10 and Schedule 1', status: 'found' } });

/** Every field of the list, invented. */
const whole: Examination = {
  ...{ on: '2027-02-01', outcome: 'pass', nextLatestOn: '2028-02-01', examiner: 'B. Ropemaker', report: 'R-77' },
  particulars: {
    ...{ employer: 'Ferry Lane Hire, 1 Ferry Lane', premises: 'the depot', manufactured: '2021', previousOn: '2026-02-01' },
    ...{ workingLoadLimit: '2,500 kg', firstAfterInstallation: false, basis: 'within 12 months', statement: 'fit for use as marked' },
    ...{ defects: [], tests: 'none', examinerAddress: '2 Ferry Lane', qualifications: 'engineer surveyor' },
    ...{ employedBy: 'self-employed', authenticatedBy: 'B. Ropemaker, 2 Ferry Lane', reportOn: '2027-02-02' },
  },
};
const without = (field: RecordField): Examination => {
  const { [field as 'examiner']: _top, particulars, ...rest } = whole;
  const { [field as 'tests']: _inner, ...inner } = particulars ?? {};
  return { ...rest, particulars: inner };
};
const missing = (record: Examination, rules: readonly ExaminationRule[] = [listed]) =>
  missingFields(record, askedFields(rulesOfRecord(rules, 'hoist', record))).map((each) => each.field);

describe('what a record must hold', () => {
  // LOLER 1998 Schedule 1: eleven paragraphs; 1 to 8(c)(ii) read in the text, the rest from memory.
  it('the list of LOLER has its eleven paragraphs, and says which of them were read', () => {
    const paragraphs = new Set(lolerSchedule1.map((each) => Number.parseInt(each.paragraph, 10)));
    expect([...paragraphs]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(lolerSchedule1.filter((each) => !each.wasRead).map((each) => each.paragraph)).toEqual([
      ...['8(d)', '8(e)', '9', '9', '9', '9', '10', '11'],
    ]);
  });

  it('a whole record leaves nothing open', () => {
    expect(readInput(examination, whole).ok).toBe(true);
    expect(missing(whole)).toEqual([]);
  });

  it.each(lolerSchedule1.map((each) => each.field).filter((field) => !['installedStatement', 'identity'].includes(field)))(
    'without %s that field alone is missing',
    (field) => {
      expect(missing(without(field))).toEqual([field]);
    },
  );

  it('the first after installation is asked for the statement on the installation, and not for the basis', () => {
    const first = { ...without('basis'), particulars: { ...without('basis').particulars, firstAfterInstallation: true } };
    expect(missing(first)).toEqual(['installedStatement']);
  });

  it('a failed one needs no statement and no next day', () => {
    expect(missing({ ...without('statement'), outcome: 'fail', nextLatestOn: undefined })).toEqual([]);
  });

  it('a rule without a list asks for its own fields, and one of another interval for nothing', () => {
    const own = rule({ record: { fields: ['tests', 'capacity'], source: 'company rule 7', status: 'house rule' } });
    const bare: Examination = { on: '2027-02-01', outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-1' };
    expect(missing(bare, [own])).toEqual(['tests', 'capacity']);
    expect(missing({ ...bare, satisfies: ['P4Y'] }, [own])).toEqual([]);
    expect(missing(bare, [rule()])).toEqual([]);
  });

  it('who may examine is what any rule of the record says', () => {
    expect(mayExamine([rule({ mayExamine: ['Sachkundiger'] }), rule({ mayExamine: ['Sachkundiger', 'Sachverständiger'] })])).toEqual([
      ...['Sachkundiger', 'Sachverständiger'],
    ]);
  });

  it('a report is read line by line, every field once', () => {
    const lines = reportLines(without('tests'), askedFields([listed]));
    expect(lines.map((each) => each.field)).toEqual([...recordFields]);
    expect(lines.filter((each) => !each.wasRead).map((each) => each.paragraph)).toEqual(
      expect.arrayContaining(['8(d)', '8(e)', '9', '10', '11']),
    );
    expect(lines.filter((each) => each.isMissing).map((each) => each.field)).toEqual(['tests']);
    expect(lines.find((each) => each.field === 'employer')).toEqual({
      ...{ field: 'employer', paragraph: '1', wasRead: true, value: 'Ferry Lane Hire, 1 Ferry Lane', isMissing: false },
    });
  });

  it('what is asked for from memory says so', () => {
    const [next] = missingFields(without('nextLatestOn'), askedFields([listed]));
    expect(english.recordWanted(next!.field, next!)).toMatch(/paragraph 8\(d\) asks for it \(from memory: compare it with the text\)$/);
  });
});

describe('defects of a report', () => {
  const defect = { part: 'load chain', what: 'worn to 4 % of the link' };
  const faults = (record: object) => {
    const read = readInput(examination, { ...whole, ...record });
    return read.ok ? [] : read.error.map((each) => each.field);
  };
  const found = (defects: object[], more: object = {}) => faults({ ...more, particulars: { ...whole.particulars, defects } });

  it('that are a danger now do not pass, unless they were put right', () => {
    expect(found([defect])).toEqual(['particulars.defects[0].dangerousBy']);
    expect(found([defect], { outcome: 'fail' })).toEqual([]);
    expect(found([{ ...defect, remediedOn: '2027-02-01' }])).toEqual([]);
  });

  it('that could become one end the use no later than that day', () => {
    const soon = { ...defect, dangerousBy: '2027-05-01' };
    expect(found([soon])).toEqual(['defectBy']);
    expect(found([soon], { defectBy: '2027-05-02' })).toEqual(['defectBy']);
    expect(found([soon, { ...defect, dangerousBy: '2027-06-01' }], { defectBy: '2027-05-01' })).toEqual([]);
  });

  it.each([
    ['a day of danger before the examination', { defects: [{ ...defect, dangerousBy: '2027-01-01' }] }],
    ['a report before its examination', { reportOn: '2027-01-31' }],
    ['a last examination that is not before this one', { previousOn: '2027-02-01' }],
    ['a last examination that is no day', { previousOn: 'last year' }],
  ])('%s is a fault', (_what, change) => {
    expect(faults({ defectBy: '2027-02-01', particulars: { ...whole.particulars, ...change } })).not.toEqual([]);
  });

  it('are closed in their report or by the next passed examination, or are open', () => {
    const first: Examination = {
      ...whole,
      on: '2026-02-01',
      report: 'R-60',
      particulars: { defects: [{ ...defect, dangerousBy: '2026-08-01' }] },
    };
    expect(followDefects([first])).toMatchObject([{ reportedOn: '2026-02-01', closedOn: null, closedBy: null }]);
    expect(followDefects([whole, first])).toMatchObject([{ closedOn: '2027-02-01', closedBy: 'R-77' }]);
    expect(followDefects([{ ...whole, outcome: 'fail' }, first])).toMatchObject([{ closedOn: null }]);
    const own = { ...first, particulars: { defects: [{ ...defect, remediedOn: '2026-02-02' }] } };
    expect(followDefects([own, whole])).toMatchObject([{ closedOn: '2026-02-02', closedBy: 'R-60' }]);
  });
});

describe('how long a record is kept', () => {
  const kept = (retention: Partial<NonNullable<ExaminationRule['retention']>>) =>
    rule({ retention: { source, status: 'found', ...retention } });

  // LOLER 1998 reg. 11: a periodic report until the next report or two years from its own day, whichever is later.
  it('a periodic report: until the next report, and at least two years from the day of the report', () => {
    const periodic = [kept({ atLeast: 'P2Y', untilNextReport: true })];
    expect(keepUntil(whole, periodic, null)).toEqual({ until: { code: 'next-report', atLeast: '2029-02-02' }, sources: [source] });
    expect(keepUntil(whole, periodic, '2028-01-20').until).toEqual({ code: 'day', on: '2029-02-02' });
    expect(keepUntil(whole, periodic, '2029-08-01').until).toEqual({ code: 'day', on: '2029-08-01' });
  });

  it('a record kept while it is used, an accessory two years, no rule nothing', () => {
    expect(keepUntil(whole, [kept({ whileInUse: true })], '2028-01-01').until).toEqual({ code: 'in-use', atLeast: null });
    expect(keepUntil(whole, [kept({ atLeast: 'P2Y' })], null).until).toEqual({ code: 'day', on: '2029-02-02' });
    expect(keepUntil(whole, [rule()], null)).toEqual({ until: { code: 'not-said' }, sources: [] });
  });
});

describe('the life of an item', () => {
  const item: InspectedItem = {
    ...{ id: 'H-01', kind: 'hoist', model: 'Hoist', state: 'in service', count: null, depot: 'Ferry Lane', owner: null },
    ...{
      declaredOn: '2024-01-10',
      boughtOn: '2024-01-05',
      firstUsedOn: '2024-02-01',
      dueOn: null,
      dueState: null,
      rated: null,
      ratedJoint: null,
    },
    records: [{ id: '1', examination: whole, recordedBy: 'A', recordedAt: '2027-02-03T00:00:00Z', reason: null, file: null }],
    incidents: [{ on: '2026-07-01', what: 'dropped' }],
    flown: [{ tour: 'Harbour Lights', from: '2026-06-01', to: '2026-06-20' }],
    outs: [{ on: '2026-07-02', what: 'quarantined', sentence: 'Quarantined: dropped.' }],
  };

  it('stands in the order of its days, everything that has one', () => {
    expect(itemLife(item).map((each) => [each.on, each.code])).toEqual([
      ['2024-01-05', 'bought'],
      ['2024-01-10', 'declared'],
      ['2024-02-01', 'first-used'],
      ['2026-06-01', 'flown'],
      ['2026-07-01', 'happened'],
      ['2026-07-02', 'out'],
      ['2027-02-01', 'examined'],
    ]);
  });

  it('is a row of an extract with as many cells as the heading', () => {
    const [heading, row] = extractRows([item]);
    expect(row).toHaveLength(heading?.length ?? 0);
    expect(row?.[heading?.indexOf('report') ?? -1]).toBe('R-77');
    expect(row?.[heading?.indexOf('examinations on file') ?? -1]).toBe('1');
  });
});

describe('an examination rule', () => {
  const faults = (more: object) => {
    const read = readInput(examinationRule, rule(more as Partial<ExaminationRule>));
    return read.ok ? [] : read.error.map((each) => each.field);
  };

  it.each([
    ['an interval of nothing', { intervals: ['P0D'] }, 'intervals[0]'],
    ['an interval of 99 years', { intervals: ['P99Y'] }, 'intervals[0]'],
    ['an interval of 11 years in days', { intervals: ['P4015D'] }, 'intervals[0]'],
    ['no interval where it counts time', { intervals: [] }, 'intervals'],
    ['an interval where it counts uses', { basis: 'before use' }, 'intervals'],
    ['lifts without their number', { basis: 'lifts', intervals: [] }, 'every'],
    ['a number where it counts time', { every: 5 }, 'every'],
    ['a retention that says nothing', { retention: { source, status: 'found' } }, 'retention'],
  ])('with %s is refused', (_what, change, field) => {
    expect(faults(change)).toEqual([field]);
  });

  it.each([
    ['before use', { basis: 'before use', intervals: [] }],
    ['by lifts', { basis: 'lifts', every: 200, intervals: [] }],
    ['ten years', { intervals: ['P10Y'] }],
  ])('%s is read', (_what, change) => {
    expect(faults(change)).toEqual([]);
  });
});
