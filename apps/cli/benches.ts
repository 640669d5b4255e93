export interface Bench {
  readonly does: string;
  /** The module's `run(args, root)` prints its lines and gives the exit code. */
  readonly load: () => Promise<{ run: (args: readonly string[], root: string) => Promise<number> }>;
}

/** Name -> bench; the list that `npm run bench` prints. */
export const benches: Record<string, Bench> = {};
