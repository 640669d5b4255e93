import { findDueDate } from '../dates/index.js';
import { ofCheck } from './of-check.js';

const item = {
  id: 'H-01',
  intervals: ['P1Y', 'electrical P6M', 'pre-use P7D'],
  examinations: [
    { on: '2027-01-10', outcome: 'pass' as const },
    { on: '2027-02-01', outcome: 'pass' as const, check: 'electrical' as const },
    { on: '2027-02-20', outcome: 'fail' as const, check: 'pre-use' as const },
  ],
  events: [{ on: '2027-02-25', what: 'shock load' }],
  declaredOn: '2026-12-01',
};
const due = (check: Parameters<typeof ofCheck>[1]) => findDueDate(ofCheck(item, check), '2027-03-01');

describe('one check of an item', () => {
  it('is dated by its own records and intervals alone', () => {
    expect(due('electrical')).toMatchObject({ dueOn: '2027-08-01' });
    expect(due('pre-use')).toMatchObject({ state: 'failed' });
    // The event is of the examination.
    expect(due('examination')).toMatchObject({ state: 'blocked' });
  });

  it('has no date where no rule asks for it, and no declaration stands in for it', () => {
    const plain = { ...item, intervals: ['P1Y'], examinations: [], events: [] };
    expect(findDueDate(ofCheck(plain, 'electrical'), '2027-03-01')).toMatchObject({ state: 'no interval' });
    expect(findDueDate(ofCheck(plain, 'examination'), '2027-03-01')).toMatchObject({ dueOn: '2027-12-01', because: { code: 'declared' } });
    const asked = { ...plain, intervals: ['electrical P6M'] };
    expect(findDueDate(ofCheck(asked, 'electrical'), '2027-03-01')).toMatchObject({ state: 'no record' });
  });
});
