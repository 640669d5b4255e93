import { identified } from './report-sheet.js';

describe('how a report identifies a thing', () => {
  it.each([
    ['', 'SL-1, Round sling 1 m'],
    ['SL-1', 'SL-1, Round sling 1 m'],
    ['SL-1, Round sling 1 m', 'SL-1, Round sling 1 m'],
    ['SL-10', 'SL-10 SL-1, Round sling 1 m'],
    ['blue, maker’s number 77', 'blue, maker’s number 77 SL-1, Round sling 1 m'],
  ])('%s', (said, printed) => {
    expect(identified(said, { id: 'SL-1', model: 'Round sling 1 m' })).toBe(printed);
  });
});
