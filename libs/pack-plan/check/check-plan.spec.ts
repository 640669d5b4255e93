import { loadIntegerProgramSolver } from '#runtime';
import { demoTour } from '../../../tests/support/demo-tour.js';
import { type PackPlan, makePackPlan } from '#pack-plan';
import { checkPlan } from './check-plan.js';

describe('the second opinion on a plan', () => {
  const file = demoTour();
  let plan: PackPlan;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    plan = makePackPlan(file, file.tour.shows[0]!.id, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
  });

  it('agrees with the demo', () => {
    expect(checkPlan(file, plan)).toEqual([]);
  });

  const loads = (copy: any) => copy.carts.loads;
  const pins = (copy: any) => copy.hardware.lines.find((each: any) => /pin/.test(each.item));
  const judged = (copy: any) => copy.due.items.find((each: any) => each.where !== 'not in this plan');

  /** What is bent -> how, and what must be said of it: `check: what was found`. */
  const bent: Record<string, [bend: (copy: any) => unknown, found: RegExp]> = {
    'a box in two places': [(copy) => (loads(copy)[1].boxes[0].serial = loads(copy)[0].boxes[0].serial), /^carts: it serves .* and /m],
    'a cart for two loads': [(copy) => (loads(copy)[1].cart = loads(copy)[0].cart), /^carts: it serves .* and /m],
    'two boxes of a load exchanged': [
      (copy) => loads(copy)[0].boxes.push(loads(copy)[0].boxes.shift()),
      /^carts: its loads hold the positions 2, /m,
    ],
    'a position left out': [(copy) => loads(copy)[0].boxes.pop(), /^carts: its loads hold the positions/m],
    'a place with another splay': [(copy) => (loads(copy)[0].boxes[1].splayDeg += 1), /^carts: position \d+ is not as designed/m],
    'a place for another model': [(copy) => (loads(copy)[0].boxes[0].model = 'none'), /^carts: position \d+ is not as designed/m],
    'a box that is not on file': [(copy) => (loads(copy)[0].boxes[0].serial = 'nobody'), /^carts: it is no .* on file/m],
    'a cart that is not on file': [(copy) => (loads(copy)[0].cart = 'nobody'), /^carts: it is no cart on file/m],
    'a box where a cart belongs': [(copy) => (loads(copy)[0].cart = loads(copy)[1].boxes[0].serial), /^carts: it is no cart on file/m],
    'an empty place that nobody mentions': [
      (copy) => (loads(copy)[0].boxes[0].serial = null),
      /^carts: \w+, with 1 of \d+ places empty\n(.*\n)*carts: 1 places are empty and nothing says stop/m,
    ],
    'a plan called infeasible that is whole': [(copy) => (copy.carts.status = 'infeasible'), /^carts: infeasible, with 0 of/m],
    'a move left out': [(copy) => copy.carts.moves.pop(), /^box moves: .* in the end/m],
    'a move from where the box is not': [(copy) => (copy.carts.moves[0].box = 'nobody'), /^box moves: nobody is not on top of/m],
    'a move to where there is no cart': [(copy) => (copy.carts.moves.at(-1).to = 'nowhere'), /^box moves: nowhere has no room/m],
    'a floor that is not that of the register': [
      (copy) => copy.carts.floorBefore.carts[0].boxes.push('nobody'),
      /^box moves: it does not stand as/m,
    ],
    'one move fewer said than listed': [(copy) => (copy.carts.boxMoves -= 1), /^box moves: \d+ moves are said, \d+ listed/m],
    'a bound above the moves': [(copy) => (copy.carts.bound = copy.carts.boxMoves + 1), /^box moves: the bound \d+ is above \d+ moves/m],
    'fewest moves without a bound': [
      (copy) => Object.assign(copy.carts, { status: 'optimal', bound: copy.carts.boxMoves - 1 }),
      /^box moves: called fewest without/m,
    ],
    'a load with boxes and no cart': [(copy) => (loads(copy)[0].cart = null), /^box moves: it has boxes and no cart/m],
    'a hang 1 kg lighter': [(copy) => (copy.picks.hangs[0].massKg -= 1), /^loads: the mass is/m],
    'a list of masses that is 1 kg short': [
      (copy) => (copy.picks.hangs[0].masses[0].massKg -= 1),
      /^loads: the sum of the list of masses/m,
    ],
    'a reaction 1 N higher': [(copy) => (copy.picks.hangs[0].picks[0].reactionN += 1), /^loads: the sum of the reactions/m],
    'a hook load without its steel': [
      (copy) => (copy.picks.hangs[0].picks[0].hookLoadKg -= copy.picks.hangs[0].picks[0].belowHookKg),
      /^loads: the hook load of hole/m,
    ],
    'picks in another order': [(copy) => copy.picks.hangs[0].picks.reverse(), /^loads: its picks are not those of the design/m],
    'a hang left out': [(copy) => copy.picks.hangs.pop(), /^loads: it stands 0 times.*\n(.*\n)*loads: \d hangs of \d/m],
    'a hang twice': [(copy) => copy.picks.hangs.push(copy.picks.hangs[0]), /^loads: it stands 2 times/m],
    'another box in the hang than in its cart': [
      (copy) => (copy.picks.hangs[0].boxes[0].serial = 'nobody'),
      /^loads: position 1 is another box/m,
    ],
    'a hang that says nothing of its heights': [(copy) => (copy.picks.hangs[0].room = null), /^room: it says nothing/m],
    'a trim that measures to something else': [(copy) => (copy.picks.hangs[0].room.trimTo = 'top'), /^room: trim measures to the top/m],
    'a mark of the trim height that is not the grid': [(copy) => (copy.picks.hangs[0].room.markZMm = 1), /^room: the mark of the trim/m],
    'a hang that ends 1 mm higher': [(copy) => (copy.picks.hangs[0].room.lowestHeightMm += 1), /^room: the lowest point is/m],
    'a hole 1 mm higher': [(copy) => (copy.picks.hangs[0].room.picks[0].holeHeightMm += 1), /^room: the height of hole/m],
    'a millimetre of headroom too many': [(copy) => (copy.picks.hangs[0].room.picks[0].leftMm += 1), /^room: what is left at hole/m],
    'a hang without headroom and without a word': [
      (copy) => (copy.picks.hangs[0].room.picks[0].leftMm = -1),
      /^room: hole C has -1 mm left and nothing says so/m,
    ],
    'a hang in the floor without a word': [
      (copy) => (copy.picks.hangs[0].room.lowestHeightMm = -1),
      /^room: it reaches down to -1 mm and nothing says so/m,
    ],
    'a pin too few': [(copy) => (pins(copy).fitted -= 1), /^hardware: \d+ fitted, counted/m],
    'a line of pins left out': [
      (copy) => (copy.hardware.lines = copy.hardware.lines.filter((each: any) => each !== pins(copy))),
      /^hardware: none fitted, counted/m,
    ],
    'a line of pins twice': [(copy) => copy.hardware.lines.push(pins(copy)), /^hardware: \d+ and \d+ fitted, counted/m],
    'a hoist too few': [
      (copy) => (copy.hardware.lines.find((each: any) => each.item === 'hoist').fitted -= 1),
      /^hardware: \d+ fitted, counted/m,
    ],
    'pins that are missing without a word': [
      (copy) => {
        copy.findings = copy.findings.filter((each: any) => each.section !== 'hardware' && each.code !== 'item-missing');
        pins(copy).missing = 1;
      },
      /^hardware: 1 missing and nothing says so/m,
    ],
    'a cart that rides in no truck': [(copy) => copy.truck.trucks[0].placements.pop(), /^trucks: it is placed or left over 0 times/m],
    'a piece that rides twice': [
      (copy) => copy.truck.trucks[0].placements.push(copy.truck.trucks[0].placements[0]),
      /^trucks: it stands in two places/m,
    ],
    'a truck that is none of the tour': [(copy) => (copy.truck.trucks[0].id = 'nobody'), /^trucks: it is no truck of the tour/m],
    'a truck 1 kg lighter': [(copy) => (copy.truck.trucks[0].massKg -= 1), /^trucks: [\d.]+ kg are said, [\d.]+ added up/m],
    'a loading order without its last piece': [(copy) => copy.truck.trucks[0].loadingOrder.pop(), /^trucks: the loading order is not/m],
    'an unloading order without its last piece': [
      (copy) => copy.truck.trucks[0].unloadingOrder.pop(),
      /^trucks: the unloading order is not/m,
    ],
    'a row left out': [(copy) => copy.truck.trucks[0].rows.pop(), /^trucks: its rows do not hold what it holds/m],
    ...Object.fromEntries(
      (['xMm', 'yMm', 'zMm'] as const).flatMap((axis) => [
        [
          `a piece below 0 in ${axis}`,
          [(copy: any) => (copy.truck.trucks[0].placements[0][axis] = -1), /^trucks: it does not stand inside/m],
        ],
        [
          `a piece beyond the end in ${axis}`,
          [(copy: any) => (copy.truck.trucks[0].placements[0][axis] = 20_000), /^trucks: it does not stand inside/m],
        ],
      ]),
    ),
    'freight left over without a word': [
      (copy) => {
        const [first] = copy.truck.trucks[0].placements.splice(0, 1);
        copy.truck.leftOver.push({ id: first.id });
        copy.findings = copy.findings.filter((each: any) => each.section !== 'truck');
      },
      /^trucks: something is left over and nothing says so/m,
    ],
    'a hoist that nobody judges': [
      (copy) => copy.due.items.splice(copy.due.items.indexOf(judged(copy)), 1),
      /^dates: a rule wants it examined and nothing judges it/m,
    ],
    'a planned box that would not be booked': [
      (copy) => (copy.uses = copy.uses.filter((each: any) => each.item !== loads(copy)[0].boxes[0].serial)),
      /^bookings: it is planned and would not be booked/m,
    ],
    'a booking of what is not on file': [(copy) => copy.uses.push({ ...copy.uses[0], item: 'nobody' }), /^dates: it is not on file/m],
    'an overdue hoist without a stop': [
      (copy) => (judged(copy).state = 'overdue'),
      /^dates: it is overdue, planned, and nothing says stop/m,
    ],
    'another show': [(copy) => (copy.show.id = 'nobody'), /^plan: the tour has no such show/m],
  };

  const said = (of: typeof file, copy: PackPlan) => checkPlan(of, copy).map(({ check, found }) => `${check}: ${found}`);

  it.each(Object.entries(bent))('does not agree with %s, and says what it found', (_, [bend, found]) => {
    const copy = structuredClone(plan);
    bend(copy);
    expect(said(file, copy).join('\n')).toMatch(found);
  });

  /** The plan stays; the file says otherwise. */
  const first = () => plan.carts.loads[0]!;
  const changes: Record<string, [change: (file: any) => unknown, found: RegExp]> = {
    'a planned box in repair': [(other) => (itemOf(other, first().boxes[0]!.serial!).state = 'in repair'), /^carts: it is in repair/m],
    'a planned cart in repair': [(other) => (itemOf(other, first().cart!).state = 'in repair'), /^carts: it is in repair/m],
    'a planned box in another depot': [
      (other) => (itemOf(other, first().boxes[0]!.serial!).depot = 'elsewhere'),
      /^carts: it is at elsewhere/m,
    ],
    'a planned box promised to another tour': [
      (other) => other.bookings.push({ item: first().boxes[0]!.serial, from: file.tour.returnTo, to: file.tour.returnTo, tour: 'Other' }),
      /^carts: it is promised to Other and planned in/m,
    ],
    'a planned cart promised to another tour': [
      (other) => other.bookings.push({ item: first().cart, from: file.tour.prepFrom, to: file.tour.prepFrom, tour: 'Other' }),
      /^carts: it is promised to Other and planned in/m,
    ],
    'a planned box hired a day too late': [
      (other) => (itemOf(other, first().boxes[0]!.serial!).hire = { from: nextDay(file.tour.prepFrom), to: file.tour.returnTo }),
      /^carts: it is hired from .* only/m,
    ],
    'a planned box hired until the day before the last': [
      (other) => (itemOf(other, first().boxes[0]!.serial!).hire = { from: file.tour.prepFrom, to: file.tour.prepFrom }),
      /^carts: it is hired from .* only/m,
    ],
    'carts that hold less': [(other) => other.catalogue.carts.forEach((each: any) => (each.capacity = 1)), /^carts: it holds \d of 1/m],
    'carts that may not carry these boxes': [
      (other) => other.catalogue.carts.forEach((each: any) => (each.carries = [])),
      /^carts: it may not carry/m,
    ],
    'a design that wants another box there': [
      (other) => other.tour.shows.forEach((show: any) => (show.hangs[0].boxes[0].serial = 'B-999')),
      /^carts: B-999 is wanted, not /m,
    ],
  };
  const itemOf = (other: any, id: string) => other.items.find((each: any) => each.id === id);
  const nextDay = (on: string) => new Date(Date.parse(on) + 86_400_000).toISOString().slice(0, 10);

  it.each(Object.entries(changes))('does not agree with a file that has %s', (_, [change, found]) => {
    const other = structuredClone(file);
    change(other);
    expect(said(other, plan).join('\n')).toMatch(found);
  });

  it('is content with a promise that ends before the tour or begins after it, and with a hire for all of it', () => {
    const other = structuredClone(file) as any;
    const [item, { prepFrom, returnTo }] = [first().boxes[0]!.serial!, file.tour];
    other.bookings.push(
      { item, from: '2000-01-01', to: '2000-01-02', tour: 'Other' },
      { item, from: nextDay(returnTo), to: '2999-01-01', tour: 'Other' },
    );
    other.bookings.push({ item, from: prepFrom, to: returnTo, tour: file.tour.name });
    itemOf(other, item).hire = { from: prepFrom, to: returnTo };
    expect(said(other, plan)).toEqual([]);
  });

  it('sees a cart that another tour holds down to the first box of that tour, and no other cart in part', async () => {
    const holdBy = { tour: 'Winter Run', tourId: 'winter-run', from: file.tour.prepFrom, to: file.tour.returnTo };
    const held = demoTour((copy) => copy.bookings.push({ item: 'K01', ...holdBy }, { item: 'P-002', ...holdBy }));
    const integerProgram = await loadIntegerProgramSolver();
    const made = makePackPlan(held, held.tour.shows[0]!.id, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    const before = made.carts.floorBefore.carts.find((each) => each.cart === 'K01')!;
    expect(before).toMatchObject({ boxes: ['P-004', 'P-003'], givesOnly: true });
    expect(checkPlan(held, made)).toEqual([]);
    const bent = structuredClone(made) as any;
    bent.carts.floorBefore.carts.find((each: any) => each.cart === 'K01').boxes.pop();
    expect(checkPlan(held, bent)).toMatchObject([{ check: 'box moves', subject: 'K01' }]);
    expect(checkPlan(file, made)).not.toEqual([]);
  });
});
