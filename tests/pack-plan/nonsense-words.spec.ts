import { loadIntegerProgramSolver } from '#runtime';
import type { PackPlan } from '#pack-plan';
import {
  againstTick,
  changedInputs,
  checkCart,
  concernsHang,
  concernsTruck,
  decideRelease,
  differenceBetween,
  makePackPlan,
  replanTrucks,
  stoppedJoints,
  swapOf,
  workListOf,
} from '#pack-plan';
import type { TourFile } from '#tour-file';
import { type Words, english } from '#words';
import { demoTour } from '../support/demo-tour.js';
import { nonsenseWords, withoutWords } from '../support/nonsense-words.js';

const quarantine = (file: any, id: string) =>
  Object.assign(
    file.items.find((each: any) => each.id === id),
    { state: 'quarantined', reason: 'bent' },
  );

/** The demo tour, and some that are damaged: steel too weak, boxes out of service. */
const tours: Record<string, (file: any) => void> = {
  'as it is': () => undefined,
  'with joints that are too weak': (file) => file.catalogue.boxes.forEach((box: any) => Object.assign(box, { ratedRearLinkN: 900 })),
  'with no shackle that is enough': (file) =>
    file.catalogue.shackles.forEach((each: any) => (each.ratedLoad.value = each.ratedLoad.value / 50)),
  'with boxes out of service': (file) => ['P-001', 'P-002', 'D-001'].forEach((id) => quarantine(file, id)),
};

describe.each(Object.entries(tours))('the demo tour %s, said in nonsense', (_name, change) => {
  let file: TourFile;
  let [told, muddled]: PackPlan[] = [];
  const limits: { now: () => number; integerProgram: any; timeLimitSeconds: number } = {
    now: () => 0,
    integerProgram: undefined,
    timeLimitSeconds: 1e6,
  };
  const both = <T>(decide: (plan: PackPlan, words: Words) => T) =>
    expect(withoutWords(decide(muddled!, nonsenseWords(2)))).toEqual(withoutWords(decide(told!, english)));

  beforeAll(async () => {
    limits.integerProgram = await loadIntegerProgramSolver();
    file = demoTour(change);
    told = makePackPlan(file, 'quayside', limits);
    muddled = makePackPlan(file, 'quayside', limits, undefined, nonsenseWords(1));
  });

  it('is the same plan: figures, codes, weights, sections, subjects', () => {
    both((plan) => plan);
    expect(muddled!.findings.map((each) => each.sentence)).not.toEqual(told!.findings.map((each) => each.sentence));
  });

  it('is released or refused alike, with the same stops, changes and clashes', () => {
    const clash = { item: 'P-001', tour: 'Town Fair', from: '2027-03-01', to: '2027-03-02' };
    const changed = demoTour((copy) => {
      change(copy);
      copy.tour.shows[0].hangs[0].boxes[3].splayDeg = 2;
    });
    for (const despite of ['', 'because'])
      for (const [other, isOfficer] of [
        [undefined, false],
        [undefined, true],
        [clash, true],
      ] as const)
        for (const now of [file, changed]) both((plan) => decideRelease(plan, changedInputs(plan, now), other, despite, isOfficer));
  });

  it('hatches the same joints and puts the same findings on the same sheets', () => {
    both((plan) => plan.picks.hangs.map((hang) => [...stoppedJoints(plan.findings, hang.hang)]));
    both((plan) => plan.picks.hangs.map((hang) => plan.findings.map((each) => concernsHang(each, hang))));
    both((plan) => plan.truck.trucks.map((truck) => plan.findings.map((each) => concernsTruck(each, truck.id))));
  });

  it('lets the same steps be ticked, reads carts alike, leaves the same work, finds the same difference', () => {
    both((plan) => {
      const steps = plan.picks.hangs[0]!.runningOrder.goingUp;
      return steps.map((step) => againstTick(steps, new Set([steps[0]!.key]), step.key, true));
    });
    both((plan, words) => plan.carts.loads.map((load) => checkCart(plan, load, ['P-001', '', 'K01', 'nothing'], words)));
    both((plan, words) => {
      const model = (serial: string) => file.items.find((each) => each.id === serial)!.model;
      return workListOf(plan, plan.carts.floorBefore, { model, against: () => null }, new Set([1]), limits, words);
    });
    const first = told!;
    both((plan, words) => differenceBetween(first, plan, words).facts);
  });

  it('changes rows and loads the trucks anew alike', () => {
    const truck = told!.truck.trucks[0];
    if (!truck || truck.rows.length < 2) return expect(muddled!.truck.trucks.length).toBe(told!.truck.trucks.length);
    both((plan, words) => ({ ...swapOf(file, plan, truck.id, 1, truck.rows.length, words), breaches: [] }));
    both((plan, words) => replanTrucks(file, plan, limits, words));
  });
});
