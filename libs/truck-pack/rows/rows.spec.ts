import fc from 'fast-check';
import { type Piece, Work, readTruckCase } from '../case/index.js';
import type { Placed } from '../space/index.js';
import { type Lane, type RowKind, lanesOf, rowKinds } from './row-kinds.js';
import { RowPatterns } from './row-patterns.js';
import { RowRooms } from './row-room.js';
import { chooseSides } from './row-sides.js';
import { type Tower, buildTowers } from './towers.js';

function caseOf(truck: object, pieces: readonly object[]) {
  const read = readTruckCase({
    trucks: [{ id: 'T', innerLengthMm: 30, innerWidthMm: 12, innerHeightMm: 10, ...truck }],
    pieces: pieces.map((each, index) => ({
      id: `P${String(index).padStart(2, '0')}`,
      lengthMm: 4,
      widthMm: 4,
      heightMm: 3,
      massKg: 10,
      ...each,
    })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return { truck: read.value.trucks[0]!, pieces: read.value.pieces };
}

const asStanding = (piece: Piece, x: number, y: number, z = 0): Placed => ({
  piece,
  x,
  y,
  z,
  along: piece.lengthMm,
  across: piece.widthMm,
  high: piece.heightMm,
  turned: false,
});

describe('rooms of rows', () => {
  it('are the widest between what is in the way, at each height, as looking at every millimetre finds them', () => {
    const box = fc.record({
      xMm: fc.integer({ min: -2, max: 20 }),
      yMm: fc.integer({ min: -2, max: 13 }),
      zMm: fc.constantFrom(0, 0, 5, 7, 9, 10),
      lengthMm: fc.integer({ min: 1, max: 8 }),
      widthMm: fc.integer({ min: 1, max: 6 }),
      heightMm: fc.integer({ min: 1, max: 4 }),
    });
    const place = fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 8 }));
    fc.assert(
      fc.property(fc.array(box, { maxLength: 4 }), fc.array(place, { maxLength: 2 }), (blocked, places) => {
        const { truck, pieces } = caseOf({ blocked, doorHeightMm: 9 }, [{}, {}]);
        const kept = places.map(([x, y], index) => asStanding(pieces[index]!, x, y));
        const rooms = new RowRooms(truck, kept);
        const all = [
          ...blocked.map((each) => ({ x: each.xMm, X: each.xMm + each.lengthMm, y: each.yMm, Y: each.yMm + each.widthMm, z: each.zMm })),
          ...kept.map((each) => ({ x: each.x, X: each.x + each.along, y: each.y, Y: each.y + each.across, z: 0 })),
        ].filter((each) => each.X > 0 && each.Y > 0 && each.y < 12 && each.z < 9);
        expect(rooms.heightMatters).toBe(all.some((each) => each.z > 0));
        for (const [x, depth] of [
          [0, 3],
          [2, 1],
          [5, 6],
          [14, 4],
          [20, 10],
        ] as const) {
          const over = all.filter((each) => each.x < x + depth && each.X > x);
          const found = [...new Set([9, ...over.map((each) => each.z)])]
            .filter((heightMm) => heightMm > 0)
            .flatMap((heightMm) => {
              let [fromMm, widthMm] = [0, 0];
              for (let from = 0; from < 12; from++)
                for (let to = from + 1; to <= 12; to++)
                  if (to - from > widthMm && !over.some((each) => each.z < heightMm && each.y < to && each.Y > from))
                    [fromMm, widthMm] = [from, to - from];
              return widthMm > 0 ? [{ fromMm, widthMm, heightMm }] : [];
            });
          expect(rooms.at(x, depth)).toEqual(found);
          const ends = [...new Set(all.map((each) => each.X).filter((end) => end > x && end < 30))].sort((a, b) => a - b);
          expect(rooms.starts(x)).toEqual([x, ...ends]);
        }
      }),
      { numRuns: 150, seed: 1 },
    );
  });
});

const size = fc.integer({ min: 2, max: 6 });
const freight = fc.array(
  fc.record({
    lengthMm: size,
    widthMm: size,
    heightMm: size,
    massKg: fc.integer({ min: 1, max: 9 }),
    mayTurn: fc.boolean(),
    floorOnly: fc.boolean(),
    maxOnTopKg: fc.constantFrom(0, 6, 12, undefined),
  }),
  { minLength: 1, maxLength: 8 },
);
const byArea = (a: Piece, b: Piece) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm || (a.id < b.id ? -1 : 1);

const footprint = ({ piece, turned }: Tower['parts'][number]): readonly [number, number] =>
  turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];

describe('towers', () => {
  it('stand within their base and their height, each piece wholly on one top that bears it, nothing in one place', () => {
    let stacked = 0;
    fc.assert(
      fc.property(freight, (given) => {
        const { pieces } = caseOf({}, given);
        const towers = buildTowers(pieces, 10, byArea, new Work());
        expect(towers.flatMap((each) => each.parts.map((part) => part.piece.id)).sort()).toEqual(pieces.map((each) => each.id));
        for (const tower of towers) {
          const [base, ...rest] = tower.parts;
          expect([base!.dx, base!.dy, base!.dz, base!.turned]).toEqual([0, 0, 0, false]);
          expect([tower.along, tower.across, tower.firstOff]).toEqual([base!.piece.lengthMm, base!.piece.widthMm, base!.piece.firstOff]);
          expect(tower.high).toBe(Math.max(...tower.parts.map((part) => part.dz + part.piece.heightMm)));
          expect(tower.high).toBeLessThanOrEqual(Math.max(10, base!.piece.heightMm));
          expect(tower.massKg).toBe(tower.parts.reduce((sum, part) => sum + part.piece.massKg, 0));
          expect(tower.mayTurn).toBe(tower.parts.every((part) => part.piece.mayTurn));
          if (base!.piece.mayTurn && base!.piece.lengthMm !== base!.piece.widthMm) expect(tower.mayTurn).toBe(true);
          const onTop = new Map(tower.parts.map((part) => [part, 0]));
          for (const part of [...rest].sort((a, b) => b.dz - a.dz)) {
            stacked++;
            expect(part.piece.floorOnly).toBe(false);
            if (part.turned) expect(part.piece.mayTurn).toBe(true);
            const [along, across] = footprint(part);
            const under = tower.parts.find((other) => {
              const [l, w] = footprint(other);
              const isBelow = other.dz + other.piece.heightMm === part.dz;
              return (
                isBelow && other.dx <= part.dx && other.dy <= part.dy && other.dx + l >= part.dx + along && other.dy + w >= part.dy + across
              );
            });
            expect(under).toBeDefined();
            onTop.set(under!, onTop.get(under!)! + onTop.get(part)! + part.piece.massKg);
          }
          for (const [part, kg] of onTop) expect(kg).toBeLessThanOrEqual(part.piece.maxOnTopKg ?? Infinity);
          tower.parts.forEach((a, i) =>
            tower.parts.slice(i + 1).forEach((b) => {
              const [[la, wa], [lb, wb]] = [footprint(a), footprint(b)];
              const meets = a.dx < b.dx + lb && b.dx < a.dx + la && a.dy < b.dy + wb && b.dy < a.dy + wa;
              expect(meets && a.dz < b.dz + b.piece.heightMm && b.dz < a.dz + a.piece.heightMm).toBe(false);
            }),
          );
        }
      }),
      { numRuns: 150, seed: 2 },
    );
    expect(stacked).toBeGreaterThan(100);
  });

  const parts = (pieces: readonly object[], roof = 10) =>
    buildTowers(caseOf({}, pieces).pieces, roof, byArea, new Work()).map((each) =>
      each.parts.map(({ piece, dx, dy, dz, turned }) => `${piece.id} ${dx} ${dy} ${dz}${turned ? ' turned' : ''}`),
    );

  it.each<[string, object[], string[][]]>([
    [
      'four on one that is twice as long and wide',
      [{ lengthMm: 8, widthMm: 8 }, ...Array.from({ length: 4 }, () => ({ maxOnTopKg: 0 }))],
      [['P00 0 0 0', 'P01 0 0 3', 'P02 0 4 3', 'P03 4 0 3', 'P04 4 4 3']],
    ],
    [
      'on the top that leaves least',
      [{ lengthMm: 8, floorOnly: true }, { lengthMm: 5, floorOnly: true }, {}],
      [['P00 0 0 0'], ['P01 0 0 0', 'P02 0 0 3']],
    ],
    [
      'turned where that alone goes',
      [
        { lengthMm: 6, widthMm: 3, floorOnly: true },
        { lengthMm: 3, widthMm: 6, mayTurn: true, heightMm: 1 },
      ],
      [['P00 0 0 0', 'P01 0 0 3 turned']],
    ],
    [
      'not turned where it may not',
      [
        { lengthMm: 6, widthMm: 3, floorOnly: true },
        { lengthMm: 3, widthMm: 6 },
      ],
      [['P00 0 0 0'], ['P01 0 0 0']],
    ],
    [
      'not on what could be turned and then could not',
      [{ lengthMm: 5, mayTurn: true, floorOnly: true }, {}],
      [['P00 0 0 0'], ['P01 0 0 0']],
    ],
    [
      'on what could be turned, if it can be, too',
      [{ lengthMm: 5, mayTurn: true, floorOnly: true }, { mayTurn: true }],
      [['P00 0 0 0', 'P01 0 0 3']],
    ],
    ['on a square, which a turn does not change', [{ lengthMm: 4, mayTurn: true, floorOnly: true }, {}], [['P00 0 0 0', 'P01 0 0 3']]],
    ['up to the roof', [{ floorOnly: true }, {}, {}, {}], [['P00 0 0 0', 'P01 0 0 3', 'P02 0 0 6'], ['P03 0 0 0']]],
    ['as far as the lowest bears all', [{ floorOnly: true, maxOnTopKg: 15 }, {}, {}], [['P00 0 0 0', 'P01 0 0 3'], ['P02 0 0 0']]],
    ['as far as it bears exactly', [{ floorOnly: true, maxOnTopKg: 20 }, {}, {}], [['P00 0 0 0', 'P01 0 0 3', 'P02 0 0 6']]],
  ])('are built: %s', (_what, pieces, wanted) => {
    expect(parts(pieces)).toEqual(wanted);
  });
});

const towersOf = (pieces: readonly Piece[]) => pieces.flatMap((piece) => buildTowers([piece], 10, byArea, new Work()));
const priceOf = (ways: readonly { along: number; across: number }[]) => Math.min(...ways.map(({ along, across }) => (along * across) / 12));

describe('kinds of towers, and lanes of them', () => {
  const room = { lengthMm: 30, widthMm: 12, heightMatters: false };

  it('are alike by base, stop and waiver, by height only where that matters, what comes off last first', () => {
    const { pieces } = caseOf({}, [
      { firstOff: 1 },
      { firstOff: 2, heightMm: 5 },
      { firstOff: 2, heightMm: 4 },
      { firstOff: 2 },
      { firstOff: 2, lengthMm: 6, mayTurn: true },
      { firstOff: 2, lengthMm: 13, mayTurn: true },
      { firstOff: 2, lengthMm: 31 },
    ]);
    const show = (kinds: readonly RowKind[]) =>
      kinds.map(
        (kind) =>
          `${kind.towers.map((tower) => tower.parts[0]!.piece.id).join()} ${kind.level}${kind.free ? ' free' : ''} ${kind.ways.map((way) => `${way.along}x${way.across}${way.turned ? 't' : ''}`).join()}`,
      );
    expect(show(rowKinds(towersOf(pieces), new Set(['P03']), priceOf, room))).toEqual([
      'P05 0 13x4',
      'P04 0 6x4,4x6t',
      'P01,P02 0 4x4',
      'P03 0 free 4x4',
      'P06 0 ',
      'P00 1 4x4',
    ]);
    const minded = rowKinds(towersOf(pieces), new Set(), priceOf, { ...room, heightMatters: true });
    expect(minded.map((kind) => kind.high).sort()).toEqual([3, 3, 3, 3, 3, 4, 5]);
    expect(minded.map((kind) => kind.price)).toEqual([13, 6, 4, 4, 4, 0, 4].map((length) => expect.closeTo((length * 4) / 12, 9)));
  });

  it('are single towers, up to four alike, or two that are nearly as wide, of stops that follow one another', () => {
    const { pieces } = caseOf({}, [
      ...Array.from({ length: 5 }, () => ({ firstOff: 3 })),
      { firstOff: 3, lengthMm: 5, widthMm: 3 },
      { firstOff: 2, lengthMm: 7, widthMm: 2 },
      { firstOff: 1, lengthMm: 8, widthMm: 4 },
    ]);
    const kinds = rowKinds(towersOf(pieces), new Set(), priceOf, room);
    const names = kinds.map((kind) => `${kind.towers[0]!.along}x${kind.towers[0]!.across}`);
    expect(names).toEqual(['4x4', '5x3', '7x2', '8x4']);
    const show = (lanes: readonly Lane[]) =>
      lanes.map((lane) => `${lane.kinds.map((kind) => names[kind]).join('+')} ${lane.along}x${lane.across} ${lane.lastLevel}`).sort();
    expect(show(lanesOf(kinds, 16))).toEqual(
      [
        '4x4 4x4 0',
        '4x4+4x4 8x4 0',
        '4x4+4x4+4x4 12x4 0',
        '4x4+4x4+4x4+4x4 16x4 0',
        '5x3 5x3 0',
        // A lane of 4 and 3: three quarters are enough; 2 of 3 are not.
        '4x4+5x3 9x4 0',
        '7x2 7x2 1',
        '8x4 8x4 2',
      ].sort(),
    );
    expect(show(lanesOf(kinds, 15))).not.toContain('4x4+4x4+4x4+4x4 16x4 0');
    const values = lanesOf(kinds, 16).map((lane) => lane.value / lane.across);
    expect(values).toEqual([...values].sort((a, b) => b - a));
    for (const lane of lanesOf(kinds, 16))
      expect(lane.value).toBeCloseTo(
        lane.kinds.reduce((sum, kind) => sum + kinds[kind]!.price, 0),
        9,
      );
  });
});

describe('rows of lanes', () => {
  const kindsFor = fc.array(
    fc.record({
      lengthMm: fc.integer({ min: 2, max: 7 }),
      widthMm: fc.integer({ min: 2, max: 7 }),
      mayTurn: fc.boolean(),
      firstOff: fc.integer({ min: 1, max: 2 }),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    { minLength: 1, maxLength: 3 },
  );

  it('use as much of the floor as trying all sets of lanes does, and take of a later stop only what the earlier one leaves room for', () => {
    let compared = 0;
    fc.assert(
      fc.property(kindsFor, fc.integer({ min: 6, max: 12 }), (given, widthMm) => {
        const { pieces } = caseOf(
          {},
          given.flatMap(({ count, ...each }) => Array.from({ length: count }, () => each)),
        );
        const kinds = rowKinds(towersOf(pieces), new Set(), priceOf, { lengthMm: 30, widthMm, heightMatters: false });
        const lanes = lanesOf(kinds, 14);
        const left = Int16Array.from(kinds, (kind) => kind.towers.length);
        const isAllowed = (used: readonly number[]) => {
          const last = Math.max(...kinds.map((kind, index) => (used[index]! > 0 ? kind.level : 0)));
          return kinds.every((kind, index) => used[index]! <= left[index]! && (kind.level >= last || used[index] === left[index]));
        };
        const best = new Map<number, number>();
        const grow = (from: number, room: number, used: number[], value: number, depth: number): void => {
          if (value > 0 && isAllowed(used)) best.set(depth, Math.max(best.get(depth) ?? 0, value));
          for (let index = from; index < lanes.length; index++) {
            const lane = lanes[index]!;
            if (lane.across > room) continue;
            const more = [...used];
            for (const kind of lane.kinds) more[kind]!++;
            if (more.every((count, kind) => count <= left[kind]!))
              grow(index, room - lane.across, more, value + lane.value, Math.max(depth, lane.along));
          }
        };
        grow(
          0,
          widthMm,
          kinds.map(() => 0),
          0,
          0,
        );
        const patterns = new RowPatterns(kinds, lanes, 1e6, 3, new Work()).best(left, () => ({ widthMm, heightMm: 10 }));
        for (const { lanes: own, depth, lost } of patterns) {
          const used = kinds.map((_, kind) => own.flatMap((lane) => lane.kinds).filter((each) => each === kind).length);
          expect(isAllowed(used)).toBe(true);
          expect(own.reduce((sum, lane) => sum + lane.across, 0)).toBeLessThanOrEqual(widthMm);
          expect(depth).toBe(Math.max(...own.map((lane) => lane.along)));
          expect(lost).toBeCloseTo(depth - own.reduce((sum, lane) => sum + lane.value, 0), 9);
        }
        for (const [depth, value] of best) {
          compared++;
          expect(Math.max(...patterns.filter((each) => each.depth <= depth).map((each) => each.depth - each.lost))).toBeGreaterThanOrEqual(
            value - 1e-9,
          );
        }
      }),
      { numRuns: 80, seed: 3 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('stand only where there is room, and with few nodes to look at are still rows', () => {
    const { pieces } = caseOf(
      {},
      [{ heightMm: 5 }, { heightMm: 5 }, {}, {}].map((each, index) => ({ ...each, lengthMm: 4 + index })),
    );
    const kinds = rowKinds(towersOf(pieces), new Set(), priceOf, { lengthMm: 30, widthMm: 12, heightMatters: true });
    const left = Int16Array.from(kinds, () => 1);
    const work = new Work();
    const patterns = new RowPatterns(kinds, lanesOf(kinds, 20), 3, 3, work);
    const low = patterns.best(left, () => ({ widthMm: 12, heightMm: 4 }));
    expect(low.length).toBeGreaterThan(0);
    for (const { lanes } of low) expect(Math.max(...lanes.map((lane) => lane.high))).toBe(3);
    expect(patterns.best(left, (depth) => (depth > 5 ? undefined : { widthMm: 12, heightMm: 10 })).every((each) => each.depth <= 5)).toBe(
      true,
    );
    expect(patterns.best(left, () => undefined)).toEqual([]);
    expect(work.steps).toBeLessThan(60);
  });
});

describe('sides', () => {
  it('are chosen so that the load is as level as the best of all choices, within a millimetre, slices large beside small', () => {
    const { truck, pieces } = caseOf({}, [{ massKg: 40 }, { massKg: 20 }, { massKg: 30, firstOff: 2 }, { massKg: 5, firstOff: 2 }]);
    const ways = pieces.map((piece, index) => [0, 8].map((y) => [asStanding(piece, 5 * index, y)]));
    const tilt = (placed: readonly Placed[], stage: number) => {
      const on = placed.filter((each) => each.piece.firstOff > stage);
      const mass = on.reduce((sum, each) => sum + each.piece.massKg, 0);
      return Math.abs(on.reduce((sum, each) => sum + each.piece.massKg * (each.y + each.across / 2 - 6), 0)) / mass;
    };
    const whole = chooseSides(ways, [], truck, false);
    // 40 and 5 on one side, 20 and 30 on the other: 5 of 95 kg, 4 mm off.
    expect(tilt(whole, -1)).toBeLessThanOrEqual((4 * 5) / 95 + 1);
    const after = chooseSides(ways, [], truck, true);
    expect(Math.max(tilt(after, -1), tilt(after, 0))).toBeLessThanOrEqual(4 * (25 / 35) + 1);
    // What is kept at one wall is weighed up by what is placed; what shifts the load by less than half a millimetre stays.
    const kept = [asStanding(caseOf({}, [{ massKg: 100 }]).pieces[0]!, 25, 0)];
    expect(chooseSides(ways, kept, truck, false).map((each) => each.y)).toEqual([8, 8, 8, 0]);
  });
});
