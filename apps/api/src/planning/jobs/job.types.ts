import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import type { JobAnswer } from './jobs.js';
import type { JobRow } from './rows.js';

@ObjectType({ description: 'A piece of planning that somebody asked for.' })
export class Job {
  @Field(() => ID)
  id: string;

  @Field({ description: 'make, swap, loading, search, improve, tour' })
  kind: string;

  @Field({ description: 'waiting, running, done, refused, failed, cancelled' })
  state: string;

  @Field(() => Float, { description: 'Part of the work that is done, 0 to 1.' })
  progress: number;

  @Field()
  askedBy: string;

  @Field({ description: 'How it ended, in words; empty until then, and where the answer says it better.' })
  sentence: string;

  @Field(() => String, { nullable: true, description: 'Why it was refused or failed.' })
  errorCode: string | null;

  @Field(() => String, { nullable: true, description: 'What ended the work: proof, work, clock.' })
  stoppedBy: string | null;
}

@ObjectType({ description: 'The answer is not there yet: ask again under the same Idempotency-Key, or look at the job.' })
export class JobUnderWay {
  @Field(() => Job)
  job: Job;
}

@ObjectType({ description: 'Nothing was saved, and why.' })
export class PlanningRefusal {
  @Field()
  code: string;

  @Field()
  sentence: string;

  @Field(() => [String])
  reasons: string[];
}

export function viewOf({ id, kind, state, progress, askedBy, answer, errorCode, stoppedBy }: JobRow): Job {
  return { id, kind, state, progress, askedBy, sentence: sentenceOf(answer as JobAnswer | null), errorCode, stoppedBy };
}

function sentenceOf(answer: JobAnswer | null): string {
  if (!answer) return '';
  return answer.ok ? ((answer.value as { readonly sentence?: string }).sentence ?? '') : answer.error.sentence;
}
