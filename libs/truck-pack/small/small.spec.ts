import { seededRandom } from '#kernel';
import { type Piece, type Truck, type TruckCase, readTruckCase } from '../case/index.js';
import { solveSmall } from './solve-small.js';

const truck: Truck = { id: 'T1', innerLengthMm: 9, innerWidthMm: 5, innerHeightMm: 5, blocked: [] };

const caseOf = (pieces: readonly Partial<Piece>[], of: Truck = truck): TruckCase => {
  const read = readTruckCase({ trucks: [of], pieces, minSupport: 1 });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};
const madeCase = (seed: number, count: number): TruckCase => {
  const random = seededRandom(seed);
  const side = () => 1 + Math.floor(3 * random());
  const pieces = Array.from({ length: count }, (_, index) => ({
    id: `P${index}`,
    lengthMm: side(),
    widthMm: side(),
    heightMm: 1,
    mayTurn: random() < 0.7,
    floorOnly: true,
    firstOff: Math.floor(3 * random()),
  }));
  return caseOf(pieces);
};

interface Body {
  readonly x: number;
  readonly y: number;
  readonly l: number;
  readonly w: number;
  readonly first: number;
}

/** Of every place on whole units, every turn and every piece: the least length at which all stand apart and none is in the way of one that comes off earlier. */
function shortestOfAll({ pieces, trucks }: TruckCase): number {
  const { innerWidthMm, innerLengthMm } = trucks[0]!;
  let best = innerLengthMm + 1;
  const put = (index: number, bodies: readonly Body[], end: number): void => {
    if (end >= best) return;
    const piece = pieces[index];
    if (!piece) return void (best = end);
    const turns = piece.mayTurn
      ? [
          [piece.lengthMm, piece.widthMm],
          [piece.widthMm, piece.lengthMm],
        ]
      : [[piece.lengthMm, piece.widthMm]];
    for (const [l, w] of turns as [number, number][])
      for (let x = 0; x + l < best; x++)
        for (let y = 0; y + w <= innerWidthMm; y++) {
          const body: Body = { x, y, l, w, first: piece.firstOff };
          if (bodies.every((other) => getOn(body, other))) put(index + 1, [...bodies, body], Math.max(end, x + l));
        }
  };
  put(0, [], 0);
  return best;
}

function getOn(a: Body, b: Body): boolean {
  if (a.y + a.w <= b.y || b.y + b.w <= a.y) return true;
  if (a.x + a.l <= b.x) return a.first >= b.first;
  return b.x + b.l <= a.x && b.first >= a.first;
}

describe('the shortest load of a few pieces', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('is that of every place tried, seed %i', (seed) => {
    const problem = madeCase(seed, 4);
    const answer = solveSmall(problem, 13, 100_000);
    expect(answer.usedLengthMm).toBe(shortestOfAll(problem));
    expect(answer.bound).toBe(answer.usedLengthMm);
  });

  it('stands apart, in the unloading order, where it says', () => {
    const problem = madeCase(11, 7);
    const answer = solveSmall(problem, 40, 300_000);
    const byId = new Map(problem.pieces.map((each) => [each.id, each]));
    const bodies = answer.placements!.map(({ id, xMm: x, yMm: y, turned }): Body => {
      const { lengthMm, widthMm, firstOff: first } = byId.get(id)!;
      return turned ? { x, y, l: widthMm, w: lengthMm, first } : { x, y, l: lengthMm, w: widthMm, first };
    });
    expect(bodies).toHaveLength(7);
    expect(bodies.every((a, index) => bodies.slice(index + 1).every((b) => getOn(a, b)))).toBe(true);
    expect(Math.max(...bodies.map((each) => each.x + each.l))).toBe(answer.usedLengthMm);
  });

  it('is not found below a load that is the shortest already, and that is proved', () => {
    const problem = madeCase(3, 4);
    const least = shortestOfAll(problem);
    expect(solveSmall(problem, least, 100_000)).toMatchObject({ placements: undefined, usedLengthMm: least, bound: least });
  });

  it('says no more than it knows when its nodes are used up', () => {
    const problem = madeCase(11, 7);
    const whole = solveSmall(problem, 40, 300_000);
    const cut = solveSmall(problem, 40, 5);
    expect(cut.bound).toBeLessThanOrEqual(whole.usedLengthMm);
    expect(cut.usedLengthMm).toBeGreaterThanOrEqual(whole.usedLengthMm);
  });

  it('knows no stacks', () => {
    expect(() => solveSmall(caseOf([{ id: 'P', lengthMm: 1, widthMm: 1, heightMm: 1 }]), 9, 10)).toThrow(RangeError);
  });
});
