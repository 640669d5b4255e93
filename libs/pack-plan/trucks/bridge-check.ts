import type { AxlePlace, TruckModel } from '#tour-file';
import { bridgeFormulaLb } from '#truck-pack';
import type { BridgeFact } from '#trade';
import { type Words, tell } from '#words';
import type { AxleStop, BridgeCheck } from '../contract/index.js';

const source = '23 U.S.C. 127(a); 23 CFR 658.17';
const rule =
  'Every run of axles: W = 500 (L N / (N − 1) + 12 N + 36) lb to the nearest 500 lb, L in whole feet, rounded down; one axle 20,000 lb, axles within 96 inches 34,000 lb, all axles 80,000 lb; two tandems 36 feet apart or more 34,000 lb each. The axles of a group share its load equally.';

// 1 lb = 0.45359237 kg, 1 in = 25.4 mm exactly (international yard and pound, 1959).
const pounds = (kg: number): number => kg / 0.45359237;
const inches = (mm: number): number => mm / 25.4;
const wholeFeet = (mm: number): number => Math.floor(mm / 304.8 + 1e-9);

/** The federal limits of the United States for every run of consecutive axles of the whole load; says so where the axle places are not on file. */
export function bridgeCheck({ axles }: Pick<TruckModel, 'axles'>, whole: AxleStop, words: Words): BridgeCheck {
  const told = (status: BridgeCheck['status'], groups: BridgeCheck['groups'], fact: BridgeFact): BridgeCheck => ({
    status,
    rule,
    source,
    groups,
    sentence: tell(words.bridge, fact),
    fact,
  });
  if (!axles) return told('not on file', [], { code: 'axle-places-not-on-file' });
  const loads = axles.flatMap((axle) => {
    const groupKg = whole.loads.find((each) => each.fact === axle.group)?.loadKg;
    return groupKg === undefined ? [] : [pounds(groupKg) / axles.filter((each) => each.group === axle.group).length];
  });
  if (loads.length < axles.length) return told('not on file', [], { code: 'axle-load-not-known' });
  const groups = runsOf(axles, loads);
  const over = groups.filter((each) => each.isOver);
  if (over.length > 0) return told('over', groups, { code: 'over', runs: over });
  const nearest = groups.reduce((a, b) => (b.loadLb / b.limitLb > a.loadLb / a.limitLb ? b : a));
  return told('within', groups, { code: 'within', count: groups.length, nearest });
}

const runsOf = (axles: readonly AxlePlace[], loads: readonly number[]): BridgeCheck['groups'] =>
  axles.flatMap((_, from) =>
    axles.slice(from).map((_, length) => {
      const to = from + length;
      const loadLb = loads.slice(from, to + 1).reduce((sum, each) => sum + each, 0);
      const limitLb = limitOf(axles.slice(from, to + 1), length + 1 === axles.length);
      const spanFt = wholeFeet(axles[to]!.xMm - axles[from]!.xMm);
      return { first: from + 1, last: to + 1, spanFt, loadLb, limitLb, isOver: loadLb > limitLb + 1e-6 };
    }),
  );

function limitOf(run: readonly AxlePlace[], isWhole: boolean): number {
  const spanIn = inches(run.at(-1)!.xMm - run[0]!.xMm);
  if (run.length === 1 || spanIn <= 40) return 20_000;
  const formula = isTwoTandems(run) ? 68_000 : bridgeFormulaLb(wholeFeet(run.at(-1)!.xMm - run[0]!.xMm), run.length);
  return Math.min(formula, spanIn <= 96 ? 34_000 : Infinity, isWhole ? 80_000 : Infinity);
}

function isTwoTandems(run: readonly AxlePlace[]): boolean {
  if (run.length !== 4 || wholeFeet(run[3]!.xMm - run[0]!.xMm) < 36) return false;
  const gaps = [run[1]!.xMm - run[0]!.xMm, run[3]!.xMm - run[2]!.xMm].map(inches);
  return gaps.every((gap) => gap > 40 && gap <= 96);
}
