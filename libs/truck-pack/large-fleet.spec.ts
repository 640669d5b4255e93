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
