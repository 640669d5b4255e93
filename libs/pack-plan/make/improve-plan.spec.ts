import type { IntegerProgramSolver } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { type PackPlan, changedInputs, improvePlan, isOpen, makePackPlan } from '#pack-plan';
import { english, tell } from '#words';
import { demoTour } from '../../../tests/support/demo-tour.js';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

const limits = (work: number) => ({ now: () => 0, integerProgram, timeLimitSeconds: 1e6, work });
const planOf = (file: ReturnType<typeof demoTour>, work: number): PackPlan => makePackPlan(file, 'quayside', limits(work));

/** Units of work after which the search of the demo show has a list, has a shorter one, and has the proof. */
const [little, some, plenty] = [20_000, 100_000, 5_000_000];

describe('a plan whose search was stopped', () => {
  it('is open until its list of box moves is proved to be the shortest', () => {
    expect([little, some, plenty].map((work) => isOpen(planOf(demoTour(), work)))).toEqual([true, true, false]);
  });

  it('gets a plan of fewer moves where more work finds one, made from the same inputs and checked', () => {
    const now = planOf(demoTour(), little);
    const { fact, better } = improvePlan(demoTour(), now, limits(plenty));
    const proved = planOf(demoTour(), plenty).carts.boxMoves;
    expect(fact).toEqual({ code: 'shorter', moves: now.carts.boxMoves, shorter: proved, atLeast: proved });
    expect(better!.carts.boxMoves).toBe(proved);
    expect(proved).toBeLessThan(now.carts.boxMoves);
    expect(changedInputs(better!, demoTour())).toEqual([]);
    expect(better!.fingerprint).toEqual(now.fingerprint);
    expect(tell(english.improvements, fact)).toBe(
      `A shorter list is ready: ${proved} moves instead of ${now.carts.boxMoves}; proved: none is shorter.`,
    );
  });

  it('is proved to be the best where more work closes the gap, and stays open where it does not', () => {
    const now = planOf(demoTour(), some);
    const { boxMoves: moves, bound } = now.carts;
    expect(improvePlan(demoTour(), now, limits(plenty))).toEqual({ fact: { code: 'proved', moves }, better: null });
    expect(improvePlan(demoTour(), now, limits(some))).toEqual({ fact: { code: 'not-shorter', moves, atLeast: bound }, better: null });
  });

  it('is not looked at any further once its inputs have changed, or a box has been moved', () => {
    const now = planOf(demoTour(), little);
    const [first] = now.carts.moves;
    const moved = demoTour((file) => {
      const stackOf = (id: string) => file.items.find((each: any) => each.id === id)?.stack as string[] | undefined;
      stackOf(first!.from)?.shift();
      stackOf(first!.to)?.unshift(first!.box);
    });
    const changed = demoTour((file) => (file.tour.shows[0].hangs[0].boxes[3].splayDeg = 2));
    for (const file of [moved, changed])
      expect(improvePlan(file, now, limits(plenty))).toEqual({ fact: { code: 'overtaken' }, better: null });
    // The moved box is one of the plan's own list: the plan itself is not stale.
    expect(changedInputs(now, moved)).toEqual([]);
  });
});
