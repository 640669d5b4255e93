import { Inject, Injectable } from '@nestjs/common';
import { toldAnswer } from './job-outcome.js';
import { SOLVERS, type Solvers, type Task } from '../solve/solver-pool.js';

/** Answers kept. */
const mostKept = 200;

/** An answer with the key of the inputs that it was made from, as its own snapshot had them. */
export interface Keyed<Answer> {
  readonly key: string;
  readonly answer: Answer;
}

/** Looks that were made before of the same inputs cost nothing; those that are asked for at the same time share one. */
@Injectable()
export class LookCache {
  private readonly answers = new Map<string, Promise<Keyed<unknown>>>();

  constructor(@Inject(SOLVERS) private readonly solvers: Solvers) {}

  /** `key` names the inputs of one kind of task: equal keys, equal answers. */
  look<Answer>(key: string, task: Task): Promise<Keyed<Answer>> {
    const name = `${task.file} ${key}`;
    const known = this.answers.get(name);
    // Put at the end: the ones looked at last are kept longest.
    this.answers.delete(name);
    const answer = known ?? this.solvers.look<Keyed<Answer>>(task).then(toldAnswer);
    this.answers.set(name, answer);
    if (!known) this.keepIfTrue(name, key, answer);
    return answer as Promise<Keyed<Answer>>;
  }

  /** Kept only where the inputs were still those of the key when the answer was made. */
  private keepIfTrue(name: string, key: string, answer: Promise<Keyed<unknown>>): void {
    const forget = (): void => {
      if (this.answers.get(name) === answer) this.answers.delete(name);
    };
    answer.then((made) => (made.key === key ? undefined : forget()), forget);
    const [oldest] = this.answers.keys();
    if (oldest !== undefined && this.answers.size > mostKept) this.answers.delete(oldest);
  }
}
