import { type AllocationCase, makeAllocationCase, solveAllocation } from '#cart-allocation';
import { invariant } from '#kernel';
import type { ReasonAgainst, WorkFinding } from '#trade';
import { type Words, english, tell } from '#words';
import { describeMoves } from '../carts/index.js';
import type { BoxMove, PackPlan, SolveLimits, Stack } from '../contract/index.js';

export interface Floor {
  readonly carts: readonly (Stack & { readonly carries?: readonly string[] })[];
  readonly loose: readonly string[];
}

/** What the register says of the boxes on a floor. */
export interface BoxFacts {
  readonly model: (serial: string) => string;
  /** Why a box must not fly; null where it may. */
  readonly against: (serial: string) => ReasonAgainst | null;
}

export interface WorkList {
  /** `as planned`: what is left of the plan's own list. `anew`: the floor is another one, and this is the shortest list from there. */
  readonly status: 'as planned' | 'anew' | 'done' | 'cannot';
  readonly moves: readonly BoxMove[];
  /** No list from this floor is shorter. */
  readonly bound: number;
  readonly sentence: string;
  readonly fact: WorkFinding;
  readonly floor: Floor;
  /** Loads that this list builds on another cart than the plan says. */
  readonly otherCarts: readonly { readonly load: string; readonly planned: string; readonly now: string }[];
}

const statusOf = {
  done: 'done',
  'as-planned': 'as planned',
  anew: 'anew',
  'must-not-fly': 'cannot',
  'boxes-gone': 'cannot',
  'cannot-be-built': 'cannot',
  'failed-its-check': 'cannot',
  'between-shows': 'anew',
} as const;

/** A list that says what is to be said of it. */
const toldList = (words: Words, floor: Floor, fact: WorkFinding, rest: Partial<WorkList> = {}): WorkList => ({
  status: statusOf[fact.code],
  moves: [],
  bound: 0,
  sentence: tell(words.work, fact),
  fact,
  floor,
  otherCarts: [],
  ...rest,
});

/** What is left to do for a plan on the floor as it now stands; `done` are numbers of its moves that have been carried out. */
export function workListOf(
  plan: PackPlan,
  floor: Floor,
  facts: BoxFacts,
  done: ReadonlySet<number>,
  limits: SolveLimits,
  words: Words = english,
): WorkList {
  const boxes = barredBoxes(plan, facts);
  if (boxes.length > 0) return toldList(words, floor, { code: 'must-not-fly', boxes });
  const left = plan.carts.moves.filter((move) => !done.has(move.number));
  const carts = { otherCarts: otherCarts(plan, new Map(floor.carts.map((each) => [each.boxes.join('\n'), each.cart]))) };
  if (standsAsPlanned(plan, floor)) return toldList(words, floor, { code: 'done' }, carts);
  const after = carryOut(floor, left);
  if (after && standsAsPlanned(plan, after)) {
    const bound = plan.carts.status === 'optimal' ? left.length : 0;
    return toldList(words, floor, { code: 'as-planned', moves: left.length, bound }, { moves: left, bound, ...carts });
  }
  return listAnew(plan, floor, facts, limits, words);
}

/** Boxes of the plan that must not fly. */
const barredBoxes = (plan: PackPlan, facts: BoxFacts) =>
  plan.carts.loads.flatMap((load) =>
    serialsOf(load).flatMap((box) => {
      const why = facts.against(box);
      return why === null ? [] : [{ box, load: load.id, why }];
    }),
  );

function listAnew(plan: PackPlan, floor: Floor, facts: BoxFacts, limits: SolveLimits, words: Words): WorkList {
  const problem = caseFrom(plan, floor, facts);
  const answer = solveAllocation(problem, limits);
  const gone = (answer.short ?? []).flatMap((each) => (each.code === 'not here' && each.serial !== undefined ? [each.serial] : []));
  if (gone.length > 0) return toldList(words, floor, { code: 'boxes-gone', boxes: gone });
  if (answer.status === 'infeasible') return toldList(words, floor, { code: 'cannot-be-built' });
  if (answer.mismatch.length > 0) return toldList(words, floor, { code: 'failed-its-check' });
  const { boxMoves: moves, bound } = answer;
  return toldList(
    words,
    floor,
    { code: 'anew', moves, bound },
    {
      moves: describeMoves(problem, answer, plan.carts.loads, words),
      bound,
      otherCarts: otherCarts(plan, new Map(answer.assignments.map((each) => [each.boxes.join('\n'), each.cart]))),
    },
  );
}

function otherCarts(plan: PackPlan, cartOf: ReadonlyMap<string, string>): WorkList['otherCarts'] {
  return plan.carts.loads.flatMap((load) => {
    const now = cartOf.get(serialsOf(load).join('\n'));
    return load.cart !== null && now !== undefined && now !== load.cart ? [{ load: load.id, planned: load.cart, now }] : [];
  });
}

/** Whether every load stands whole on some cart: rolling costs nothing. */
function standsAsPlanned(plan: PackPlan, { carts }: Floor): boolean {
  const standing = new Set(carts.map((each) => each.boxes.join('\n')));
  return plan.carts.loads.map(serialsOf).every((serials) => serials.length === 0 || standing.has(serials.join('\n')));
}

const serialsOf = (load: PackPlan['carts']['loads'][number]): string[] =>
  load.boxes.flatMap((box) => (box.serial === null ? [] : [box.serial]));

/** The floor after these moves; undefined where one of them cannot be made. */
function carryOut(floor: Floor, moves: readonly BoxMove[]): Floor | undefined {
  const stacks = new Map(floor.carts.map((each) => [each.cart, [...each.boxes]]));
  const loose = new Set(floor.loose);
  for (const { box, from, to } of moves) {
    if (from === 'floor' ? !loose.delete(box) : stacks.get(from)?.shift() !== box) return undefined;
    if (to === 'floor') loose.add(box);
    else stacks.get(to)?.unshift(box);
  }
  return { carts: floor.carts.map((each) => ({ ...each, boxes: stacks.get(each.cart)! })), loose: [...loose] };
}

/** The floor as a case whose loads are the plan's, serial by serial. A cart that holds what it may not, or is out of service, only gives. */
function caseFrom(plan: PackPlan, floor: Floor, { model, against }: BoxFacts): AllocationCase {
  const serials = [...floor.carts.flatMap((each) => each.boxes), ...floor.loose];
  const here = new Set(serials);
  const loads = plan.carts.loads
    .map((load) => ({ id: load.id, boxes: serialsOf(load).map((serial) => ({ serial })) }))
    .filter((load) => load.boxes.length > 0);
  const absent = loads.flatMap((load) => load.boxes.filter(({ serial }) => !here.has(serial)).map(({ serial }) => serial));
  const made = makeAllocationCase({
    carts: floor.carts.map(({ cart, capacity, boxes, carries, givesOnly }) => {
      const isWrong = boxes.length > capacity || boxes.some((serial) => carries && !carries.includes(model(serial)));
      return {
        id: cart,
        capacity,
        stack: [...boxes],
        ...(carries ? { carries: [...carries] } : {}),
        ...(givesOnly || isWrong || against(cart) !== null ? { givesOnly: true } : {}),
      };
    }),
    loose: [...floor.loose],
    boxes: Object.fromEntries(serials.map((serial) => [serial, model(serial)])),
    absent: Object.fromEntries(absent.map((serial) => [serial, model(serial)])),
    loads,
  });
  invariant(made.ok, 'a floor of the register has every box in one place and every cart once');
  return made.value;
}
