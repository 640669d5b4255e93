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
  wrong.push(
    ...blockedFaults(problem, answer.placements),
    ...standingFaults(problem, answer.placements),
    ...wholeFaults(problem, answer.placements),
  );
  const utilisation = volume / (length * width * height);
  if (Math.abs(utilisation - answer.utilisation) > 1e-12) wrong.push(`fills ${utilisation}, not ${answer.utilisation}`);
  if (utilisation > answer.bound + 1e-12) wrong.push(`the bound ${answer.bound} is below what is filled`);
  return wrong;
}

const meet = (a: number, lengthA: number, b: number, lengthB: number): number => Math.min(a + lengthA, b + lengthB) - Math.max(a, b);

function blockedFaults({ blocked = [] }: ContainerCase, placements: readonly ContainerPlacement[]): string[] {
  return placements.flatMap((a, index) =>
    blocked.some((b) => meet(a.x, a.dx, b.x, b.dx) > 0 && meet(a.y, a.dy, b.y, b.dy) > 0 && meet(a.z, a.dz, b.z, b.dz) > 0)
      ? [`piece ${index} stands in a blocked place`]
      : [],
  );
}

/** What each bears when everything passes on its mass by the area on which it rests, from the top down. */
function standingFaults({ boxes }: ContainerCase, placements: readonly ContainerPlacement[]): string[] {
  const wrong: string[] = [];
  const carried = placements.map(() => 0);
  const downwards = placements.map((_, index) => index).sort((i, j) => placements[j]!.z - placements[i]!.z);
  for (const index of downwards) {
    const a = placements[index]!;
    const { massKg = 0, mostOnTopKg = Infinity, isFloorOnly = false } = boxes[a.box] ?? {};
    if (carried[index]! > mostOnTopKg + 1e-6) wrong.push(`piece ${index} bears ${carried[index]} kg of ${mostOnTopKg}`);
    if (a.z === 0) continue;
    if (isFloorOnly) wrong.push(`piece ${index} does not stand on the floor`);
    const below = placements.flatMap((b, at) => {
      const [along, across] = [meet(a.x, a.dx, b.x, b.dx), meet(a.y, a.dy, b.y, b.dy)];
      return b.z + b.dz === a.z && along > 0 && across > 0 ? [{ at, area: along * across }] : [];
    });
    const area = below.reduce((sum, each) => sum + each.area, 0);
    for (const each of below) carried[each.at]! += ((massKg + carried[index]!) * each.area) / area;
  }
  return wrong;
}

function wholeFaults({ boxes, limits, length, width }: ContainerCase, placements: readonly ContainerPlacement[]): string[] {
  const mass = (each: ContainerPlacement) => boxes[each.box]?.massKg ?? 0;
  const kg = placements.reduce((sum, each) => sum + mass(each), 0);
  const { payloadKg = Infinity, mostKgPerMetre = Infinity, mostEndOffset = Infinity, mostSideOffset = Infinity } = limits ?? {};
  const wrong = kg > payloadKg + 1e-6 ? [`weighs ${kg} kg of ${payloadKg}`] : [];
  if (kg > 0) {
    const end = placements.reduce((sum, each) => sum + mass(each) * (each.x + each.dx / 2 - length / 2), 0) / kg;
    const side = placements.reduce((sum, each) => sum + mass(each) * (each.y + each.dy / 2 - width / 2), 0) / kg;
    if (Math.abs(end) > mostEndOffset + 1e-6) wrong.push(`its centre is ${end} from the middle along, at most ${mostEndOffset}`);
    if (Math.abs(side) > mostSideOffset + 1e-6) wrong.push(`its centre is ${side} from the middle across, at most ${mostSideOffset}`);
  }
  if (mostKgPerMetre === Infinity) return wrong;
  // Every whole unit of length: slower than need be, and no question where the heaviest metre could begin.
  for (let from = 0; from <= Math.max(0, length - 1000); from++) {
    const on = placements.reduce((sum, each) => sum + (mass(each) * Math.max(0, meet(from, 1000, each.x, each.dx))) / each.dx, 0);
    if (on > mostKgPerMetre + 1e-6) return [...wrong, `the metre from ${from} carries ${on} kg of ${mostKgPerMetre}`];
  }
  return wrong;
}

/** Whether a piece of these sides lies in a way that its kind may. */
export function liesAsItMay(kind: ContainerCase['boxes'][number], { dx, dy, dz }: Pick<ContainerPlacement, 'dx' | 'dy' | 'dz'>): boolean {
  return [0, 1, 2].some((up) => {
    const [a, b] = [0, 1, 2].filter((each) => each !== up).map((each) => kind.edges[each]!) as [number, number];
    const isTurned = b === dx && a === dy && kind.mayTurn !== false;
    return kind.mayStand[up] === true && kind.edges[up] === dz && ((a === dx && b === dy) || isTurned);
  });
}
