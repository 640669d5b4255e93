import { type Also, judgeHang, judgeSharedPoint, newTally } from '../../apps/cli/bench/limits/judged-limits.js';
import { groupDigits } from '#kernel';
import { demoTour } from '../support/demo-tour.js';

/** `npm run bench -- hang-limits` does the same with hundreds. */
/** The sentence of a stop says when and how much. */
const unsaid: Also = ({ sentence }, moment, figure) => [moment ?? '', groupDigits(figure)].filter((each) => !sentence.includes(each));

describe('limits by algebra that knows nothing of the product (balance of forces, no published source)', () => {
  const written = demoTour();

  it('stop every hang where they stand between rest and worst, at the pick, moment and figure, and none above', () => {
    const tally = newTally();
    // Each of the four ways in which joints close, twice.
    for (let seed = 1; seed <= 8; seed++) judgeHang(written, seed, tally, unsaid);
    expect(tally.wrong).toEqual([]);
    expect(tally.above).toBe(8 * 7);
    expect(tally.between).toBeGreaterThan(30);
  });

  it('stop a point that hangs share at the sum of their worst, and refuse one name at two places', () => {
    const tally = newTally();
    for (let seed = 1; seed <= 8; seed++) judgeSharedPoint(written, seed, tally);
    expect(tally.wrong).toEqual([]);
    expect(tally.above).toBe(8);
    expect(tally.between).toBeGreaterThan(4);
  });
});
