import type { ContainerCase, ContainerPlacement } from './container-case.js';

/** A load that keeps what is asked of the whole. */
export interface Settled {
  readonly placements: readonly ContainerPlacement[];
  readonly volume: number;
}

const metre = 1000;
const slack = 1e-6;

/**
 * The load moved away from the walls as far as its centre asks for, and without the boxes on top that a metre of the floor does not bear; undefined where
 * less than `above` is left of it, or where its centre cannot be brought near enough. Beside blocked places it is not moved.
 */
export function settled(problem: ContainerCase, placements: readonly ContainerPlacement[], above: number): Settled | undefined {
  const light = thinned(problem, placements);
  const volume = light.reduce((sum, { dx, dy, dz }) => sum + dx * dy * dz, 0);
  if (volume <= above) return undefined;
  const level = levelled(problem, light);
  const along = shiftFor(problem, level, 'x', 'dx', problem.length, problem.limits?.mostEndOffset);
  const across = shiftFor(problem, level, 'y', 'dy', problem.width, problem.limits?.mostSideOffset);
  if (along === undefined || across === undefined) return undefined;
  return { placements: level.map((each) => ({ ...each, x: each.x + along, y: each.y + across })), volume };
}

const massOf = ({ boxes }: ContainerCase, { box }: ContainerPlacement): number => boxes[box]!.massKg ?? 0;

/**
 * Where the centre is too far to one side: slices of the load that no box reaches over, each as it stands or turned left to right, the one that pulls hardest first,
 * always to the side that is lighter so far.
 */
function levelled(problem: ContainerCase, placements: readonly ContainerPlacement[]): readonly ContainerPlacement[] {
  const most = problem.limits?.mostSideOffset;
  if (most === undefined || (problem.blocked ?? []).length > 0) return placements;
  const pull = (slice: readonly ContainerPlacement[]) =>
    slice.reduce((sum, each) => sum + massOf(problem, each) * (each.y + each.dy / 2 - problem.width / 2), 0);
  const mass = placements.reduce((sum, each) => sum + massOf(problem, each), 0);
  if (Math.abs(pull(placements)) <= most * mass) return placements;
  let side = 0;
  return slicesOf(placements)
    .map((slice) => ({ slice, pull: pull(slice) }))
    .sort((a, b) => Math.abs(b.pull) - Math.abs(a.pull))
    .flatMap(({ slice, pull: own }) => {
      const isTurned = side * own > 0;
      side += isTurned ? -own : own;
      return isTurned ? slice.map((each) => ({ ...each, y: problem.width - each.y - each.dy })) : slice;
    });
}

function slicesOf(placements: readonly ContainerPlacement[]): ContainerPlacement[][] {
  const slices: { end: number; boxes: ContainerPlacement[] }[] = [];
  for (const each of [...placements].sort((a, b) => a.x - b.x)) {
    const last = slices.at(-1);
    if (!last || each.x >= last.end) slices.push({ end: each.x + each.dx, boxes: [each] });
    else {
      last.boxes.push(each);
      last.end = Math.max(last.end, each.x + each.dx);
    }
  }
  return slices.map((slice) => slice.boxes);
}

/** The least way to move the load so that its centre is near enough to the middle. */
function shiftFor(
  problem: ContainerCase,
  placements: readonly ContainerPlacement[],
  at: 'x' | 'y',
  size: 'dx' | 'dy',
  extent: number,
  most: number | undefined,
): number | undefined {
  const mass = placements.reduce((sum, each) => sum + massOf(problem, each), 0);
  if (most === undefined || mass === 0) return 0;
  const moment = placements.reduce((sum, each) => sum + massOf(problem, each) * (each[at] + each[size] / 2), 0);
  const off = moment / mass - extent / 2;
  if (Math.abs(off) <= most) return 0;
  const hasBlocked = (problem.blocked ?? []).length > 0;
  const toEnd = hasBlocked ? 0 : extent - Math.max(...placements.map((each) => each[at] + each[size]));
  const toStart = hasBlocked ? 0 : Math.min(...placements.map((each) => each[at]));
  const wanted = off > 0 ? -Math.ceil(off - most) : Math.ceil(-off - most);
  return wanted > toEnd || -wanted > toStart ? undefined : wanted;
}

/** Without boxes that nothing stands on, taken from the metre that carries too much until none does; the largest mass for its volume goes first. */
function thinned(problem: ContainerCase, placements: readonly ContainerPlacement[]): readonly ContainerPlacement[] {
  const most = problem.limits?.mostKgPerMetre;
  if (most === undefined) return placements;
  const left = [...placements];
  for (let over = heaviestMetre(problem, left); over.kg > most + slack; over = heaviestMetre(problem, left)) {
    const free = left.filter((each) => each.x < over.from + metre && each.x + each.dx > over.from && isFree(each, left));
    const density = (each: ContainerPlacement) => massOf(problem, each) / (each.dx * each.dy * each.dz);
    const out = free.reduce((worst, each) => (density(each) > density(worst) ? each : worst));
    left.splice(left.indexOf(out), 1);
  }
  return left;
}

const isFree = (a: ContainerPlacement, all: readonly ContainerPlacement[]): boolean =>
  all.every((b) => b.z !== a.z + a.dz || b.x >= a.x + a.dx || b.x + b.dx <= a.x || b.y >= a.y + a.dy || b.y + b.dy <= a.y);

/** What stands on a metre changes evenly but where a box begins or ends, so the heaviest metre begins or ends there. */
function heaviestMetre(problem: ContainerCase, placements: readonly ContainerPlacement[]): { from: number; kg: number } {
  let heaviest = { from: 0, kg: 0 };
  for (const start of placements.flatMap(({ x, dx }) => [x, x + dx, x - metre, x + dx - metre])) {
    const from = Math.max(0, Math.min(start, problem.length - metre));
    const kg = placements.reduce((sum, each) => {
      const within = Math.min(each.x + each.dx, from + metre) - Math.max(each.x, from);
      return within > 0 ? sum + (massOf(problem, each) * within) / each.dx : sum;
    }, 0);
    if (kg > heaviest.kg) heaviest = { from, kg };
  }
  return heaviest;
}
