import { ArgsType, Field, Int } from '@nestjs/graphql';
import { longestWaitMs } from './jobs.js';

/** How planning is asked for. */
@ArgsType()
export class AskedArgs {
  @Field(() => Int, { defaultValue: longestWaitMs, description: 'How long the answer is waited for, ms.' })
  waitMs: number;
}
