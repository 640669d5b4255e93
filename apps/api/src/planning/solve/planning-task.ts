import { constants, setPriority } from 'node:os';
import pg from 'pg';
import { type BadInput, type IntegerProgramSolver, canonicalJson, textHash } from '#kernel';
import { type SolveLimits, capSeconds } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { type Words, english } from '#words';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import { type InputScope, versionsOf } from '../snapshot/input-versions.js';
import type { Queryable } from '../snapshot/queryable.js';

/** What somebody waits for, what is looked for longer, and what goes on behind everything. Seconds only cap: what ends the work is the work. */
export type Effort = 'usual' | 'longer' | 'background';

const workOf: Record<Effort, Pick<SolveLimits, 'timeLimitSeconds' | 'work' | 'truckWork'>> = {
  usual: { timeLimitSeconds: capSeconds },
  longer: { timeLimitSeconds: 4 * capSeconds, work: 50_000_000, truckWork: 400 },
  background: { timeLimitSeconds: 4 * capSeconds, work: 100_000_000 },
};

/** What a thread is given: plain data. */
export interface TaskInput<Subject> {
  readonly databaseUrl: string;
  readonly subject: Subject;
  /** Of the inputs of an answer in hand: where they are still equal, nothing is solved. */
  readonly known: string | null;
  /** Thousandths done, written by the thread. */
  readonly progress: SharedArrayBuffer;
  readonly effort: Effort;
  /** Units of the search for box moves where the effort is the usual one; null: the engine's own. */
  readonly usualWork: number | null;
}

/** What a thread gives back: the answer with the versions and the fingerprint of the inputs that it was made from. */
export type Solved<Answer> =
  | { readonly kind: 'answer'; readonly versions: string; readonly fingerprint: string; readonly answer: Answer }
  | { readonly kind: 'same'; readonly versions: string }
  | { readonly kind: 'bad input'; readonly faults: readonly BadInput[] }
  | { readonly kind: 'not found'; readonly sentence: string };

export interface TaskParts<Subject, Inputs, Answer> {
  /** All that is needed, from one snapshot; `scope` says whose versions count, null where nobody keeps the answer. */
  readonly load: (db: Queryable, subject: Subject) => Promise<{ readonly scope: InputScope | null; readonly inputs: Inputs }>;
  /** What of the inputs the answer depends on. */
  readonly dependsOn: (inputs: Inputs, subject: Subject) => unknown;
  readonly solve: (inputs: Inputs, subject: Subject, limits: SolveLimits, words: Words) => Answer;
}

let solver: Promise<IntegerProgramSolver> | undefined;

/** A task of the pool: one read-only snapshot, then one pure solve, both in the thread; nothing of it runs where requests are answered. */
export function planningTask<Subject, Inputs, Answer>(parts: TaskParts<Subject, Inputs, Answer>) {
  yieldToRequests();
  /** `words`: a thread of the pool is given none and speaks English. */
  return async (
    { databaseUrl, subject, known, progress, effort, usualWork }: TaskInput<Subject>,
    words: Words = english,
  ): Promise<Solved<Answer>> => {
    try {
      const { versions, inputs } = await inSnapshot(databaseUrl, async (db) => {
        const loaded = await parts.load(db, subject);
        return { ...loaded, versions: loaded.scope === null ? '' : await versionsOf(db, loaded.scope) };
      });
      const fingerprint = textHash(canonicalJson(parts.dependsOn(inputs, subject) ?? null));
      if (fingerprint === known) return { kind: 'same', versions };
      const done = new Int32Array(progress);
      const limits = {
        now: () => performance.now(),
        integerProgram: await (solver ??= loadIntegerProgramSolver()),
        ...workOf[effort],
        ...(effort === 'usual' && usualWork !== null ? { work: usualWork } : {}),
        onProgress: (part: number) => void Atomics.store(done, 0, Math.round(1000 * part)),
      };
      const answer = parts.solve(inputs, subject, limits, words);
      return { kind: 'answer', versions, fingerprint, answer };
    } catch (fault) {
      if (fault instanceof BadInputError) return { kind: 'bad input', faults: fault.faults };
      if (fault instanceof NotFoundError) return { kind: 'not found', sentence: fault.message };
      throw fault;
    }
  };
}

/** On Linux a priority is a thread's own: this one gives way to the one that answers requests. Elsewhere it would slow the whole process. */
function yieldToRequests(): void {
  if (process.platform === 'linux') setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
}

async function inSnapshot<T>(databaseUrl: string, read: (db: Queryable) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: databaseUrl, application_name: 'cartwright planning' });
  // Its end is told by the statement that fails; told here alone it would end the thread.
  client.on('error', () => undefined);
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    return await read({ query: async (text, values) => (await client.query<object>(text, values)).rows });
  } finally {
    await client.end().catch(() => undefined);
  }
}
