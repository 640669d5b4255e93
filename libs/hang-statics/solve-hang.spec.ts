import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { type HangCase, readHangCase, solveHang, verifyHang } from '#hang-statics';
import { arbitraryHang, caseOf, hangFrom } from '../../tests/support/random-hang.js';

const worked = JSON.parse(readFileSync('tests/cases/hang-statics/four-boxes.json', 'utf8')) as unknown;

describe('statics of a hang', () => {
  it('gives the worked example of the case format', () => {
    const answer = solveHang(caseOf(worked));
    expect(answer.bottomAimDownDeg).toBeCloseTo(9, 10);
    expect(answer.massKg).toBe(341);
    expect(answer.centreOfGravity.xMm).toBeCloseTo(-306.483, 3);
    expect(answer.centreOfGravity.zMm).toBeCloseTo(-469.914, 3);
    expect(answer.picks.map((pick) => pick.reactionN)).toEqual([expect.closeTo(2036.0689, 4), expect.closeTo(1307.9988, 4)]);
    expect(answer.picks.map((pick) => pick.hookLoadKg)).toEqual([expect.closeTo(211.7212, 4), expect.closeTo(137.4788, 4)]);
    expect(answer.picks.map((pick) => pick.pointLoadN)).toEqual([expect.closeTo(2801.9683, 4), expect.closeTo(2073.8981, 4)]);
    expect(answer.joints[0]).toMatchObject({
      loadN: expect.closeTo(2481.0824, 3),
      rearLinkN: expect.closeTo(1459.2719, 4),
      frontPinN: expect.closeTo(511.9834, 4),
    });
    expect(answer.joints[3]).toMatchObject({
      loadN: expect.closeTo(598.2056, 4),
      rearLinkN: expect.closeTo(335.2836, 4),
      frontPinN: expect.closeTo(136.0759, 4),
    });
    expect(answer.slackAtDeg).toEqual({ rearSlack: expect.closeTo(-33.8328, 4), frontSlack: expect.closeTo(47.9923, 4) });
  });

  it('passes the independent checker for any hang, and the checker refuses a changed figure', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.constantFrom(1 as const, 2 as const), (raw, picks) => {
        const problem = hangFrom(raw, picks);
        const answer = solveHang(problem);
        expect(verifyHang(problem, answer)).toEqual([]);
        const wrong = {
          ...answer,
          picks: answer.picks.map((pick, index) => (index === 0 ? { ...pick, reactionN: pick.reactionN + 5 } : pick)),
        };
        expect(verifyHang(problem, wrong)).not.toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('lets the reactions sum to the weight, whatever the order of the picks', () => {
    fc.assert(
      fc.property(arbitraryHang, (raw) => {
        const problem = hangFrom(raw);
        const answer = solveHang(problem);
        const turned = solveHang({ ...problem, picks: [...problem.picks].reverse() });
        expect(answer.picks[0]!.reactionN + answer.picks[1]!.reactionN).toBeCloseTo(answer.massKg * 9.80665, 6);
        expect(turned.picks.map((pick) => pick.reactionN).reverse()).toEqual(answer.picks.map((pick) => expect.closeTo(pick.reactionN, 6)));
        expect(turned.slackAtDeg).toEqual(answer.slackAtDeg);
      }),
    );
  });

  it('is not changed by moving holes, grid and boxes together', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.integer({ min: -500, max: 500 }), (raw, shift) => {
        const problem = hangFrom({ ...raw, tilt: 0, boxes: raw.boxes.map((box) => ({ ...box, splayDeg: 0 })) });
        const moved: HangCase = {
          ...problem,
          grid: {
            ...problem.grid,
            cgBehindMm: problem.grid.cgBehindMm + shift,
            holes: problem.grid.holes.map((hole) => ({ ...hole, behindMm: hole.behindMm + shift })),
          },
          boxes: problem.boxes.map((box) => ({ ...box, cgBehindMm: box.cgBehindMm + shift })),
        };
        expect(solveHang(moved).picks.map((pick) => pick.reactionN)).toEqual(
          solveHang(problem).picks.map((pick) => expect.closeTo(pick.reactionN, 5)),
        );
      }),
    );
  });

  it('has the other pick carry nothing at each slack tilt, and then agrees with one pick', () => {
    fc.assert(
      fc.property(arbitraryHang, (raw) => {
        const problem = hangFrom(raw);
        const { rearSlack } = solveHang(problem).slackAtDeg!;
        fc.pre(Math.abs(rearSlack) < 80);
        const there = solveHang({ ...problem, tiltDownDeg: rearSlack });
        expect(Math.abs(there.picks[1]!.reactionN)).toBeLessThan(1e-6 * there.massKg * 9.80665 + 1e-6);
        const single = solveHang({ ...problem, tiltDownDeg: undefined, picks: [problem.picks[0]!] });
        expect(single.tiltDownDeg).toBeCloseTo(rearSlack, 8);
        expect(single.picks[0]!.reactionN).toBeCloseTo(there.picks[0]!.reactionN, 5);
      }),
    );
  });

  it('equals the hand sum for a straight level hang', () => {
    const problem = hangFrom({
      tilt: 0,
      grid: { massKg: 80, cgBehindMm: 400, cgAboveMm: 50 },
      front: 0,
      span: 1000,
      boxes: Array.from({ length: 10 }, () => ({
        massKg: 60,
        frontHeightMm: 300,
        cgBehindMm: 250,
        cgBelowMm: 150,
        rearLeverMm: 500,
        splayDeg: 0,
      })),
    });
    const answer = solveHang(problem);
    // Moments about the front hole: (80 x 400 + 600 x 250) / 1000 = 182 kg on the rear hole, 680 - 182 = 498 kg in front.
    expect(answer.picks.map((pick) => pick.reactionN / 9.80665)).toEqual([expect.closeTo(498, 8), expect.closeTo(182, 8)]);
    expect(answer.joints[0]!.rearLinkN / 9.80665).toBeCloseTo((600 * 250) / 500, 8);
  });

  it('says that a hang cannot hang like this instead of failing', () => {
    const problem = hangFrom({
      tilt: 0,
      grid: { massKg: 10, cgBehindMm: 0, cgAboveMm: 0 },
      front: 600,
      span: 300,
      boxes: [{ massKg: 60, frontHeightMm: 300, cgBehindMm: 250, cgBelowMm: 150, rearLeverMm: 500, splayDeg: 0 }],
    });
    const answer = solveHang(problem);
    expect(answer.picks[1]!.reactionN).toBeLessThan(0);
    expect(answer.findings.map((finding) => finding.code)).toContain('cannot-hang-like-this');
  });
});

describe('a malformed hang', () => {
  const base = worked as { picks: object[]; boxes: object[]; grid: object };
  it.each([
    ['a hole that the grid has not', { ...base, picks: [{ ...base.picks[0], hole: '99' }, base.picks[1]] }, 'picks[0].hole'],
    ['both picks in one hole', { ...base, picks: [base.picks[0], base.picks[0]] }, 'picks[1].hole'],
    ['a lever of zero', { ...base, boxes: [{ ...base.boxes[0], rearLeverMm: 0 }] }, 'boxes[0].rearLeverMm'],
    ['a negative mass', { ...base, boxes: [{ ...base.boxes[0], massKg: -1 }] }, 'boxes[0].massKg'],
    ['200 boxes', { ...base, boxes: Array.from({ length: 200 }, () => base.boxes[0]) }, 'boxes'],
    ['a tilt with one pick', { ...base, picks: [base.picks[0]] }, 'tiltDownDeg'],
    ['no tilt with two picks', { ...base, tiltDownDeg: undefined }, 'tiltDownDeg'],
    ['a text for a number', { ...base, gravityMps2: 'NaN' }, 'gravityMps2'],
    ['an unknown field', { ...base, colour: 'red' }, 'colour'],
    ['an extra below the last box', { ...base, extras: [{ position: 9, massKg: 1 }] }, 'extras[0].position'],
  ])('is refused: %s', (_what, input, field) => {
    const read = readHangCase(input);
    expect(read.ok ? [] : read.error.map((fault) => fault.field)).toContain(field);
  });

  it('finds what is above its rating, and neither what is at it nor what is not on file', () => {
    const problem = hangFrom({
      tilt: 1,
      grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
      front: 0,
      span: 800,
      boxes: [0, 4].map((splayDeg) => ({ massKg: 60, frontHeightMm: 300, cgBehindMm: 250, cgBelowMm: 150, rearLeverMm: 500, splayDeg })),
    });
    const answer = solveHang(problem);
    const rated = (by: number): HangCase => ({
      ...problem,
      picks: problem.picks.map((pick, index) => ({ ...pick, ratedHoistKg: answer.picks[index]!.hookLoadKg * by })),
      boxes: problem.boxes.map((box, index) => ({
        ...box,
        ratedRearLinkN: Math.abs(answer.joints[index]!.rearLinkN) * by,
        ratedFrontPinN: Math.abs(answer.joints[index]!.frontPinN) * by,
      })),
    });
    const found = (each: HangCase) => solveHang(each).findings.map(({ code, subject }) => [code, subject]);
    expect(found(rated(1))).toEqual([]);
    expect(found(rated(1.01))).toEqual([]);
    const over = ['hole a', 'hole b', 'joint 1', 'joint 1', 'joint 2', 'joint 2'];
    expect(found(rated(0.99))).toEqual(over.map((subject) => ['over-rated-load', subject]));
    expect(solveHang(rated(0.99)).findings.map((each) => each.code === 'over-rated-load' && each.part)).toEqual([
      'hook',
      'hook',
      'rear link',
      'front pin',
      'rear link',
      'front pin',
    ]);
    expect(found(problem)).toEqual([['no-rated-value', 'joints']]);
    expect(solveHang(problem).findings[0]).toMatchObject({ boxes: 2, of: 2 });
    const [first, second] = rated(1).boxes as [HangCase['boxes'][number], HangCase['boxes'][number]];
    const oneSilent = { ...problem, boxes: [first, { ...second, ratedFrontPinN: undefined }] };
    expect(solveHang(oneSilent).findings).toMatchObject([{ boxes: 1, of: 2 }]);
  });

  it('says at which hole a pick would have to push, and at which joint a link or pin does', () => {
    // The centre of gravity far behind both holes: the front pick would push.
    const behind = hangFrom({
      tilt: 0,
      grid: { massKg: 10, cgBehindMm: 0, cgAboveMm: 0 },
      front: 0,
      span: 100,
      boxes: [{ massKg: 100, frontHeightMm: 300, cgBehindMm: 400, cgBelowMm: 150, rearLeverMm: 300, splayDeg: 0 }],
    });
    // By moments: (110 kg at 100 x 400 / 110 behind) over 100 mm = 400 kg behind, so -290 kg in front; link 100 x 400 / 300 kg, pins -100/3 kg.
    expect(solveHang(behind).picks.map((pick) => pick.reactionN / 9.80665)).toEqual([expect.closeTo(-290, 9), expect.closeTo(400, 9)]);
    expect(solveHang(behind).joints[0]!.frontPinN / 9.80665).toBeCloseTo(-100 / 6, 9);
    expect(solveHang(behind).findings.map(({ code, subject }) => [code, subject])).toEqual([
      ['cannot-hang-like-this', 'hole a'],
      ['front-pins-push', 'joint 1'],
      ['no-rated-value', 'joints'],
    ]);
    const forward = { ...behind, boxes: behind.boxes.map((box) => ({ ...box, cgBehindMm: -50 })) };
    expect(solveHang(forward).findings.map(({ code, subject }) => [code, subject])).toEqual([
      ['cannot-hang-like-this', 'hole b'],
      ['reversed-link', 'joint 1'],
      ['no-rated-value', 'joints'],
    ]);
  });

  it('refuses a tilt at which the picks stand above one another, and only that one', () => {
    const of = (tiltDownDeg: number) => {
      const { grid, boxes, picks, gravityMps2, dynamicFactor } = caseOf(worked);
      const holes = [
        { hole: 'a', behindMm: 0, aboveMm: 0 },
        { hole: 'b', behindMm: 100, aboveMm: 100 },
      ];
      const lifted = picks.map((pick, index) => ({ ...pick, hole: 'ab'[index]! }));
      const read = readHangCase({ gravityMps2, dynamicFactor, tiltDownDeg, boxes, picks: lifted, grid: { ...grid, holes } });
      return read.ok ? [] : read.error.map((fault) => fault.field);
    };
    // cos t = sin t at 45 degrees.
    expect(of(45)).toEqual(['tiltDownDeg']);
    expect([44, 0, 46].map(of)).toEqual([[], [], []]);
  });

  it('reads rated forces and lists up to their bounds, and refuses what is beyond', () => {
    const { grid, boxes, extras, ...rest } = caseOf(worked);
    const read = (change: object) => {
      const result = readHangCase({ ...rest, grid, boxes, extras, ...change });
      return result.ok ? [] : result.error.map((fault) => fault.field);
    };
    const rated = (ratedRearLinkN: number, ratedFrontPinN: number) => ({
      boxes: boxes.map((box) => ({ ...box, ratedRearLinkN, ratedFrontPinN })),
    });
    const holes = (count: number) => ({
      grid: {
        ...grid,
        holes: [
          ...grid.holes,
          ...Array.from({ length: count - grid.holes.length }, (_, n) => ({ hole: `x${n}`, behindMm: n, aboveMm: 0 })),
        ],
      },
    });
    const hung = (count: number) => ({ extras: Array.from({ length: count }, () => ({ position: 1, massKg: 1 })) });
    const many = (count: number) => ({ boxes: Array.from({ length: count }, () => boxes[0]!), extras: [] });
    for (const change of [{}, rated(1, 1e8), rated(1e8, 1), holes(200), hung(1000), many(120)]) expect(read(change)).toEqual([]);
    expect(read(rated(0, 1))).toContain('boxes[0].ratedRearLinkN');
    expect(read(rated(1, 1.1e8))).toContain('boxes[0].ratedFrontPinN');
    expect(read(holes(201))).toEqual(['grid.holes']);
    expect(read(hung(1001))).toEqual(['extras']);
    expect(read(many(121))).toEqual(['boxes']);
  });
});
