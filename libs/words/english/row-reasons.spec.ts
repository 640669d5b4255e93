import { english, tell } from '#words';

const figures = { stops: [{ firstOff: 3, pieces: 4 }], lostMm: 12, freeAheadMm: 0, movedRows: 0, isLevelled: false };

describe('why a row of a truck stands where it does', () => {
  it('tells what it loses beside the next best, and what was done with it afterwards', () => {
    expect(tell(english.rows, { code: 'least-lost', ...figures, nextBestMm: 40 })).toBe(
      'Of all rows that could stand here it loses least length: 12 mm of its depth carry nothing, the next best would lose 40 mm more.',
    );
    const moved = tell(english.rows, {
      code: 'shorter-later',
      ...figures,
      nextBestMm: -40,
      movedRows: -2,
      isLevelled: true,
      freeAheadMm: 300,
    });
    expect(moved).toContain('Another row would lose 40 mm less here');
    expect(moved).toContain('Moved 2 rows toward the nose for the axles.');
    expect(moved).toContain('for the side balance. 300 mm stay free ahead of it.');
  });

  it('says of a kept row only that somebody wants it there', () => {
    expect(tell(english.rows, { code: 'kept', ...figures })).toBe('It stays where it stands because somebody wants it there.');
  });
});
