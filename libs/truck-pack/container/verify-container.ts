import type { ContainerAnswer, ContainerCase, ContainerPlacement } from './container-case.js';

/** What is wrong with a packing, a sentence each; written from the rules alone. */
export function verifyContainer(
  problem: ContainerCase,
  answer: Pick<ContainerAnswer, 'placements' | 'utilisation' | 'bound'>,
): readonly string[] {
  const wrong: string[] = [];
  const { length, width, height, boxes } = problem;
  const used = boxes.map(() => 0);
  let volume = 0;
  answer.placements.forEach(({ box, x, y, z, dx, dy, dz }, index) => {
    const kind = boxes[box];
    if (!kind) return void wrong.push(`piece ${index} is of no kind`);
    used[box]!++;
    volume += dx * dy * dz;
    if (![x, y, z, dx, dy, dz].every(Number.isInteger)) wrong.push(`piece ${index} is not on whole units`);
    if (x < 0 || y < 0 || z < 0 || x + dx > length || y + dy > width || z + dz > height) wrong.push(`piece ${index} is not inside`);
    if (!liesAsItMay(kind, { dx, dy, dz })) wrong.push(`piece ${index} lies in a way that its kind may not`);
  });
  used.forEach((count, box) => {
    if (count > boxes[box]!.count) wrong.push(`${count} of kind ${box} are used, ${boxes[box]!.count} there are`);
  });
  const sorted = [...answer.placements].sort((a, b) => a.x - b.x);
  for (let i = 0; i < sorted.length; i++)
    for (let j = i + 1; j < sorted.length && sorted[j]!.x < sorted[i]!.x + sorted[i]!.dx; j++) {
      const [a, b] = [sorted[i]!, sorted[j]!];
      if (a.y < b.y + b.dy && b.y < a.y + a.dy && a.z < b.z + b.dz && b.z < a.z + a.dz) wrong.push(`two pieces overlap at x ${b.x}`);
    }
  if (problem.support === 'full')
    answer.placements.forEach(({ x, y, z, dx, dy }, index) => {
      const below = answer.placements.filter((other) => other.z + other.dz === z);
      const overlap = (from: number, to: number, otherFrom: number, otherTo: number) =>
        Math.max(0, Math.min(to, otherTo) - Math.max(from, otherFrom));
      const area = below.reduce((sum, b) => sum + overlap(x, x + dx, b.x, b.x + b.dx) * overlap(y, y + dy, b.y, b.y + b.dy), 0);
      if (z !== 0 && area !== dx * dy) wrong.push(`piece ${index} rests on ${area} of ${dx * dy}`);
    });
  const utilisation = volume / (length * width * height);
  if (Math.abs(utilisation - answer.utilisation) > 1e-12) wrong.push(`fills ${utilisation}, not ${answer.utilisation}`);
  if (utilisation > answer.bound + 1e-12) wrong.push(`the bound ${answer.bound} is below what is filled`);
  return wrong;
}

/** Whether a piece of these sides lies in a way that its kind may. */
export function liesAsItMay(kind: ContainerCase['boxes'][number], { dx, dy, dz }: Pick<ContainerPlacement, 'dx' | 'dy' | 'dz'>): boolean {
  return [0, 1, 2].some((up) => {
    const [a, b] = [0, 1, 2].filter((each) => each !== up).map((each) => kind.edges[each]!) as [number, number];
    return kind.mayStand[up] === true && kind.edges[up] === dz && ((a === dx && b === dy) || (b === dx && a === dy));
  });
}
