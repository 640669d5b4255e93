import { disagreements } from '../../apps/cli/bench/visits/dates.js';

describe('months and time zones beside a general-purpose date library', () => {
  it('agree with Luxon on random days, periods, instants and zones', () => {
    expect(disagreements(3000, 7)).toEqual([]);
  });
});
