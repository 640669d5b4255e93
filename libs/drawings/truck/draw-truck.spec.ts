import type { Placement, TruckResultOne } from '#pack-plan';
import { type Node, drawTruckPlan } from '#drawings';

const at = (id: string, yMm: number): Placement => ({
  id,
  label: id,
  fact: { isCase: true, inside: [] },
  xMm: 0,
  yMm,
  zMm: 0,
  turned: false,
  alongMm: 1000,
  acrossMm: 600,
  heightMm: 800,
  massKg: 100,
  firstOff: 1,
  group: null,
  tag: null,
});

const truck = (placements: readonly Placement[]): TruckResultOne => ({
  id: 'T1',
  model: 'Box truck',
  innerLengthMm: 6000,
  innerWidthMm: 2400,
  innerHeightMm: 2400,
  doorHeightMm: 2300,
  placements,
  rows: [],
  loadingOrder: placements.map((each) => each.id),
  unloadingOrder: [],
  usedLengthMm: 1000,
  massKg: 200,
  payloadKg: 8000,
  sideOffsetMm: 0,
  axles: [],
  working: { terms: [], rule: '', source: '' },
});

const rectangles = (drawn: Node) =>
  drawn.children.filter((each): each is Node => typeof each !== 'string' && String(each.attributes.class).startsWith('piece'));

describe('a truck from above', () => {
  it('has the left wall, as seen by someone who looks in from the door, at the bottom: nose left, door right, seen from above', () => {
    const [left, right] = rectangles(drawTruckPlan(truck([at('L', 0), at('R', 1800)])));
    expect(left!.attributes.y).toBeGreaterThan(right!.attributes.y as number);
  });

  it('marks what stays where it stands by its edge, not by a colour', () => {
    const drawn = rectangles(drawTruckPlan({ ...truck([at('L', 0), at('R', 1800)]), kept: [{ piece: 'R', loaded: true }] }));
    expect(drawn.map((each) => each.attributes.class)).toEqual(['piece', 'piece kept']);
  });
});
