import { seededRandom } from '#kernel';
import { readTruckCase, solveTruckPack, verifyTruckPack } from './index.js';

const truck = { innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2700, payloadKg: 24_000, maxSideOffsetMm: 120 };
const semiTrailer = { kingpinXMm: 1200, axleGroupXMm: 8900, tareKingpinKg: 1900, tareAxleGroupKg: 5200, maxAxleGroupKg: 24_000 };

/** More freight than eight trucks hold: what fits rides, and the rest is named. */
describe('eight trucks and 500 pieces', () => {
  it('ride as full as their floors allow', () => {
    const read = readTruckCase({
      trucks: Array.from({ length: 8 }, (_, index) => ({ id: `T${index}`, ...truck, semiTrailer })),
      pieces: Array.from({ length: 500 }, (_, index) => ({
        id: `P${index}`,
        lengthMm: 1150 + 10 * (index % 6),
        widthMm: 720,
        heightMm: 1540,
        massKg: 250 + (index % 5),
        mayTurn: true,
        floorOnly: true,
        maxOnTopKg: 0,
        firstOff: index % 4,
      })),
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const answer = solveTruckPack(read.value, { seed: 1, work: 20_000 });
    const rode = answer.trucks.reduce((sum, each) => sum + each.placements.length, 0);
    expect(rode + answer.leftOver.length).toBe(500);
    // Three abreast of 720 mm, eleven deep of at most 1,200 mm: 33 a truck, 264 in all; nine in ten of those at least.
    expect(rode).toBeGreaterThan(237);
    expect(answer.trucks).toHaveLength(8);
    expect(verifyTruckPack(read.value, answer)).toEqual([]);
  });
});

/** Carts, which stand on the floor, and cases, which all could ride on others. */
function mixedFreight(pieces: number, trucks: number, seed: number) {
  const random = seededRandom(seed);
  const read = readTruckCase({
    trucks: Array.from({ length: trucks }, (_, index) => ({ id: `T${index}`, ...truck, semiTrailer })),
    pieces: Array.from({ length: pieces }, (_, index) => {
      const isCart = random() < 1 / 3;
      return {
        id: `P${index}`,
        lengthMm: 1150 + 10 * Math.floor(6 * random()),
        widthMm: 720,
        heightMm: isCart ? 1540 : 900,
        massKg: 150 + Math.floor(5 * random()),
        mayTurn: true,
        floorOnly: isCart,
        maxOnTopKg: isCart ? 0 : 400,
        firstOff: Math.floor(4 * random()),
      };
    }),
    minSupport: 0.8,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe('carts and cases for many trucks', () => {
  // By hand: towers of 2,700 / 900 = 3 cases; 36 towers a truck (two abreast when turned, 13,600 / 720 = 18 rows). 500 pieces are about 167 carts and 111
  // towers of cases: 278 of 288 places, some lost where stops end; 1,500 are about 834 of 900.
  it.each([
    [500, 8, 1],
    [500, 8, 2],
    [1500, 25, 3],
    [1500, 25, 4],
  ])('%i pieces on %i trucks: nine in ten ride and the checker agrees', (pieces, trucks, seed) => {
    const problem = mixedFreight(pieces, trucks, seed);
    const answer = solveTruckPack(problem, { seed: 1, work: 20_000 });
    const rode = answer.trucks.reduce((sum, each) => sum + each.placements.length, 0);
    expect(rode + answer.leftOver.length).toBe(pieces);
    expect(rode).toBeGreaterThan(0.9 * pieces);
    expect(verifyTruckPack(problem, answer)).toEqual([]);
  });
});

describe('a whole fleet in little time', () => {
  it('rides though there is work for nothing but the quick load', () => {
    const problem = mixedFreight(5000, 100, 5);
    const answer = solveTruckPack(problem, { seed: 1, work: 1 });
    expect(answer.leftOver).toEqual([]);
    expect(verifyTruckPack(problem, answer)).toEqual([]);
  });

  it('repeats the load of its first truck in those alike however late it is, and says that the clock cut it short', () => {
    const read = readTruckCase({
      trucks: Array.from({ length: 40 }, (_, index) => ({ id: `T${index}`, ...truck, semiTrailer })),
      pieces: Array.from({ length: 1200 }, (_, index) => ({
        id: `P${index}`,
        lengthMm: 1150,
        widthMm: 720,
        heightMm: 1540,
        massKg: 150 + (index % 7),
        mayTurn: true,
        floorOnly: true,
        maxOnTopKg: 0,
        firstOff: 1,
      })),
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    let hours = 0;
    const answer = solveTruckPack(read.value, { seed: 1, timeLimitSeconds: 1, now: () => 3_600_000 * hours++ });
    // By hand: two abreast when turned, 18 rows, so 36 a truck; what does not fill a truck would have to be packed anew.
    expect(answer.leftOver).toHaveLength(1200 % 36);
    expect(answer.trucks).toHaveLength(33);
    expect(answer.stoppedBy).toBe('clock');
    expect(verifyTruckPack(read.value, answer)).toEqual([]);
  });

  it('counts the time from when it began to be given', () => {
    const problem = mixedFreight(40, 2, 6);
    const answer = solveTruckPack(problem, { seed: 1, timeLimitSeconds: 1, now: () => 5000, startedAt: 3000 });
    expect(answer.stoppedBy).toBe('clock');
    expect(verifyTruckPack(problem, answer)).toEqual([]);
  });
});
