import { loadIntegerProgramSolver } from '#runtime';
import { demoTour } from '../../../tests/support/demo-tour.js';
import { type PackPlan, makePackPlan } from '#pack-plan';
import { checkPlan } from './check-plan.js';

describe('the second opinion on a plan', () => {
  const file = demoTour();
  let plan: PackPlan;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    plan = makePackPlan(file, file.tour.shows[0]!.id, { now: () => performance.now(), integerProgram, timeLimitSeconds: 20 });
  });

  it('agrees with the demo', () => {
    expect(checkPlan(file, plan)).toEqual([]);
  });

  const bent: Record<string, (copy: any) => void> = {
    'a box in two places': (copy) => (copy.carts.loads[1].boxes[0].serial = copy.carts.loads[0].boxes[0].serial),
    'a cart for two loads': (copy) => (copy.carts.loads[1].cart = copy.carts.loads[0].cart),
    'two boxes of a load exchanged': (copy) => copy.carts.loads[0].boxes.push(copy.carts.loads[0].boxes.shift()),
    'a move left out': (copy) => copy.carts.moves.pop(),
    'one move fewer said than listed': (copy) => (copy.carts.boxMoves -= 1),
    'a hang 1 kg lighter': (copy) => (copy.picks.hangs[0].massKg -= 1),
    'a reaction 1 N higher': (copy) => (copy.picks.hangs[0].picks[0].reactionN += 1),
    'a hook load without its steel': (copy) => (copy.picks.hangs[0].picks[0].hookLoadKg -= copy.picks.hangs[0].picks[0].belowHookKg),
    'a pin too few': (copy) => (copy.hardware.lines.find((each: any) => /pin/.test(each.item)).fitted -= 1),
    'a hoist too few': (copy) => (copy.hardware.lines.find((each: any) => each.item === 'hoist').fitted -= 1),
    'a cart that rides in no truck': (copy) => copy.truck.trucks[0].placements.pop(),
    'a truck 1 kg lighter': (copy) => (copy.truck.trucks[0].massKg -= 1),
    'a piece through the wall': (copy) => (copy.truck.trucks[0].placements[0].yMm = -1),
    'a hoist that nobody judges': (copy) =>
      copy.due.items.splice(
        copy.due.items.findIndex((each: any) => each.where !== 'not in this plan'),
        1,
      ),
    'a planned box that would not be booked': (copy) =>
      (copy.uses = copy.uses.filter((each: any) => each.item !== copy.carts.loads[0].boxes[0].serial)),
    'an overdue hoist without a stop': (copy) => (copy.due.items.find((each: any) => each.where !== 'not in this plan').state = 'overdue'),
  };

  it.each(Object.entries(bent))('does not agree with %s', (_, bend) => {
    const copy = structuredClone(plan);
    bend(copy);
    expect(checkPlan(file, copy).length).toBeGreaterThan(0);
  });

  it('sees a cart that another tour holds down to the first box of that tour, and no other cart in part', async () => {
    const holdBy = { tour: 'Winter Run', tourId: 'winter-run', from: file.tour.prepFrom, to: file.tour.returnTo };
    const held = demoTour((copy) => copy.bookings.push({ item: 'K01', ...holdBy }, { item: 'P-002', ...holdBy }));
    const integerProgram = await loadIntegerProgramSolver();
    const made = makePackPlan(held, held.tour.shows[0]!.id, { now: () => performance.now(), integerProgram, timeLimitSeconds: 20 });
    const before = made.carts.floorBefore.carts.find((each) => each.cart === 'K01')!;
    expect(before).toMatchObject({ boxes: ['P-004', 'P-003'], givesOnly: true });
    expect(checkPlan(held, made)).toEqual([]);
    const bent = structuredClone(made) as any;
    bent.carts.floorBefore.carts.find((each: any) => each.cart === 'K01').boxes.pop();
    expect(checkPlan(held, bent)).toMatchObject([{ check: 'box moves', subject: 'K01' }]);
    expect(checkPlan(file, made)).not.toEqual([]);
  });
});
