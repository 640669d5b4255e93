import { boundOf, readTruckCase, type Judged, type TruckCase, type TruckCaseData, verifyTruckPack } from '#truck-pack';
import { type PublishedTour, publishedLoads } from './published-loads.js';

const all = publishedLoads.flatMap((load) => load.tours.map((tour, index) => ({ ...load, tour, name: `${load.name}, tour ${index + 1}` })));

function caseOf(load: (typeof all)[number], visits: readonly number[] = load.tour.visits): TruckCase {
  const read = readTruckCase({
    trucks: [
      {
        id: 'V',
        innerLengthMm: load.length,
        innerWidthMm: load.width,
        innerHeightMm: load.height,
        payloadKg: load.massCapacity,
      },
    ],
    pieces: load.tour.items.map((item, index) => ({
      id: `I${index}`,
      lengthMm: item.length,
      widthMm: item.width,
      heightMm: item.height,
      massKg: item.mass,
      mayTurn: true,
      firstOff: visits.indexOf(item.customer) + 1,
    })),
    minSupport: 0.75,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const alongOf = (item: PublishedTour['items'][number]): number => (item.turned ? item.width : item.length);
const acrossOf = (item: PublishedTour['items'][number]): number => (item.turned ? item.length : item.width);

function answerOf(load: (typeof all)[number]): Judged {
  const { items } = load.tour;
  const massKg = items.reduce((sum, item) => sum + item.mass, 0);
  return {
    status: 'feasible',
    trucks: [
      {
        id: 'V',
        placements: items.map((item, index) => ({ id: `I${index}`, xMm: item.x, yMm: item.y, zMm: item.z, turned: item.turned })),
        loadingOrder: loadingOrder(load.tour).map((index) => `I${index}`),
        usedLengthMm: items.reduce((far, item) => Math.max(far, item.x + alongOf(item)), 0),
        massKg,
        sideOffsetMm: items.reduce((sum, item) => sum + item.mass * (item.y + acrossOf(item) / 2 - load.width / 2), 0) / massKg,
        axles: {},
      },
    ],
    leftOver: [],
    bound: { trucks: 0, usedLengthMm: 0 },
  };
}

/** Whatever has nothing waiting under it or deeper in its lane goes in next. */
function loadingOrder({ items }: PublishedTour): number[] {
  const meets = (a: number, la: number, b: number, lb: number) => a < b + lb && b < a + la;
  const before = (a: number, b: number) => {
    const [p, q] = [items[a]!, items[b]!];
    const inLane = meets(p.y, acrossOf(p), q.y, acrossOf(q));
    const isAhead = q.x >= p.x + alongOf(p) && meets(p.z, p.height, q.z, q.height);
    return inLane && (isAhead || (q.z === p.z + p.height && meets(p.x, alongOf(p), q.x, alongOf(q))));
  };
  const waiting = new Set(items.keys());
  const order: number[] = [];
  while (waiting.size > 0) {
    const next = [...waiting].find((index) => [...waiting].every((other) => other === index || !before(other, index)));
    if (next === undefined) throw new Error('no order');
    order.push(next);
    waiting.delete(next);
  }
  return order;
}

const codes = (problem: TruckCaseData, answer: Judged) => [...new Set(verifyTruckPack(problem, answer).map((each) => each.code))];

describe('published loads for several drops, proven optimal', () => {
  it('are all there: five instances', () => expect(publishedLoads.map((load) => load.name)).toHaveLength(5));

  it.each(all.map((load) => [load.name, load] as const))('%s is accepted', (_name, load) => {
    expect(verifyTruckPack(caseOf(load), answerOf(load))).toEqual([]);
  });

  it.each(all.map((load) => [load.name, load] as const))('%s is no shorter than the bound on its length', (_name, load) => {
    const problem = caseOf(load);
    const bound = boundOf(problem, problem.pieces);
    expect(bound.usedLengthMm).toBeLessThanOrEqual(answerOf(load).trucks[0]!.usedLengthMm);
    expect(bound.trucks).toBe(1);
  });

  it.each(all.map((load) => [load.name, load] as const))('%s is refused once corrupted', (_name, load) => {
    const problem = caseOf(load);
    const good = answerOf(load);
    const truck = good.trucks[0]!;
    const moved = (by: { xMm?: number; yMm?: number; zMm?: number }) =>
      truck.placements.map((_, at) => {
        const placements = truck.placements.map((each, index) =>
          index === at ? { ...each, xMm: each.xMm + (by.xMm ?? 0), yMm: each.yMm + (by.yMm ?? 0), zMm: each.zMm + (by.zMm ?? 0) } : each,
        );
        return codes(problem, { ...good, trucks: [{ ...truck, placements }] });
      });
    for (const found of moved({ zMm: 1 })) expect(found).toContain('support');
    for (const found of moved({ yMm: load.width })) expect(found).toContain('outside');
    for (const found of moved({ xMm: -load.length })) expect(found).toContain('outside');
    const heap = truck.placements.map((each) => ({ ...each, xMm: 0, yMm: 0, zMm: 0 }));
    if (heap.length > 1) expect(codes(problem, { ...good, trucks: [{ ...truck, placements: heap }] })).toContain('overlap');
    expect(codes(problem, { ...good, trucks: [{ ...truck, placements: truck.placements.slice(1) }] })).toContain('count');
    const light = { ...problem, trucks: [{ ...problem.trucks[0]!, payloadKg: truck.massKg - 1 }] };
    expect(codes(light, good)).toContain('limit');
  });

  it('with visits turned round are refused in every instance: somebody stands in the way', () => {
    for (const { name } of publishedLoads) {
      const tours = all.filter((load) => load.name.startsWith(name));
      const found = tours.flatMap((load) => codes(caseOf(load, [...load.tour.visits].reverse()), answerOf(load)));
      expect(new Set(found)).toEqual(new Set(['order']));
    }
  });

  it('in which nothing may bear anything are refused in every instance: all of them stack', () => {
    for (const { name } of publishedLoads) {
      const found = all
        .filter((load) => load.name.startsWith(name))
        .flatMap((load) => {
          const problem = caseOf(load);
          return codes({ ...problem, pieces: problem.pieces.map((each) => ({ ...each, maxOnTopKg: 0 })) }, answerOf(load));
        });
      expect(new Set(found)).toEqual(new Set(['bears']));
    }
  });
});
