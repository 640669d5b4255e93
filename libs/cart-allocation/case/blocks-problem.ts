import { invariant } from '#kernel';
import { type AllocationCase, makeAllocationCase } from './allocation-case.js';

/** Towers of a blocks world, each from the top down. */
export interface BlocksProblem {
  readonly start: readonly (readonly string[])[];
  readonly goal: readonly (readonly string[])[];
}

/**
 * A blocks world as a floor of carts: every tower stands on its own cart of ample capacity, every block is its own model, and there are
 * spare empty carts for all. One move of a block is one box move (two steps of the four-operator version).
 */
export function allocationCaseOf({ start, goal }: BlocksProblem): AllocationCase {
  const blocks = start.flat();
  const capacity = blocks.length;
  const carts = [...start, ...blocks.map((): string[] => [])].map((stack, index) => ({
    id: `tower ${index + 1}`,
    capacity,
    stack: [...stack],
  }));
  const made = makeAllocationCase({
    carts,
    loose: [],
    boxes: Object.fromEntries(blocks.map((block) => [block, block])),
    unusable: [],
    loads: goal.map((tower, index) => ({ id: `goal ${index + 1}`, boxes: tower.map((serial) => ({ serial })) })),
  });
  invariant(made.ok, 'towers name each block once');
  return made.value;
}

/** Reads a problem of the planning competition's blocks domain (STRIPS, four operators). Throws where it is none. */
export function readBlocksProblem(pddl: string): BlocksProblem {
  const text = pddl.toLowerCase().replaceAll(/;.*$/gm, '').replaceAll(/\s+/g, ' ');
  const [, init, goal] = /\(:init (.*?)\) ?\(:goal ?\(and(.*)$/.exec(text) ?? [];
  if (init === undefined || goal === undefined) throw new Error('no blocks problem: (:init ...) (:goal (and ...)) was not found');
  return { start: towersOf(init), goal: towersOf(goal) };
}

function towersOf(facts: string): string[][] {
  const below = new Map([...facts.matchAll(/\(on (\S+) (\S+?)\)/g)].map(([, above, under]) => [above!, under!]));
  const onTable = [...facts.matchAll(/\(ontable (\S+?)\)/g)].map(([, block]) => block!);
  const names = new Set([...below.keys(), ...below.values(), ...onTable]);
  const carried = new Set(below.values());
  const tops = [...names].filter((block) => !carried.has(block));
  return tops.map((top) => {
    const tower = [top];
    for (let under = below.get(top); under !== undefined; under = below.get(under)) tower.push(under);
    return tower;
  });
}
