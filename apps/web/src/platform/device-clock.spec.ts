import { clockSentence, houseNow, noteHouseTime } from './device-clock.js';

const day = 86_400_000;
const now = Date.parse('2027-03-03T08:00:00Z');

describe('the clock of a device', () => {
  it('is said to be off by days, hours or minutes, one way or the other; a little is not said', () => {
    expect(clockSentence(2 * day)).toMatch(/2 days ahead of that of the house/);
    expect(clockSentence(-3_600_000)).toMatch(/1 hour behind that of the house/);
    expect(clockSentence(600_000)).toMatch(/10 minutes ahead/);
    expect(clockSentence(0)).toBeNull();
  });

  it('two days off, the day of the house is known by what it answered; an answer without a time changes nothing', () => {
    noteHouseTime('Mon, 01 Mar 2027 08:00:00 GMT', now);
    expect(Math.abs(houseNow().getTime() - (Date.now() - 2 * day))).toBeLessThan(60_000);
    noteHouseTime(null, now);
    noteHouseTime('soon', now);
    expect(Math.abs(houseNow().getTime() - (Date.now() - 2 * day))).toBeLessThan(60_000);
    noteHouseTime('Wed, 03 Mar 2027 07:58:00 GMT', now);
    expect(Math.abs(houseNow().getTime() - Date.now())).toBeLessThan(60_000);
  });
});
