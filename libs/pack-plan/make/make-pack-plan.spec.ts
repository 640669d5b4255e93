import { loadIntegerProgramSolver } from '#runtime';
import { english, tell } from '#words';
import { demoTour, sentencesOf } from '../../../tests/support/demo-tour.js';
import type { TourFile } from '#tour-file';
import { type PackPlan, changedInputs, checkCart, differenceBetween, makePackPlan } from '#pack-plan';

describe('the pack plan of the demo tour', () => {
  let plan: (file: TourFile, show?: string) => PackPlan;
  let demo: PackPlan;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    plan = (file, show = 'quayside') => makePackPlan(file, show, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    demo = plan(demoTour());
  });

  it('says the four troubles plainly: a hoist that runs out, a quarantined box in a wanted cart, a model short, an axle nearly over', () => {
    expect(sentencesOf(demo, 'falls-due')).toEqual([expect.stringContaining('H-07 (hoist, Centre, hole L) runs out on 2027-03-10')]);
    expect(sentencesOf(demo, 'out-of-service-in-cart')).toEqual([expect.stringContaining('K07 slot 2 holds P-047: quarantined')]);
    expect(sentencesOf(demo, 'model-short')).toEqual([expect.stringContaining('Dunlin is 1 box short on 2027-03-14')]);
    // How full an axle is depends on the load that is found; that the one under the cab is nearly over its limit does not.
    expect(sentencesOf(demo, 'axle-nearly-over')).toContainEqual(expect.stringMatching(/^T2: front axle 7\.[2-5] t of 7\.5 t/));
  });

  it('is agreed with by every checker', () => {
    expect(sentencesOf(demo, 'checker-disagrees')).toEqual([]);
  });

  /** Common practice of the trade, no published source. */
  it('cuts carts of four from the top: cart 1 is boxes 1 to 4, the top of the stack highest in the air', () => {
    const [first, second] = demo.carts.loads.filter((load) => load.hang === 'Main left');
    expect(first!.boxes.map((box) => box.position)).toEqual([1, 2, 3, 4]);
    expect(second!.boxes.map((box) => box.position)).toEqual([5, 6, 7, 8]);
    expect(first!.boxes.map((box) => box.slot)).toEqual([1, 2, 3, 4]);
    expect(first!.boxes[0]!.splayDeg).toBe(0.5);
  });

  it('says the names of hangs, not their ids, wherever something is said', () => {
    const ids = ['Main left', 'Main right', 'Centre'];
    const file = demoTour((each) => {
      for (const show of each.tour.shows)
        for (const hang of show.hangs) if (ids.includes(hang.id)) hang.name = `Hang ${ids.indexOf(hang.id)}`;
    });
    const said = new Set([
      'sentence',
      'subject',
      'what',
      'where',
      'why',
      'label',
      'text',
      'name',
      'hangName',
      'groupName',
      'reason',
      'off',
      'first',
    ]);
    const wrong: string[] = [];
    const look = (value: unknown, path: string, key: string): void => {
      const isSaid = said.has(key) || /At$|^at$/.test(key);
      if (typeof value === 'string' && isSaid && ids.some((id) => value.includes(id))) wrong.push(`${path}: ${value}`);
      if (typeof value === 'object' && value !== null)
        for (const [inner, each] of Object.entries(value)) look(each, `${path}.${inner}`, Array.isArray(value) ? key : inner);
    };
    look(plan(file), 'plan', '');
    expect(wrong).toEqual([]);
  });

  it('is equal for equal input, and not stale; a changed splay makes it stale and says which hang', () => {
    expect(JSON.stringify(plan(demoTour()))).toBe(JSON.stringify(demo));
    expect(changedInputs(demo, demoTour())).toEqual([]);
    const changed = demoTour((file) => (file.tour.shows[0].hangs[0].boxes[3].splayDeg = 2));
    expect(changedInputs(demo, changed).map((each) => tell(english.changes, each))).toEqual([
      'the hang Main left has changed',
      'the hang Main right has changed',
    ]);
  });

  it('tells the difference between two plans in words, box by box', () => {
    const other = plan(
      demoTour((file) => {
        const box = file.items.find((each: any) => each.id === demo.carts.loads[0]!.boxes[1]!.serial);
        box.state = 'quarantined';
        box.reason = 'grille torn';
      }),
    );
    const gone = demo.carts.loads[0]!.boxes[1]!.serial!;
    const difference = differenceBetween(demo, other);
    expect(difference.boxes.some((each) => each.from === gone)).toBe(true);
    expect(other.carts.loads.flatMap((load) => load.boxes.map((box) => box.serial))).not.toContain(gone);
    expect(other.uses.map((each) => each.item).filter((item) => item === gone).length).toBeLessThanOrEqual(1);
    expect(difference.sentences.length).toBeGreaterThan(0);
    expect(differenceBetween(demo, demo)).toMatchObject({ boxes: [], hangsChanged: [] });
  });

  it('names the slot that is wrong and what belongs there', () => {
    const load = demo.carts.loads[1]!;
    const serials = load.boxes.map((box) => box.serial!);
    expect(checkCart(demo, load, serials).map((slot) => slot.agrees)).toEqual(serials.map(() => true));
    expect(serials.length).toBeGreaterThan(0);
    const swapped = [serials[1]!, serials[0]!, serials[2]!, serials[3]!];
    const verdicts = checkCart(demo, load, swapped);
    expect(verdicts.map((slot) => slot.agrees)).toEqual([false, false, true, true]);
    expect(verdicts[0]!.sentence).toContain(serials[0]!);
  });

  it('flies nothing that is quarantined, out of date or promised, and uses no serial twice', () => {
    const serials = demo.carts.loads.flatMap((load) => load.boxes.map((box) => box.serial));
    expect(serials).not.toContain('P-047');
    expect(new Set(serials).size).toBe(serials.length);
    const items = demo.uses.map((each) => each.item);
    expect(new Set(items).size).toBe(items.length);
    expect(items).not.toContain('H-05');
    expect(items).not.toContain('H-08');
  });

  it('plans what can be planned when boxes are short, and says how many and when', () => {
    const file = demoTour((each) => {
      for (const item of each.items) if (item.model === 'Dunlin' && item.id > 'D-002') item.state = 'in repair';
    });
    const short = plan(file);
    expect(short.carts.short.length).toBeGreaterThan(0);
    expect(short.findings.some((each) => each.weight === 'stop' && /Dunlin/.test(each.sentence))).toBe(true);
    expect(short.carts.loads.length).toBe(demo.carts.loads.length);
  });

  it('puts a caution on every result, and never says that anything is safe', () => {
    for (const part of [demo.picks, demo.hardware, demo.truck, demo.due]) expect(part.caution.length).toBeGreaterThan(40);
    expect(JSON.stringify(demo)).not.toMatch(/\bsafe\b/i);
  });
});
