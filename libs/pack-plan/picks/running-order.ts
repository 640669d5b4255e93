import type { Hang, RunningStep } from '#tour-file';
import { type RunningOrder, type RunningOrderStep, type StepFact, stepKey, tickText } from '../contract/index.js';
import type { TickRefusal } from '#trade';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import type { LoadOnCart } from './load-on-cart.js';

/** The system's own words, cart load by cart load; what the hang adds (secondary suspension, pull-back) stands where it belongs. */
export function runningOrder(
  inputs: PlanInputs,
  hang: Hang,
  loads: readonly LoadOnCart[],
  factsOf: FactsOf,
  stops: readonly LiftStop[] = [],
): RunningOrder {
  const stopOf = (way: LiftStop['way']) => (load: LoadOnCart) =>
    stops
      .filter((each) => each.way === way && each.load === load.id)
      .map(({ step, why }): Written => ({ step, why, at: 'each cart', hold: true }));
  const grid = modelOf(inputs.file.catalogue.grids, hang.grid);
  const system = inputs.file.systems.find((each) => each.id === grid.system);
  return {
    manual: system ? `${system.manual.title}, revision ${system.manual.revision}` : null,
    approved: system?.approved ? `${system.approved.by}, ${system.approved.on}` : null,
    goingUp: lay('up', system?.goingUp ?? [], loads, hang, [], extrasUp(hang), factsOf, stopOf('up')),
    comingDown: lay(
      'down',
      system?.comingDown ?? [],
      [...loads].reverse(),
      hang,
      extrasDown(hang),
      [],
      (load, moment) => factsOf(load === null ? null : loads.length - 1 - load, moment),
      stopOf('down'),
    ),
  };
}

type Written = Exclude<RunningStep, string>;
/** What cannot be lifted as it is planned: said before the steps of that cart load, and everything waits there. */
export interface LiftStop {
  readonly load: string;
  readonly way: 'up' | 'down';
  readonly step: string;
  readonly why: string;
}

/** What is known of a moment of a cart load, counted from 0 from the top, or of the whole hang. */
type FactsOf = (load: number | null, moment: string) => readonly StepFact[];
const written = (step: RunningStep): Written => (typeof step === 'string' ? { step, at: 'start', hold: false } : step);

function lay(
  way: 'up' | 'down',
  steps: readonly RunningStep[],
  loads: readonly LoadOnCart[],
  hang: Hang,
  first: readonly Written[],
  last: readonly Written[],
  factsOf: FactsOf,
  stopsOf: (load: LoadOnCart) => readonly Written[],
): RunningOrderStep[] {
  const all = steps.map(written);
  const of = (at: Written['at']) => all.filter((each) => each.at === at);
  const laid = [
    ...[...of('start'), ...first].map((each) => ({ ...each, load: null, place: null })),
    ...loads.flatMap((load, index) =>
      [
        ...stopsOf(load),
        ...all.filter((each) => each.at === 'each cart' || each.at === (index === 0 ? 'first cart' : 'further carts')),
      ].map((each) => ({ ...each, load, place: index })),
    ),
    ...[...last, ...of('end')].map((each) => ({ ...each, load: null, place: null })),
  ];
  return laid.map(({ step, hold, load, place, why, moments = [] }, index) => ({
    key: tickText(stepKey(hang.id, way, index + 1)),
    text: step,
    hold,
    ...(why === undefined ? {} : { why }),
    ...factsBeside(moments.flatMap((moment) => factsOf(place, moment))),
    load: load && {
      id: load.id,
      cart: load.cart,
      splays: load.boxes
        .map(
          (box) =>
            `above ${box.position}: ${box.splayDeg}°${setAt(box.splaySetAtPosition)}${box.splaySet === 'at the point' ? ', set at the point' : ''}`,
        )
        .join('; '),
    },
  }));
}

const factsBeside = (facts: readonly StepFact[]) => (facts.length === 0 ? {} : { facts });

const setAt = (position: number | null): string => (position === null ? '' : position === 0 ? ' at the grid' : ` at box ${position}`);

const end = (step: string): Written => ({ step, at: 'end', hold: true });

function extrasUp(hang: Hang): Written[] {
  return [
    ...(hang.pullBack
      ? [
          end(
            `Fit the pull-back at ${hang.pullBack.position === 0 ? 'the grid' : `box ${hang.pullBack.position}`} and take it up slowly; read the tilt while it comes.`,
          ),
        ]
      : []),
    ...(hang.secondary
      ? [end('Fit the secondary suspension from the grid to the structure, beside the hoists, with as little slack as the maker allows.')]
      : []),
  ];
}

function extrasDown(hang: Hang): Written[] {
  return [
    ...(hang.pullBack ? [end('Let the pull-back off slowly until the chains hang straight, then take it off.')] : []),
    ...(hang.secondary ? [end('Take the secondary suspension off only when the hoists carry the hang.')] : []),
  ];
}

/** Steps of the way down of what went up, by the holds that were passed on the way: a lift that is broken off comes down by these alone. */
export function stepsDown({ goingUp, comingDown }: RunningOrder, passed: ReadonlySet<string>): readonly RunningOrderStep[] {
  const loads = new Set(goingUp.flatMap((each) => (each.hold && each.load && passed.has(each.key) ? [each.load.id] : [])));
  return comingDown.filter((each) => each.load === null || loads.has(each.load.id));
}

/**
 * Why a step of the way down may not be ticked yet. It begins when all holds of the way up are passed; or from wherever the hang is once something of it
 * must not fly, for lowering is never barred.
 */
export function againstTickDown(
  order: RunningOrder,
  { ticked, passed, isBarred }: { readonly ticked: ReadonlySet<string>; readonly passed: ReadonlySet<string>; readonly isBarred: boolean },
  key: string,
  done: boolean,
): TickRefusal | null {
  const open = order.goingUp.filter((each) => each.hold && !passed.has(each.key));
  const steps = stepsDown(order, passed);
  const mayBegin = open.length === 0 || (isBarred && open.length < order.goingUp.filter((each) => each.hold).length);
  if (done && !(mayBegin && steps.some((each) => each.key === key))) return { code: 'going-up-open', open: open.length };
  return againstTick(done ? steps : order.comingDown, ticked, key, done);
}

/**
 * Why a step may not be ticked yet; null when it may. Holds alone are ticked, each after those before it and taken back before those after it; the other
 * steps are read. A tick that stands at one of them from before may be taken back.
 */
export function againstTick(
  steps: readonly RunningOrderStep[],
  ticked: ReadonlySet<string>,
  key: string,
  done: boolean,
): TickRefusal | null {
  const at = steps.findIndex((each) => each.key === key);
  if (done) {
    if (!steps[at]!.hold) return { code: 'only-read', step: steps[at]!.text };
    const open = steps.slice(0, at).find((each) => each.hold && !ticked.has(each.key));
    return open ? { code: 'hold-open', step: open.text } : null;
  }
  if (!steps[at]!.hold) return null;
  return steps.slice(at + 1).some((each) => each.hold && ticked.has(each.key)) ? { code: 'later-ticked' } : null;
}
