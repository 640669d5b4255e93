import { Args, ID, Int, Query, Resolver } from '@nestjs/graphql';
import { Allow } from '../../platform/sign-in/signed-in.js';
import { LogQuery } from './log.query.js';
import { LogActConnection, LogLineConnection, LogSeal } from './log.types.js';

const text = { type: () => String, nullable: true } as const;
const id = { type: () => ID, nullable: true } as const;

@Resolver()
export class LogResolver {
  constructor(private readonly query: LogQuery) {}

  @Allow('safety', 'system')
  @Query(() => LogLineConnection, { description: 'Who did what and when, newest first.' })
  log(
    @Args('item', id) item: string | null,
    @Args('tour', id) tour: string | null,
    @Args('person', id) person: string | null,
    @Args('day', { ...text, description: 'YYYY-MM-DD, in the zone.' }) day: string | null,
    @Args('zone', { ...text, description: 'Of the time zone database; UTC where left out.' }) zone: string | null,
    @Args('act', { ...id, description: 'Lines of this act alone.' }) act: string | null,
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', text) after: string | null,
  ): Promise<LogLineConnection> {
    return this.query.lines({ item, tour, person, day, zone, act }, first, after);
  }

  @Allow('safety', 'system')
  @Query(() => LogActConnection, { description: 'Who did what and when, newest first, what was done at once as one.' })
  logActs(
    @Args('item', id) item: string | null,
    @Args('tour', id) tour: string | null,
    @Args('person', id) person: string | null,
    @Args('day', { ...text, description: 'YYYY-MM-DD, in the zone.' }) day: string | null,
    @Args('zone', { ...text, description: 'Of the time zone database; UTC where left out.' }) zone: string | null,
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', text) after: string | null,
  ): Promise<LogActConnection> {
    return this.query.acts({ item, tour, person, day, zone }, first, after);
  }

  @Allow('safety', 'system')
  @Query(() => LogSeal, { nullable: true, description: 'The newest seal of the log; none where nothing was sealed yet.' })
  async logSeal(): Promise<LogSeal | null> {
    return (await this.query.head()) ?? null;
  }
}
