import { z } from 'zod';
import { type BadInput, type Result, ok, readInput, refuse } from '#kernel';

/** Whole units of length; in millimetres no container is longer than this. */
const length = z.int().min(1).max(100_000);
const from = z.int().min(-100_000).max(100_000);
const mass = z.number().min(0).max(1_000_000);

const containerCaseSchema = z.strictObject({
  length,
  width: length,
  height: length,
  boxes: z
    .array(
      z.strictObject({
        edges: z.tuple([length, length, length]),
        mayStand: z.tuple([z.boolean(), z.boolean(), z.boolean()]),
        mayTurn: z.boolean().optional(),
        count: z.int().min(0).max(100_000),
        massKg: mass.optional(),
        mostOnTopKg: mass.optional(),
        isFloorOnly: z.boolean().optional(),
      }),
    )
    .max(10_000),
  support: z.literal('full').optional(),
  blocked: z
    .array(z.strictObject({ x: from, y: from, z: from, dx: length, dy: length, dz: length }))
    .max(200)
    .optional(),
  limits: z
    .strictObject({
      payloadKg: mass.optional(),
      mostKgPerMetre: mass.optional(),
      mostEndOffset: mass.optional(),
      mostSideOffset: mass.optional(),
    })
    .optional(),
});

/** One kind of box of a single-container problem: three edges, which of them may stand vertical, how many there are. Whole units of length. */
export interface ContainerBox {
  readonly edges: readonly [number, number, number];
  readonly mayStand: readonly [boolean, boolean, boolean];
  /** Left out: it may be turned about the vertical. `false`: the first of its edges that lie stays along the length. */
  readonly mayTurn?: boolean | undefined;
  readonly count: number;
  /** Nothing where left out. */
  readonly massKg?: number | undefined;
  /** What may stand on one of them, all together; left out: any mass. */
  readonly mostOnTopKg?: number | undefined;
  readonly isFloorOnly?: boolean | undefined;
}

/** A cuboid that takes nothing and carries nothing: a wheel arch, what a contoured pallet lacks of a cuboid. */
export interface BlockedPlace {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
}

/** What the load as a whole must keep; a metre is 1,000 units of length, so lengths are in millimetres then. */
export interface StowageLimits {
  readonly payloadKg?: number | undefined;
  /** The most that stands on any metre of the length, each box spread evenly along its own length. */
  readonly mostKgPerMetre?: number | undefined;
  /** How far the load's centre may be from the middle, along and across. */
  readonly mostEndOffset?: number | undefined;
  readonly mostSideOffset?: number | undefined;
}

/** What a case is made from. */
export interface ContainerInput {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly ContainerBox[];
  /** `full`: all of every box's base rests on the floor or on boxes. Without it boxes may float. */
  readonly support?: 'full' | undefined;
  /** With full support only. */
  readonly blocked?: readonly BlockedPlace[] | undefined;
  /** Masses, what boxes bear, and these are kept with full support only. */
  readonly limits?: StowageLimits | undefined;
}

declare const wasRead: unique symbol;

/** Fill one container with as much volume as possible; no order. Only the readers here give one. */
export type ContainerCase = ContainerInput & { readonly [wasRead]: true };

/** Reads a case: whole lengths, at least one of each; every fault with field, value and what would be right. */
export function readContainerCase(input: unknown): Result<ContainerCase, readonly BadInput[]> {
  const read = readInput(containerCaseSchema, input);
  if (read.ok && read.value.support !== 'full' && isWeighed(read.value))
    return refuse([{ field: 'support', value: 'none', wanted: 'full, where masses, limits or blocked places are kept' }]);
  return read.ok ? ok(read.value as ContainerInput as ContainerCase) : read;
}

/** Whether anything but room decides what goes where. */
export const isWeighed = ({ boxes, blocked, limits }: Pick<ContainerInput, 'boxes' | 'blocked' | 'limits'>): boolean =>
  (blocked?.length ?? 0) > 0 || limits !== undefined || boxes.some((each) => each.mostOnTopKg !== undefined || each.isFloorOnly === true);

/** The same reader for callers whose data have a type. */
export const makeContainerCase = (input: ContainerInput): Result<ContainerCase, readonly BadInput[]> => readContainerCase(input);

export interface ContainerPlacement {
  /** Index of its kind. */
  readonly box: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
}

export interface ContainerAnswer {
  readonly placements: readonly ContainerPlacement[];
  /** Part of the container's volume that is filled, 0 to 1. */
  readonly utilisation: number;
  /** No packing fills more than this part: what there is, or the whole container. */
  readonly bound: number;
  /** Greedy completions that were made. */
  readonly completions: number;
  /** Equal limits give the equal packing unless it says `clock`. */
  readonly stoppedBy: 'proof' | 'work' | 'clock';
  /** What the checker finds wrong with the packing, a sentence each; left out where it agrees. */
  readonly mismatch?: readonly string[];
}

/**
 * Reads a file of published problems: the number of problems, then for each its number (and generator seed), container, number of kinds, and a
 * line each kind: number, edge, flag, edge, flag, edge, flag, quantity. Throws where it is none.
 */
export function readContainerProblems(text: string): ContainerCase[] {
  const numbers = text
    .split(/\s+/)
    .filter((each) => each !== '')
    .map(Number);
  let at = 0;
  const next = (): number => {
    const value = numbers[at++];
    if (value === undefined || !Number.isFinite(value)) throw new Error(`no container problems: word ${at} is no number`);
    return value;
  };
  return Array.from({ length: next() }, () => {
    next();
    next();
    const [length, width, height] = [next(), next(), next()];
    const boxes = Array.from({ length: next() }, (): ContainerBox => {
      next();
      const [a, fa, b, fb, c, fc, count] = [next(), next(), next(), next(), next(), next(), next()];
      return { edges: [a, b, c], mayStand: [fa === 1, fb === 1, fc === 1], count };
    });
    const read = readContainerCase({ length, width, height, boxes });
    if (!read.ok) throw new Error(`no container problem: ${JSON.stringify(read.error[0])}`);
    return read.value;
  });
}

/** Every way a kind of box may lie: its extent along x, y, z; each once. */
export function orientationsOf({ edges, mayStand, mayTurn = true }: ContainerBox): readonly (readonly [number, number, number])[] {
  const seen = new Set<string>();
  return [0, 1, 2].flatMap((up) => {
    if (!mayStand[up]) return [];
    const [a, b] = [0, 1, 2].filter((each) => each !== up) as [number, number];
    return (
      [
        [edges[a]!, edges[b]!, edges[up]!],
        [edges[b]!, edges[a]!, edges[up]!],
      ] as const
    ).filter((each, way) => {
      const key = each.join();
      if (seen.has(key) || (way === 1 && !mayTurn)) return false;
      seen.add(key);
      return true;
    });
  });
}
