import type { Words } from '#words';
import type { Solved, TaskInput } from '../../apps/api/src/planning/solve/planning-task.js';
import type { Solvers, Task } from '../../apps/api/src/planning/solve/solver-pool.js';

interface TaskModule {
  readonly default: (input: TaskInput<object>, words: Words) => Promise<Solved<never>>;
}

/** Plans here, from the sources of the tasks, in the words that are given: words are functions, and no thread can be sent a function. */
export function solversIn(words: Words, databaseUrl: string): Solvers {
  const run = async ({ file, subject, known = null, effort = 'usual', progress = new SharedArrayBuffer(4) }: Task) => {
    const source = file.replace('/dist/apps/', '/apps/').replace(/\.js$/, '.ts');
    const task = (await import(source)) as TaskModule;
    return task.default({ databaseUrl, subject, known, effort, progress, usualWork: null }, words);
  };
  return { solve: run, look: run };
}
