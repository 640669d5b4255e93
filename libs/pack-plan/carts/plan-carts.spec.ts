import type { IntegerProgramSolver } from '#kernel';
import type { CartsResult, PackPlan } from '../contract/index.js';
import { loadIntegerProgramSolver } from '#runtime';
import { demoTour } from '../../../tests/support/demo-tour.js';
import { changedInputs, gatherInputs } from '../inputs/index.js';
import { keepBoxes } from '../make/keep-boxes.js';
import { makePackPlan } from '../make/index.js';
import { planCarts } from './plan-carts.js';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

const limits = () => ({ now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
const cartsOf = (change: (file: any) => void): CartsResult => planCarts(gatherInputs(demoTour(change), 'quayside'), limits());
const serialsOf = (carts: CartsResult) => carts.loads.flatMap((load) => load.boxes.map((box) => box.serial));
const cart = (file: any, id: string) => file.items.find((item: any) => item.id === id);
const quarantine = (item: any) => Object.assign(item, { state: 'quarantined', reason: 'a castor is bent' });
/** Pins the first box of the first hang that names no mirror. */
const pinFirst = (file: any, serial: string) => Object.assign(file.tour.shows[0].hangs[0].boxes[0], { serial });

describe('carts that may not travel', () => {
  let first: string;
  let demo: CartsResult;
  beforeAll(() => {
    demo = cartsOf(() => undefined);
    first = demo.loads[0]!.cart!;
  });

  it('proves the demo by work alone', () => {
    expect(demo).toMatchObject({ status: 'optimal', stoppedBy: 'proof' });
    expect(demo.mismatch).toBeUndefined();
  });

  it('lifts a pinned box off a quarantined cart, which then carries nothing', () => {
    let pinned = '';
    const carts = cartsOf((file) => {
      const at = cart(file, first);
      pinned = at.stack[0];
      quarantine(at);
      pinFirst(file, pinned);
    });
    expect(carts.stoppedBy).toBe('proof');
    expect(carts.short.filter((each) => each.serial === pinned)).toEqual([]);
    expect(carts.loads[0]!.boxes[0]!.serial).toBe(pinned);
    expect(carts.loads.map((load) => load.cart)).not.toContain(first);
    expect(carts.moves.some((move) => move.box === pinned && move.from === first)).toBe(true);
    expect(carts.moves.map((move) => move.to)).not.toContain(first);
    expect(carts.floorBefore.carts.find((each) => each.cart === first)).toMatchObject({ givesOnly: true });
  });

  it('leaves alone what stands at or under a box that another tour holds as well', () => {
    let stack: string[] = [];
    const carts = cartsOf((file) => {
      stack = cart(file, first).stack;
      const days = { tour: 'Another tour', from: file.tour.prepFrom, to: file.tour.returnTo };
      file.bookings.push({ ...days, item: first }, { ...days, item: stack[1] });
      pinFirst(file, stack[2]!);
    });
    expect(carts.short).toContainEqual({ model: expect.any(String), missing: 1, serial: stack[2], code: 'not here' });
    expect(carts.reason).toMatch(
      new RegExp(`${stack[2]} is wanted but cannot be reached: it stands on ${first}, promised to Another tour`),
    );
    expect(serialsOf(carts)).not.toContain(stack[1]);
    expect(carts.floorBefore.carts.find((each) => each.cart === first)!.boxes).toEqual(stack.slice(0, 1));
  });

  it('names a pinned box that is at another depot, and plans the rest', () => {
    let pinned = '';
    const carts = cartsOf((file) => {
      const loose = file.items.find((item: any) => item.kind === 'box' && item.model === file.tour.shows[0].hangs[0].boxes[0].model);
      pinned = loose.id;
      for (const item of file.items) if (item.stack) item.stack = item.stack.filter((serial: string) => serial !== pinned);
      loose.depot = 'Another depot';
      pinFirst(file, pinned);
    });
    expect(carts.reason).toContain(`${pinned} is wanted but may not be used: at Another depot`);
    expect(carts.loads[0]!.boxes[0]!.serial).toBeNull();
    expect(serialsOf(carts).filter((serial) => serial === null)).toHaveLength(1);
  });

  it('plans again when a cart that the earlier plan uses has gone out of service, or with its boxes to another tour', () => {
    const before = { show: { id: 'quayside' }, carts: demo } as PackPlan;
    const again = (change: (file: any) => void) =>
      planCarts(gatherInputs(keepBoxes(demoTour(change), before, new Set()), 'quayside'), limits());
    for (const id of demo.loads.slice(0, 4).map((load) => load.cart!)) {
      expect(again((file) => quarantine(cart(file, id))).stoppedBy).toBe('proof');
      const held = again((file) => {
        const days = { tour: 'Another tour', from: file.tour.prepFrom, to: file.tour.returnTo };
        for (const item of [id, ...cart(file, id).stack]) file.bookings.push({ ...days, item });
      });
      expect(held.loads.map((load) => load.cart)).not.toContain(id);
      expect(held.stoppedBy).toBe('proof');
    }
  });
});

describe('too few carts', () => {
  const six = ['K01', 'K02', 'K03', 'K04', 'K05', 'K06'];
  /** Without six carts; a box of the last hang is wanted by its serial. */
  const withoutSix = (also: (file: any) => void = () => undefined) =>
    cartsOf((file) => {
      for (const id of six) quarantine(cart(file, id));
      also(file);
    });

  it('names each cart that is not to be had, and says once of a load that it has none', () => {
    const carts = withoutSix();
    const [lack, out] = carts.fact ?? [];
    expect(lack).toMatchObject({ code: 'too-few-carts', loads: carts.loads.length });
    expect(out).toEqual({
      code: 'carts-not-free',
      carts: six.map((id) => ({ cart: id, why: { code: 'state', state: 'quarantined', remark: 'a castor is bent' } })),
    });
    const cartless = carts.loads.filter((load) => load.cart === null);
    expect(cartless.length).toBeGreaterThan(0);
    for (const load of cartless) expect(load.exceptions.map((each) => each.fact)).toEqual([{ code: 'no-cart' }]);
    for (const load of carts.loads) if (load.cart) expect(load.exceptions.map((each) => each.fact?.code)).not.toContain('no-box');
  });

  it('keeps a box that is wanted in a load without a cart out of all others', () => {
    const [pinned] = serialsOf(withoutSix()).filter((each) => each !== null);
    const carts = withoutSix((file) => {
      const hang = file.tour.shows[0].hangs.find((each: any) => each.id === 'Centre');
      for (const box of hang.boxes) delete box.serial;
      hang.boxes[0].serial = pinned;
    });
    const load = carts.loads.find((each) => each.hang === 'Centre' && each.number === 1)!;
    expect(load.cart).toBeNull();
    expect(serialsOf(carts)).not.toContain(pinned);
  });
});

describe('a promise to another tour', () => {
  const made = (change: (file: any) => void) => {
    const file = demoTour(change);
    return { file, plan: makePackPlan(file, 'quayside', limits()) };
  };
  const holds = (file: any, item: string, from: string = file.tour.prepFrom, to: string = file.tour.returnTo) =>
    file.bookings.push({ tour: 'Another tour', from, to, item });

  it('of a cart and of a box in the middle of it leaves a plan that is fresh', () => {
    const { file, plan } = made((each) => {
      const { id, stack } = each.items.find((item: any) => item.kind === 'cart' && item.stack?.length > 2);
      holds(each, id);
      holds(each, stack[1]);
    });
    const top = plan.carts.floorBefore.carts.find((each) => each.beneath);
    expect(top?.boxes).toHaveLength(1);
    expect(changedInputs(plan, file)).toEqual([]);
    const lower = structuredClone(file) as any;
    cart(lower, top!.cart).stack.pop();
    expect(changedInputs(plan, lower)).toEqual([{ code: 'floor-differs' }]);
  });

  it('makes a plan stale where it touches the days of the tour, and not where it does not', () => {
    const { plan } = made(() => undefined);
    expect(
      changedInputs(
        plan,
        demoTour((each) => holds(each, 'P-001', '2020-01-01', '2020-01-09')),
      ),
    ).toEqual([]);
    expect(
      changedInputs(
        plan,
        demoTour((each) => holds(each, 'P-001')),
      ),
    ).toEqual([{ code: 'changed', part: { code: 'bookings' } }]);
  });
});
