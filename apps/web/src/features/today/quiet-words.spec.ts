import { quietWords } from './quiet-words.js';

const roles = ['warehouse', 'system', 'safety'];
const all = { hasTours: true, hasItems: true, shows: 3, planned: 3 };

describe('an empty list of the day', () => {
  it.each(roles)('says to the %s that nothing was judged, wherever nothing was', (role) => {
    for (const nothing of [
      { hasTours: false, shows: 0, planned: 0 },
      { shows: 0, planned: 0 },
      { planned: 0 },
      { hasItems: false, hasTours: false, shows: 0, planned: 0 },
    ]) {
      const said = quietWords(role, { ...all, ...nothing });
      expect(said).toMatch(/^Nothing (was judged|is on file)/);
      expect(said).not.toMatch(/in date\./);
    }
  });

  it('says how many were judged, and how many were not', () => {
    expect(quietWords('safety', all)).toBe('In the plans of 3 shows, everything that lifts is in date.');
    expect(quietWords('safety', { ...all, planned: 1 })).toBe(
      'In the plans of 1 show, everything that lifts is in date. 2 shows ahead without a plan: nothing was judged there.',
    );
  });
});
