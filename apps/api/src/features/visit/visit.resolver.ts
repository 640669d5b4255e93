import { UuidArgument } from '../../platform/graphql/uuid-argument.js';
import { Args, Field, ID, Int, Mutation, ObjectType, Query, Resolver } from '@nestjs/graphql';
import { type CheckKind, otherChecks } from '#trade';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../platform/sign-in/signed-in.js';
import { ResultsService } from './results.service.js';
import { VisitQuery } from './visit.query.js';
import { VisitService, mustBeSeason } from './visit.service.js';
import { CountedUseQuery } from './counted-use.query.js';
import { CountedUse, PossibleDayInput, VisitList, VisitResultInput, VisitSeason, VisitView } from './visit.types.js';

const id = { type: () => ID } as const;
const ids = { type: () => [ID] } as const;
const optional = { nullable: true, type: () => String } as const;
const optionalId = { nullable: true, type: () => ID } as const;
const uuid = new UuidArgument();

@ObjectType()
export class ShowInSeason {
  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;

  @Field()
  name: string;

  @Field()
  from: string;

  @Field()
  to: string;
}

const checkNamed = (text: string): CheckKind => {
  const check = (['examination', ...otherChecks] as const).find((each) => each === text);
  if (check) return check;
  throw new BadInputError([{ field: 'check', value: text.slice(0, 40), wanted: `examination, ${otherChecks.join(' or ')}` }]);
};

@Resolver()
export class VisitResolver {
  constructor(
    private readonly service: VisitService,
    private readonly query: VisitQuery,
    private readonly results: ResultsService,
    private readonly counted: CountedUseQuery,
  ) {}

  @AllowEverybody()
  @Query(() => [VisitView], { description: 'Visits of examiners, possible, agreed and cancelled, in a season.' })
  visits(@Args('from') from: string, @Args('to') to: string, @Args('depot', optional) depot: string | null): Promise<VisitView[]> {
    mustBeSeason(from, to);
    return this.query.inSeason(from, to, depot ?? null);
  }

  @AllowEverybody()
  @Query(() => [ShowInSeason], { description: 'Shows at which an examiner could come.' })
  showsInSeason(@Args('from') from: string, @Args('to') to: string): Promise<ShowInSeason[]> {
    mustBeSeason(from, to);
    return this.query.shows(from, to);
  }

  @AllowEverybody()
  @Query(() => [CountedUse], { description: 'What rules count by lifts or hours, the nearest to due first.' })
  countedUse(@Args('depot', optional) depot: string | null): Promise<CountedUse[]> {
    return this.counted.of(depot ?? null);
  }

  @AllowEverybody()
  @Query(() => VisitList, { description: 'The work list of a visit, with what was entered on it.' })
  visitList(@Args('id', id, uuid) visitId: string): Promise<VisitList> {
    return this.query.list(visitId);
  }

  @Allow('safety')
  @ByDeputy('house')
  @Query(() => VisitSeason, { description: 'The fewest visits over a season and all tours, with proof; and without some of them.' })
  visitSeason(
    @Args('from') from: string,
    @Args('to') to: string,
    @Args('depot', optional) depot: string | null,
    @Args('withIdle', { type: () => Boolean, description: 'What waits at its depot is to be in date as well, in a second count.' })
    withIdle: boolean,
    @Args('without', ids) without: string[],
    @Args('check', { type: () => String, nullable: true, description: 'electrical or pre-use; left out: the examination.' })
    check: string | null | undefined,
  ): Promise<VisitSeason> {
    const subject = { from, to, depot: depot ?? null, withIdle, without, check: checkNamed(check ?? 'examination') };
    return this.service.season(subject) as Promise<VisitSeason>;
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Int, { description: 'Days on which an examiner may come. Gives how many are new.' })
  addVisitDays(@Args('days', { type: () => [PossibleDayInput] }) days: PossibleDayInput[], @Me() me: SignedIn): Promise<number> {
    return this.service.addDays(days, me);
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Int, { description: 'Takes the visits of a season as they are planned; gives their number.' })
  agreeVisits(
    @Args('from') from: string,
    @Args('to') to: string,
    @Args('depot', optional) depot: string | null,
    @Args('visits', { ...ids, description: 'The visits that were seen.' }) visits: string[],
    @Me() me: SignedIn,
  ): Promise<number> {
    return this.service.agree({ from, to, depot: depot ?? null, withIdle: false, without: [], check: 'examination' }, visits, me);
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean, { description: 'Puts a visit on another day.' })
  async moveVisit(
    @Args('id', id, uuid) visitId: string,
    @Args('onDay') onDay: string,
    @Args('expectedVersion', { type: () => Int }) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.move(visitId, onDay, expectedVersion, me);
    return true;
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean, { description: 'Nobody comes on that day.' })
  async cancelVisit(
    @Args('id', id, uuid) visitId: string,
    @Args('expectedVersion', { type: () => Int }) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.cancel(visitId, expectedVersion, me);
    return true;
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => VisitList, { description: 'Results of a visit, those that are known; each becomes a record of its item.' })
  async enterVisitResults(
    @Args('id', id, uuid) visitId: string,
    @Args('examiner') examiner: string,
    @Args('reportFile', optionalId, uuid) reportFile: string | null,
    @Args('lines', { type: () => [VisitResultInput] }) lines: VisitResultInput[],
    @Me() me: SignedIn,
  ): Promise<VisitList> {
    await this.results.enter(visitId, { examiner, reportFile: reportFile ?? null }, lines, me);
    return this.query.list(visitId);
  }
}
