import type { IntegerProgramSolver } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { demoTour } from '../../../tests/support/demo-tour.js';
import { type PackPlan, makePackPlan, whyHere } from '#pack-plan';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

const limits = () => ({ now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
const planOf = (file: ReturnType<typeof demoTour>): PackPlan => makePackPlan(file, file.tour.shows[0]!.id, limits());

describe('why a box stands where the plan puts it', () => {
  const file = demoTour();
  let plan: PackPlan;
  beforeAll(() => {
    plan = planOf(file);
  });

  it('says what the list costs without it: as many moves more as a plan made without that box has', () => {
    const load = plan.carts.loads[0]!;
    const serial = load.boxes[0]!.serial!;
    const without = planOf(
      demoTour((copy) =>
        Object.assign(
          copy.items.find((each: any) => each.id === serial),
          { state: 'quarantined', reason: 'cracked' },
        ),
      ),
    );
    const reason = whyHere(file, plan, { load: load.id, slot: 1 }, limits());
    const more = without.carts.boxMoves - plan.carts.boxMoves;
    expect(more).toBeGreaterThan(0);
    expect(reason).toMatchObject({ code: 'more-moves', what: 'box', id: serial, moves: more, atLeast: more });
  });

  it('says the same of a cart', () => {
    const load = plan.carts.loads[0]!;
    const reason = whyHere(file, plan, { load: load.id, slot: null }, limits());
    expect(reason).toMatchObject({ what: 'cart', id: load.cart });
    expect(['more-moves', 'no-other', 'more-carts', 'one-of-several']).toContain(reason.code);
    if (reason.code === 'more-moves') expect(reason.moves).toBeGreaterThan(0);
  });

  it('says that the hang asks for a pinned box', () => {
    const pinned = demoTour((copy) => Object.assign(copy.tour.shows[0].hangs[0].boxes[0], { serial: 'P-001' }));
    const made = planOf(pinned);
    const load = made.carts.loads.find((each) => each.boxes.some((box) => box.serial === 'P-001'))!;
    const slot = load.boxes.find((box) => box.serial === 'P-001')!.slot;
    expect(whyHere(pinned, made, { load: load.id, slot }, limits())).toEqual({ code: 'pinned', what: 'box', id: 'P-001' });
  });

  it('says that no other is left where all boxes of a model are wanted', () => {
    const model = plan.carts.loads[0]!.boxes[0]!.model;
    const planned = new Set(plan.carts.loads.flatMap((load) => load.boxes.map((box) => box.serial)));
    const scarce = demoTour((copy) => {
      for (const item of copy.items) if (item.kind === 'box' && item.model === model && !planned.has(item.id)) item.state = 'in repair';
    });
    const made = planOf(scarce);
    expect(whyHere(scarce, made, { load: made.carts.loads[0]!.id, slot: 1 }, limits())).toMatchObject({ code: 'no-other', what: 'box' });
  });

  it('says that it may not be used any more', () => {
    const load = plan.carts.loads[0]!;
    const serial = load.boxes[0]!.serial!;
    const now = demoTour((copy) =>
      Object.assign(
        copy.items.find((each: any) => each.id === serial),
        { state: 'quarantined', reason: 'cracked' },
      ),
    );
    expect(whyHere(now, plan, { load: load.id, slot: 1 }, limits())).toEqual({
      code: 'barred-since',
      what: 'box',
      id: serial,
      why: { code: 'state', state: 'quarantined', remark: 'cracked' },
    });
  });

  it('has a reason for every place of the plan', () => {
    const codes = plan.carts.loads.flatMap((load) =>
      load.boxes.map(({ slot }) => whyHere(file, plan, { load: load.id, slot }, limits()).code),
    );
    expect(codes).not.toContain('shorter-without');
    expect(codes).not.toContain('empty');
    expect(codes.length).toBeGreaterThan(20);
    expect(new Set(codes).size).toBeGreaterThan(1);
  });
});
