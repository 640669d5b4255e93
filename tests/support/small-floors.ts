import fc from 'fast-check';
import type { AllocationCase } from '#cart-allocation';

/** Fewest moves by breadth-first search over every legal move; only for very small floors. */
export function fewestByBreadth(problem: AllocationCase): number | undefined {
  const key = (stacks: string[][], floor: string[]) => `${stacks.map((each) => each.join(',')).join('|')}#${[...floor].sort().join(',')}`;
  const wantedBy = (stacks: string[][]): boolean => {
    const place = (at: number, used: Set<number>): boolean => {
      const load = problem.loads[at];
      if (!load) return true;
      return stacks.some((stack, index) => {
        if (
          used.has(index) ||
          problem.carts[index]!.givesOnly ||
          load.notOn?.includes(problem.carts[index]!.id) ||
          stack.length !== load.boxes.length
        )
          return false;
        const fits = load.boxes.every(
          (box, slot) =>
            !problem.unusable.includes(stack[slot]!) &&
            ('serial' in box ? box.serial === stack[slot] : box.model === problem.boxes[stack[slot]!]),
        );
        return fits && place(at + 1, new Set([...used, index]));
      });
    };
    return place(0, new Set());
  };
  let level = [{ stacks: problem.carts.map((cart) => [...cart.stack]), floor: [...problem.loose] }];
  const seen = new Set(level.map((each) => key(each.stacks, each.floor)));
  for (let moves = 0; level.length > 0; moves++) {
    if (level.some((each) => wantedBy(each.stacks))) return moves;
    const next: typeof level = [];
    for (const { stacks, floor } of level)
      for (const [from, box] of [
        ...stacks.map((stack, index) => [index, stack[0]] as const),
        ...floor.map((each) => [-1, each] as const),
      ]) {
        if (box === undefined) continue;
        for (let to = -1; to < stacks.length; to++) {
          const cart = problem.carts[to];
          if (
            to === from ||
            (cart &&
              (cart.givesOnly || stacks[to]!.length >= cart.capacity || (cart.carries && !cart.carries.includes(problem.boxes[box]!))))
          )
            continue;
          const after = stacks.map((stack, index) => (index === from ? stack.slice(1) : index === to ? [box, ...stack] : stack));
          const floorAfter = [...(from === -1 ? floor.filter((each) => each !== box) : floor), ...(to === -1 ? [box] : [])];
          const at = key(after, floorAfter);
          if (!seen.has(at)) {
            seen.add(at);
            next.push({ stacks: after, floor: floorAfter });
          }
        }
      }
    level = next;
  }
  return undefined;
}

/** A small floor: every box somewhere, loads that may or may not be possible. */
export const smallFloor = fc
  .record({
    heights: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 2, maxLength: 3 }),
    loose: fc.integer({ min: 0, max: 1 }),
    models: fc.array(fc.constantFrom('A', 'B'), { minLength: 7, maxLength: 7 }),
    unusable: fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 1 }),
    givesOnly: fc.option(fc.integer({ min: 0, max: 2 }), { nil: -1, freq: 3 }),
    loads: fc.array(
      fc.array(
        fc.oneof(
          { arbitrary: fc.constantFrom('A', 'B').map((model) => ({ model })), weight: 4 },
          { arbitrary: fc.integer({ min: 1, max: 6 }).map((n) => ({ serial: `S${n}` })), weight: 1 },
        ),
        { minLength: 1, maxLength: 2 },
      ),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ heights, loose, models, unusable, givesOnly, loads }) => {
    let next = 1;
    const take = () => `S${next++}`;
    const carts = heights.map((height, index) => ({
      id: `K${index}`,
      capacity: 2,
      stack: Array.from({ length: height }, take),
      ...(index === givesOnly ? { givesOnly: true } : {}),
    }));
    const floor = Array.from({ length: loose }, take);
    const serials = Array.from({ length: next - 1 }, (_, index) => `S${index + 1}`);
    return {
      carts,
      loose: floor,
      boxes: Object.fromEntries(serials.map((serial, index) => [serial, models[index % 7]!])),
      unusable: [...new Set(unusable.map((each) => `S${each + 1}`))].filter((serial) => serials.includes(serial)),
      loads: loads.map((boxes, index) => ({
        id: `L${index}`,
        boxes: boxes.map((box) => ('serial' in box && !serials.includes(box.serial) ? { model: 'A' } : box)),
      })),
    };
  });
