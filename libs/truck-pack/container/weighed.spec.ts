import fc from 'fast-check';
import { type ContainerBox, type ContainerInput, readContainerCase } from './container-case.js';
import { solveContainer } from './solve-container.js';
import { verifyContainer } from './verify-container.js';

const upright = [false, false, true] as const;
const crate = (more: Partial<ContainerBox> = {}): ContainerBox => ({
  edges: [1000, 1000, 1000],
  mayStand: upright,
  count: 8,
  massKg: 100,
  ...more,
});

const solve = (input: ContainerInput, workLimit = 30) => {
  const read = readContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return { problem: read.value, answer: solveContainer(read.value, { workLimit, timeLimitSeconds: 1e9, now: () => 0 }) };
};
const room = { length: 4000, width: 2000, height: 2000, support: 'full' } as const;

describe('filling a container with masses', () => {
  it('puts nothing on boxes that bear nothing', () => {
    const { answer } = solve({ ...room, boxes: [crate({ mostOnTopKg: 0, count: 16 })] });
    expect(answer.placements).toHaveLength(8);
    expect(answer.mismatch).toBeUndefined();
  });

  it('puts on top what a box bears, and leaves on the floor what may stand nowhere else', () => {
    const { answer } = solve({
      ...room,
      boxes: [crate({ mostOnTopKg: 60 }), crate({ massKg: 50, mostOnTopKg: 0 }), crate({ massKg: 10, isFloorOnly: true, count: 8 })],
    });
    const high = answer.placements.filter((each) => each.z > 0).map((each) => each.box);
    expect(high).toHaveLength(8);
    expect(new Set(high)).toEqual(new Set([1]));
  });

  it('stops at the payload', () => {
    const { answer } = solve({ ...room, boxes: [crate({ count: 16 })], limits: { payloadKg: 550 } });
    expect(answer.placements).toHaveLength(5);
  });

  it('moves the load until its centre is near enough to the middle, no further', () => {
    const { answer } = solve({ ...room, boxes: [crate({ count: 4 })], limits: { mostEndOffset: 300 } });
    const middle = answer.placements.reduce((sum, each) => sum + each.x + 500, 0) / answer.placements.length;
    expect(answer.placements).toHaveLength(4);
    expect(Math.abs(middle - 2000)).toBe(300);
  });

  it('turns slices of the load left to right until neither side is too heavy', () => {
    const heavy = crate({ edges: [1000, 1200, 1000], mayTurn: false, massKg: 400, count: 4, mostOnTopKg: 0 });
    const light = crate({ edges: [1000, 800, 1000], mayTurn: false, massKg: 50, count: 4, mostOnTopKg: 0 });
    const { answer } = solve({ ...room, boxes: [heavy, light], limits: { mostSideOffset: 50 } });
    expect(answer.placements).toHaveLength(8);
    expect(answer.mismatch).toBeUndefined();
    expect(new Set(answer.placements.filter((each) => each.box === 0).map((each) => each.y)).size).toBe(2);
  });

  it('carries no more on a metre than the floor bears', () => {
    const { answer } = solve({ ...room, boxes: [crate({ count: 16 })], limits: { mostKgPerMetre: 300 } });
    // A metre holds up to four of 100 kg: three of them may stand there.
    expect(answer.placements).toHaveLength(12);
  });

  it('stands in no blocked place, and rests on none', () => {
    const blocked = [{ x: 0, y: 0, z: 0, dx: 4000, dy: 500, dz: 500 }];
    const { answer } = solve({ ...room, boxes: [crate({ count: 16 })], blocked });
    expect(answer.placements).toHaveLength(8);
    expect(Math.min(...answer.placements.map((each) => each.y))).toBeGreaterThanOrEqual(500);
  });

  it('keeps along the length what may not be turned', () => {
    const { answer } = solve({
      ...room,
      length: 1500,
      width: 2500,
      boxes: [crate({ edges: [1500, 1000, 1000], mayTurn: false, count: 9 })],
    });
    expect(answer.placements.every((each) => each.dx === 1500)).toBe(true);
    expect(answer.placements).toHaveLength(4);
  });

  it('is refused without full support', () => {
    expect(readContainerCase({ length: 10, width: 10, height: 10, boxes: [], limits: { payloadKg: 5 } })).toMatchObject({
      ok: false,
      error: [{ field: 'support' }],
    });
  });

  it('agrees with the checker on any such case', () => {
    const edge = fc.integer({ min: 3, max: 12 }).map((each) => each * 100);
    const box = fc.record({
      edges: fc.tuple(edge, edge, edge),
      mayStand: fc.constantFrom(upright, [true, true, true] as const),
      mayTurn: fc.boolean(),
      count: fc.integer({ min: 1, max: 8 }),
      massKg: fc.integer({ min: 1, max: 200 }),
      mostOnTopKg: fc.option(fc.integer({ min: 0, max: 300 }), { nil: undefined }),
      isFloorOnly: fc.boolean(),
    });
    const limits = fc.record({
      payloadKg: fc.integer({ min: 100, max: 3000 }),
      mostKgPerMetre: fc.option(fc.integer({ min: 100, max: 800 }), { nil: undefined }),
      mostEndOffset: fc.option(fc.integer({ min: 50, max: 800 }), { nil: undefined }),
      mostSideOffset: fc.option(fc.integer({ min: 50, max: 800 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 5 }), limits, fc.boolean(), (boxes, given, hasBlocked) => {
        const blocked = hasBlocked ? [{ x: 0, y: 0, z: 1200, dx: 3000, dy: 400, dz: 800 }] : [];
        const { answer } = solve({ length: 3000, width: 2300, height: 2000, support: 'full', boxes, limits: given, blocked }, 8);
        expect(answer.mismatch).toBeUndefined();
      }),
      { numRuns: 40, seed: 5 },
    );
  });
});

describe('the checker of a container with masses', () => {
  const { problem, answer } = solve({
    ...room,
    boxes: [crate({ mostOnTopKg: 100 }), crate({ massKg: 100, mostOnTopKg: 0 })],
    limits: { payloadKg: 1600, mostKgPerMetre: 400, mostEndOffset: 100, mostSideOffset: 100 },
  });
  const judge = (more: object) => verifyContainer({ ...problem, ...more }, answer).join('\n');

  it('has nothing to say of a load that keeps everything', () => {
    expect(answer.placements).toHaveLength(16);
    expect(judge({})).toBe('');
  });

  it.each([
    [{ limits: { payloadKg: 1599 } }, /weighs 1600 kg of 1599/],
    [{ limits: { mostKgPerMetre: 399 } }, /the metre from 0 carries 400 kg/],
    [{ boxes: [crate({ mostOnTopKg: 99 }), crate({ mostOnTopKg: 0 })] }, /bears 100 kg of 99/],
    [{ boxes: [crate({ mostOnTopKg: 100 }), crate({ isFloorOnly: true })] }, /does not stand on the floor/],
    [{ blocked: [{ x: 1500, y: 500, z: 0, dx: 10, dy: 10, dz: 10 }] }, /stands in a blocked place/],
  ])('sees what is broken: %j', (more, said) => {
    expect(judge(more)).toMatch(said);
  });

  it('sees a centre that is too far off', () => {
    const few = { ...answer, placements: answer.placements.filter((each) => each.x < 2000 && each.y < 1000) };
    const said = verifyContainer(problem, few).join('\n');
    expect(said).toMatch(/from the middle along/);
    expect(said).toMatch(/from the middle across/);
  });
});
