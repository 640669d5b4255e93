import { type AllocationCase, readAllocationCase } from '#cart-allocation';
import { seededRandom } from '#kernel';

/** A floor of some carts with a plan for certain: loads are made of boxes that there are, some pinned. The same for the same seed. */
export function seededFloor(seed: number, { carts = 6, loads = 4, pinned = 0.4 } = {}): AllocationCase {
  const random = seededRandom(seed);
  const below = (count: number) => Math.floor(count * random());
  const boxes: Record<string, string> = {};
  const box = () => {
    const serial = `S${String(Object.keys(boxes).length).padStart(3, '0')}`;
    boxes[serial] = 'ABC'[below(3)]!;
    return serial;
  };
  const stacks = Array.from({ length: carts }, () => Array.from({ length: below(5) }, box));
  const loose = Array.from({ length: 2 + below(4) }, box);
  const left = Object.keys(boxes);
  const wanted = Array.from({ length: loads }, () =>
    Array.from({ length: Math.min(left.length, 1 + below(4)) }, () => left.splice(below(left.length), 1)[0]!),
  );
  const unusable = left.splice(0, below(3));
  const read = readAllocationCase({
    carts: stacks.map((stack, index) => ({ id: `K${String(index).padStart(2, '0')}`, capacity: 4, stack })),
    loose,
    boxes,
    unusable,
    loads: wanted
      .filter((each) => each.length > 0)
      .map((each, index) => ({
        id: `L${String(index).padStart(2, '0')}`,
        boxes: each.map((serial) => (random() < pinned ? { serial } : { model: boxes[serial]! })),
      })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}
