import fc from 'fast-check';
import { readTruckCase } from '../case/index.js';
import type { Placed } from './load-space.js';
import { asPlaced, getOn, keptIn, loadingOrderOf } from './loading-order.js';

const read = readTruckCase({
  trucks: [{ id: 'T', innerLengthMm: 100, innerWidthMm: 10, innerHeightMm: 10 }],
  pieces: Array.from({ length: 6 }, (_, index) => ({ id: `P${index}`, lengthMm: 4, widthMm: 2, heightMm: 3, firstOff: index % 3 })),
});
if (!read.ok) throw new Error('no case');
const { pieces, trucks } = read.value;

const placed = (index: number, x: number, y: number, z: number, along = 4, across = 2, high = 3): Placed => ({
  piece: pieces[index]!,
  x,
  y,
  z,
  along,
  across,
  high,
  turned: false,
});

const meets = (a: number, lengthA: number, b: number, lengthB: number) => a < b + lengthB && b < a + lengthA;
const alongside = (a: Placed, b: Placed) => meets(a.y, a.across, b.y, b.across) && meets(a.z, a.high, b.z, b.high);

/** Whether the piece can still go in, straight from the door, when these are inside: nothing stands in its lane behind it, all that it stands on is there. */
function canGoIn(each: Placed, inside: readonly Placed[], all: readonly Placed[], loaded: ReadonlySet<string>): boolean {
  const wayIsFree = inside.every((other) => !(alongside(each, other) && other.x >= each.x + each.along));
  const under = all.filter(
    (other) =>
      other.z + other.high === each.z &&
      meets(other.x, other.along, each.x, each.along) &&
      meets(other.y, other.across, each.y, each.across),
  );
  const isTurn = loaded.has(each.piece.id) || all.every((other) => !loaded.has(other.piece.id) || inside.includes(other));
  return wayIsFree && isTurn && under.every((other) => inside.includes(other));
}

/** Of all orders in which the load can go in, the first by how far from the nose each stands, lower and further left first of equals. */
function firstOrder(all: readonly Placed[], loaded: ReadonlySet<string>): readonly Placed[] | undefined {
  const sorted = [...all].sort((a, b) => a.x - b.x || a.z - b.z || a.y - b.y);
  const ranked = [...sorted.filter((each) => loaded.has(each.piece.id)), ...sorted.filter((each) => !loaded.has(each.piece.id))];
  const on = (inside: readonly Placed[]): readonly Placed[] | undefined => {
    if (inside.length === all.length) return inside;
    for (const each of ranked) {
      if (inside.includes(each) || !canGoIn(each, inside, all, loaded)) continue;
      const order = on([...inside, each]);
      if (order) return order;
    }
    return undefined;
  };
  return on([]);
}

describe('a loading order', () => {
  it('is the first of all in which each piece can go in, where there is one', () => {
    const coordinate = fc.integer({ min: 0, max: 6 });
    const boxes = fc.array(
      fc.tuple(coordinate, coordinate, fc.integer({ min: 0, max: 2 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })),
      {
        minLength: 2,
        maxLength: 6,
      },
    );
    let [some, none] = [0, 0];
    fc.assert(
      fc.property(boxes, fc.subarray(['P0', 'P1', 'P2', 'P3']), (each, first) => {
        const all = each.map(([x, y, z, along, across], index) => placed(index, x, y, 3 * z, along, across));
        const isApart = all.every((a, i) => all.every((b, j) => i >= j || !(alongside(a, b) && meets(a.x, a.along, b.x, b.along))));
        fc.pre(isApart);
        const loaded = new Set(first);
        const order = firstOrder(all, loaded);
        if (order) some++;
        else none++;
        expect(loadingOrderOf(all, loaded)?.map((own) => own.piece.id)).toEqual(order?.map((own) => own.piece.id));
      }),
      { numRuns: 400, seed: 13 },
    );
    expect(some).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(30);
  });

  it('does without anything in the way beside, above or where pieces only touch', () => {
    const far = placed(0, 10, 0, 0);
    const names = (...others: Placed[]) => loadingOrderOf([far, ...others], new Set(['P0']))?.map((each) => each.piece.id);
    // The far one is loaded first: what stands in its lane nearer the nose cannot go in any more.
    expect(names(placed(1, 6, 0, 0))).toBeUndefined();
    expect(names(placed(1, 6, 1, 2))).toBeUndefined();
    expect(names(placed(1, 6, 2, 0))).toEqual(['P0', 'P1']);
    expect(names(placed(1, 6, 0, 3))).toEqual(['P0', 'P1']);
    expect(names(placed(1, 14, 0, 0))).toEqual(['P0', 'P1']);
  });
});

describe('two pieces', () => {
  const none = new Set<string>();
  // By `firstOff`: P0 comes off first, then P1, then P2.
  it.each<[string, Placed, Placed, boolean]>([
    ['apart across', placed(0, 0, 0, 0), placed(2, 10, 2, 0), true],
    ['apart in height', placed(0, 0, 0, 0), placed(2, 10, 0, 3), true],
    ['in one place', placed(0, 0, 0, 0), placed(2, 3, 1, 2), false],
    ['the one behind first off', placed(2, 0, 0, 0), placed(0, 4, 0, 0), true],
    ['the one behind last off', placed(0, 0, 0, 0), placed(2, 4, 0, 0), false],
    ['of one stop', placed(0, 0, 0, 0), placed(3, 4, 0, 0), true],
    ['the fixed one ahead, last off', placed(0, 4, 0, 0), placed(2, 0, 0, 0), true],
    ['the fixed one ahead, first off', placed(2, 4, 0, 0), placed(0, 0, 0, 0), false],
    ['the fixed one ahead, of one stop', placed(3, 4, 0, 0), placed(0, 0, 0, 0), true],
  ])('get on or not: %s', (_what, each, fixed, wanted) => {
    expect(getOn(each, fixed, none, false)).toBe(wanted);
  });

  it('do not get on where the one would have to pass what is loaded already, nor in one place, whatever is waived', () => {
    const [ahead, behind] = [placed(2, 0, 0, 0), placed(0, 4, 0, 0)];
    expect(getOn(ahead, behind, none, true)).toBe(false);
    expect(getOn(behind, ahead, none, true)).toBe(true);
    expect(getOn(ahead, behind, new Set(['P2']), true)).toBe(false);
    const [first, last] = [placed(0, 0, 0, 0), placed(2, 4, 0, 0)];
    expect([
      getOn(first, last, new Set(['P0']), false),
      getOn(first, last, new Set(['P2']), false),
      getOn(first, last, new Set(['P4']), false),
    ]).toEqual([true, true, false]);
    expect(getOn(first, placed(2, 3, 0, 0), new Set(['P0', 'P2']), false)).toBe(false);
  });
});

it('what is kept is read where it stands, turned or not, lowest first, then from the nose and the left', () => {
  const at = (id: string, xMm: number, yMm: number, zMm: number, truck = 'T', turned = false) => ({ truck, id, xMm, yMm, zMm, turned });
  const kept = [at('P0', 4, 0, 3), at('P1', 8, 2, 0), at('P2', 8, 0, 0, 'T', true), at('P3', 4, 0, 0), at('P4', 0, 0, 0, 'other')];
  const found = keptIn(trucks[0]!, new Map(pieces.map((each) => [each.id, each])), kept);
  expect(found.map((each) => each.piece.id)).toEqual(['P3', 'P2', 'P1', 'P0']);
  expect(found.map(({ along, across }) => [along, across])).toEqual([
    [4, 2],
    [2, 4],
    [4, 2],
    [4, 2],
  ]);
  expect(asPlaced(pieces[0]!, { id: 'P0', xMm: 1, yMm: 2, zMm: 3, turned: true })).toEqual({
    piece: pieces[0],
    x: 1,
    y: 2,
    z: 3,
    along: 2,
    across: 4,
    high: 3,
    turned: true,
  });
});
