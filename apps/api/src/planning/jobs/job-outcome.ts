import { GraphQLError } from 'graphql';
import { BadInputError } from '../../platform/faults/fault.js';
import { JobUnderWay, PlanningRefusal, viewOf } from './job.types.js';
import type { JobAnswer, JobRefusal } from './jobs.js';
import type { Solved } from '../solve/planning-task.js';
import { type JobRow, isOver } from './rows.js';

/** What is told of a job: what `done` makes of its answer, why there is none, or that it still goes on. Bad input is told as everywhere. */
export function outcomeOf<Done>(job: JobRow, done: (answer: never) => Done): Done | PlanningRefusal | JobUnderWay {
  if (!isOver(job)) return Object.assign(new JobUnderWay(), { job: viewOf(job) });
  const answer = job.answer as JobAnswer;
  if (answer.ok) return done(answer.value as never);
  const { code, sentence, reasons = [], faults } = answer.error;
  if (code === 'bad-input' && faults) throw new BadInputError(faults);
  if (code === 'not-found') throw notFound(answer.error);
  return Object.assign(new PlanningRefusal(), { code, sentence, reasons: [...reasons] });
}

/** The answer of a look. */
export function toldAnswer<Answer>(solved: Solved<Answer>): Answer {
  if (solved.kind === 'answer') return solved.answer;
  if (solved.kind === 'bad input') throw new BadInputError(solved.faults);
  if (solved.kind === 'not found') throw notFound(solved);
  throw new Error('nothing was known that could be the same');
}

const notFound = ({ sentence }: Pick<JobRefusal, 'sentence'>): GraphQLError =>
  new GraphQLError(sentence, { extensions: { code: 'NOT_FOUND' } });
