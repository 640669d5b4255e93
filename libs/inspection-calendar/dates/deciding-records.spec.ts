import { addDays, seededRandom } from '#kernel';
import { withDecidingRecords } from './deciding-records.js';
import { findDueDate, findLastRecordOn, lastDayOfDeclaration } from './due-date.js';
import type { CaseExamination, ExaminedItem } from './examinations-case.js';

describe('the records that can still set a date', () => {
  const random = seededRandom(5);
  const upTo = (most: number): number => Math.floor(random() * most);
  const day = (): string => addDays('2026-01-01', upTo(400));
  const examination = (): CaseExamination => ({
    ...{ on: day(), outcome: random() < 0.8 ? 'pass' : 'fail' },
    ...(random() < 0.5 ? {} : { satisfies: [['P6M'], ['P1Y'], ['P6M', 'P1Y'], []][upTo(4)]! }),
    ...(random() < 0.2 ? { defectBy: '2027-03-01' } : {}),
    ...(random() < 0.2 ? { answers: [day()] } : {}),
    ...(random() < 0.3 ? { check: 'electrical' } : {}),
  });
  const items = Array.from({ length: 400 }, (_, number): ExaminedItem => {
    const examinations = Array.from({ length: upTo(9) }, examination);
    const events = Array.from({ length: upTo(3) }, () => ({
      on: random() < 0.3 ? (examinations[0]?.on ?? day()) : day(),
      what: 'dropped',
    }));
    return {
      id: `I${number}`,
      intervals: ['P6M', 'P1Y', 'electrical P1Y'].slice(upTo(2), 2 + upTo(2)),
      examinations,
      events,
      declaredOn: random() < 0.3 ? day() : undefined,
    };
  });

  it('give the dates that all records give', () => {
    for (const item of items) {
      const kept = withDecidingRecords(item);
      for (const from of ['2026-08-01', '2027-02-26', '2028-01-01']) {
        expect(findDueDate(kept, from)).toEqual(findDueDate(item, from));
        expect(lastDayOfDeclaration(kept, from)).toBe(lastDayOfDeclaration(item, from));
      }
      expect(findLastRecordOn(kept)).toBe(findLastRecordOn(item));
    }
  });

  it('leave out what is older', () => {
    const count = (of: readonly ExaminedItem[]) => of.reduce((sum, each) => sum + each.examinations.length + each.events.length, 0);
    expect(count(items.map(withDecidingRecords))).toBeLessThan(count(items) * 0.8);
  });
});
