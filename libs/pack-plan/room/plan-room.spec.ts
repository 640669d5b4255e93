import { sentencesOf } from '../../../tests/support/demo-tour.js';
import { plannedShow } from '../../../tests/support/planned-show.js';

const leftOf = (change: Parameters<typeof plannedShow>[0] = () => undefined) => plannedShow(change).picks.hangs[0]!;
const said = ({ findings }: ReturnType<typeof plannedShow>, code: string) => sentencesOf({ findings } as never, code);

describe('the room of a hang', () => {
  /**
   * Worked by hand from the file (geometry of the side plane, no published source). Hole: 11500 + behind × sin(tilt) + above × cos(tilt); hook: two
   * shackles of 52 mm and a sling of 1000 mm higher; left: 15200 − hook − 260 of hooks − 480 of body. Lowest: trim − 340 × the sum of the cosines of
   * the boxes' angles, all of them nose down.
   */
  const byHand = [
    { hang: 0, hole: 'C', holeHeightMm: 11629.6937, hookHeightMm: 12733.6937, leftMm: 1726.3063, lowest: 3459.523 },
    { hang: 0, hole: 'N', holeHeightMm: 11649.3264, hookHeightMm: 12753.3264, leftMm: 1706.6736, lowest: 3459.523 },
    { hang: 2, hole: 'C', holeHeightMm: 10629.5718, hookHeightMm: 11733.5718, leftMm: 2726.4282, lowest: 6499.916 },
    { hang: 2, hole: 'L', holeHeightMm: 10650.5115, hookHeightMm: 11754.5115, leftMm: 2705.4885, lowest: 6499.916 },
  ];
  const demo = plannedShow();

  it.each(byHand)('of the demo is that of a sum by hand: hang $hang, hole $hole', ({ hang, hole, lowest, ...heights }) => {
    const room = demo.picks.hangs[hang]!.room!;
    const own = room.picks.find((each) => each.hole === hole)!;
    for (const [figure, wanted] of Object.entries(heights)) expect(own[figure as 'leftMm']).toBeCloseTo(wanted, 3);
    expect(room.lowestHeightMm).toBeCloseTo(lowest, 2);
    expect(room).toMatchObject({ trimTo: 'grid', markZMm: 0, deckHeightMm: 0 });
    // From the mark to the point nothing is left out and nothing counted twice.
    const pieces = own.pieces.reduce((sum, each) => sum + each.mm!, 0);
    expect(demo.picks.hangs[hang]!.trimHeightMm + pieces + own.leftMm!).toBeCloseTo(15_200, 9);
  });

  it('says nothing of the demo', () => {
    expect(demo.findings.filter((each) => /headroom|floor|leg/.test(each.code))).toEqual([]);
  });

  it('moves with what trim is measured to: bottom edge, grid or top', () => {
    const bottom = leftOf((hangs) => Object.assign(hangs[0], { trimTo: 'bottom edge', trimHeightMm: 3500 })).room!;
    expect(bottom.lowestHeightMm).toBeCloseTo(3500, 9);
    expect(bottom.picks[0]!.holeHeightMm).toBeCloseTo(3500 + (11629.6937 - 3459.523), 2);
    const top = leftOf((hangs) => Object.assign(hangs[0], { trimTo: 'top', trimHeightMm: 11_500 })).room!;
    // The rear upper corner of a grid of 1,200 mm that begins 190 mm before the front pivot is its highest at 1.5° nose down.
    const highest = 1010 * Math.sin((1.5 * Math.PI) / 180) + 130 * Math.cos((1.5 * Math.PI) / 180);
    expect(top.markZMm).toBeCloseTo(highest, 6);
    expect(top.lowestHeightMm).toBeCloseTo(3459.523 - highest, 2);
  });
});

/** The demo with its left hang at heights that leave just so much. */
const pointAt = (mm: number) => plannedShow((hangs) => (hangs[0].pointHeightMm = mm));

describe('headroom', () => {
  // Rear hole: 11649.3264 + 104 + 1000 + 260 + 480 = 13493.3264 mm.
  const neededMm = 13_493.3264;

  it('that is 1 mm too little stops with the millimetre and every part, 1 mm more does not', () => {
    expect(said(pointAt(neededMm + 1), 'no-headroom')).toEqual([]);
    const stops = said(pointAt(neededMm - 1), 'no-headroom');
    expect(stops).toHaveLength(2);
    expect(stops[0]).toBe(
      'Main left, hole N: 1 mm of height are missing below its point. Point at 13\u202f492.3 mm, trim at 11\u202f500 mm to the grid; between them stand grid up to the hole 149.3 mm, shackles 104 mm, slings 1\u202f000 mm, hooks of the hoist 260 mm, body of the hoist 480 mm.',
    );
    const own = pointAt(neededMm - 1).picks.hangs[0]!.room!.picks[1]!;
    expect(own.leftMm).toBeCloseTo(-1, 3);
  });

  it('of a hang at 12.5 m under a point at 13 m is negative and said, not taken for nothing', () => {
    const { stops, picks } = plannedShow((hangs) => Object.assign(hangs[0], { trimHeightMm: 12_500, pointHeightMm: 13_000 }));
    expect(picks.hangs[0]!.room!.picks[0]!.leftMm).toBeCloseTo(13_000 - 12_500 - 129.6937 - 104 - 1000 - 260 - 480, 3);
    expect(stops.filter((each) => each.code === 'no-headroom').map((each) => each.fact.numbers)).toContainEqual(
      expect.objectContaining({ leftMm: expect.closeTo(-1473.694, 2) }),
    );
  });

  it('counts the drop of a bridle from its highest anchor', () => {
    const { picks } = plannedShow((hangs) => {
      hangs[0].picks[0].bridle = {
        legs: [
          { xMm: 0, yMm: -800, aboveMm: 900 },
          { xMm: 0, yMm: 800, aboveMm: 1100 },
        ],
      };
    });
    expect(picks.hangs[0]!.room!.picks[0]).toMatchObject({ apexHeightMm: 14_100, leftMm: expect.closeTo(626.3063, 3) });
  });

  it('is at most what the lengths on file leave where one is not, and says of which model', () => {
    const { findings, picks } = plannedShow((_, file) => delete file.catalogue.hoists[0].bodyMm);
    expect(picks.hangs[0]!.room!.picks[1]!.leftMm).toBeCloseTo(1706.6736 + 480, 3);
    expect(sentencesOf({ findings } as never, 'headroom-not-known')[0]).toBe(
      'Main left: no length is on file for Chain hoist 2.5 t; the height that is left below the points is at most 2\u202f186.7 mm. Measure them.',
    );
  });
});

describe('the floor', () => {
  it('is reached by 22 boxes at 5 m of trim, which stops with how far', () => {
    const sunk = plannedShow((hangs) => {
      hangs[0].boxes = hangs[0].boxes.slice(0, 22);
      hangs[0].trimHeightMm = 5000;
      hangs[1].trimHeightMm = 11_500;
    });
    const { lowestHeightMm } = sunk.picks.hangs[0]!.room!;
    expect(lowestHeightMm).toBeLessThan(-2000);
    expect(said(sunk, 'below-floor')).toEqual([
      `Main left: with its trim at 5\u202f000 mm its lowest point would hang ${(-lowestHeightMm).toFixed(1).replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f')} mm below the floor.`,
    ]);
  });

  it.each([
    ['the floor', 0],
    ['a deck of 1.2 m', 1200],
  ])('of %s is judged to the millimetre', (_, deckHeightMm) => {
    const at = (clearanceMm: number) =>
      said(
        plannedShow((hangs) =>
          Object.assign(hangs[0], {
            trimTo: 'bottom edge',
            trimHeightMm: deckHeightMm + 1000,
            deckHeightMm: 1000 + deckHeightMm - clearanceMm,
          }),
        ),
        'below-floor',
      );
    expect(at(1)).toEqual([]);
    expect(at(0)).toEqual([]);
    expect(at(-1)).toHaveLength(1);
    expect(at(-1)[0]).toMatch(/hangs [\d\u202f]+ mm above the floor, 1 mm lower than the deck at [\d\u202f]+ mm\.$/);
  });
});

describe('the leg of a bridle', () => {
  /** Legs of a length each, with two shackles of 52 mm and a sling of that length. */
  const withSling = (lengthMm: number, more: object = {}) =>
    plannedShow((hangs, file) => {
      const sling = { ...file.catalogue.slings[0], model: 'Leg', lengthMm, ...more };
      file.catalogue.slings.push(sling);
      hangs[0].picks[0].bridle = {
        legs: [
          { xMm: 0, yMm: -1200, aboveMm: 2000 },
          { xMm: 0, yMm: 1200, aboveMm: 2000 },
        ],
        slings: ['Leg'],
        shackles: ['Bow shackle 3.25', 'Bow shackle 3.25'],
      };
    });
  // √(1200² + 2000²) = 2332.3808 mm; 2228.3808 mm of them sling.
  const slingMm = 2228.3808;

  it('of 2.33 m is not made by a sling of 2 m', () => {
    const findings = said(withSling(2000), 'leg-does-not-fit');
    // Both legs of the left hang and of its mirror.
    expect(findings).toHaveLength(4);
    expect(findings[0]).toMatch(
      /^Main left, hole C: leg 1 of the bridle is 2\u202f332\.4 mm long as drawn, and its steel \(Leg, Bow shackle 3\.25\) makes 2\u202f104 mm\./,
    );
  });

  it('is judged to the millimetre, 20 mm either way, and an adjuster widens what fits', () => {
    const fits = (lengthMm: number, more?: object) => said(withSling(lengthMm, more), 'leg-does-not-fit').length === 0;
    expect([slingMm - 21, slingMm - 19, slingMm, slingMm + 19, slingMm + 21].map((each) => fits(each))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(fits(slingMm + 600, { shortestMm: slingMm + 19 })).toBe(true);
    expect(fits(slingMm + 600, { shortestMm: slingMm + 21 })).toBe(false);
  });

  it('has its own steel where it names any', () => {
    const { picks } = plannedShow((hangs) => {
      hangs[0].picks[0].bridle = {
        legs: [
          { xMm: 0, yMm: -500, aboveMm: 866, slings: ['Round sling 1 m'], shackles: [] },
          { xMm: 0, yMm: 500, aboveMm: 866, slings: ['Round sling 1 m', 'Round sling 1 m'], shackles: [] },
        ],
      };
    });
    expect(picks.hangs[0]!.room!.legs.map((each) => [each.longestMm, each.fits])).toEqual([
      [1000, true],
      [2000, false],
    ]);
  });
});
