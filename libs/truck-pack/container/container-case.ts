import { z } from 'zod';
import { type BadInput, type Result, ok, readInput } from '#kernel';

/** Whole units of length; in millimetres no container is longer than this. */
const length = z.int().min(1).max(100_000);

const containerCaseSchema = z.strictObject({
  length,
  width: length,
  height: length,
  boxes: z
    .array(
      z.strictObject({
        edges: z.tuple([length, length, length]),
        mayStand: z.tuple([z.boolean(), z.boolean(), z.boolean()]),
        count: z.int().min(0).max(100_000),
      }),
    )
    .max(10_000),
  support: z.literal('full').optional(),
});

/** One kind of box of a single-container problem: three edges, which of them may stand vertical, how many there are. Whole units of length. */
export interface ContainerBox {
  readonly edges: readonly [number, number, number];
  readonly mayStand: readonly [boolean, boolean, boolean];
  readonly count: number;
}

/** What a case is made from. */
export interface ContainerInput {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly ContainerBox[];
  /** `full`: all of every box's base rests on the floor or on boxes. Without it boxes may float. */
  readonly support?: 'full';
}

declare const wasRead: unique symbol;

/** Fill one container with as much volume as possible; no order. Only the readers here give one. */
export type ContainerCase = ContainerInput & { readonly [wasRead]: true };

/** Reads a case: whole lengths, at least one of each; every fault with field, value and what would be right. */
export function readContainerCase(input: unknown): Result<ContainerCase, readonly BadInput[]> {
  const read = readInput(containerCaseSchema, input);
  return read.ok ? ok(read.value as ContainerInput as ContainerCase) : read;
}

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
export function orientationsOf({ edges, mayStand }: ContainerBox): readonly (readonly [number, number, number])[] {
  const seen = new Set<string>();
  return [0, 1, 2].flatMap((up) => {
    if (!mayStand[up]) return [];
    const [a, b] = [0, 1, 2].filter((each) => each !== up) as [number, number];
    return (
      [
        [edges[a]!, edges[b]!, edges[up]!],
        [edges[b]!, edges[a]!, edges[up]!],
      ] as const
    ).filter((each) => {
      const key = each.join();
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  });
}
