import { Args, ArgsType, Field, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { AskedArgs } from '../../planning/jobs/asked.args.js';
import { outcomeOf } from '../../planning/jobs/job-outcome.js';
import type { JobUnderWay, PlanningRefusal } from '../../planning/jobs/job.types.js';
import { Jobs } from '../../planning/jobs/jobs.js';
import type { Wish } from './loading-decisions.js';
import { LoadingService } from './loading.service.js';
import { type LoadingDone, LoadingResult, RowSwapView } from './loading.types.js';

const id = { type: () => ID } as const;
const int = { type: () => Int } as const;
type Result = Promise<LoadingDone | PlanningRefusal | JobUnderWay>;

@ArgsType()
class WishArgs extends AskedArgs {
  @Field(() => ID)
  planId: string;
}

/** What people at the dock want of the trucks; every answer is a draft planned around it, or why that cannot be. */
@Resolver()
export class LoadingResolver {
  constructor(
    private readonly service: LoadingService,
    private readonly jobs: Jobs,
  ) {}

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'These pieces stay where they stand in this plan.' })
  keepPieces(@Args() args: WishArgs, @Args('pieces', { type: () => [String] }) pieces: string[], @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'keep', pieces }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'A whole row stays where it stands in this plan.' })
  keepRow(@Args() args: WishArgs, @Args('truck') truck: string, @Args('row', int) row: number, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'keep row', truck, row }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'Rows that are ticked stand in the truck: nothing moves them any more.' })
  keepLoaded(@Args() args: WishArgs, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'keep loaded' }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'These pieces, or all that are kept, may be planned anywhere again.' })
  letPiecesGo(
    @Args() args: WishArgs,
    @Args('pieces', { type: () => [String], nullable: true }) pieces: string[] | null,
    @Me() me: SignedIn,
  ): Result {
    return this.wish(args, { kind: 'let go', pieces: pieces ?? null }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'This piece need not come off in its turn; who says so, and why, is named in the plan.' })
  waiveOrder(@Args() args: WishArgs, @Args('piece') piece: string, @Args('reason') reason: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'waive', piece, reason }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'This piece does not travel with this show; who says so, and why, is named in the plan.' })
  leavePiece(@Args() args: WishArgs, @Args('piece') piece: string, @Args('reason') reason: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'stay', piece, reason }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'A piece that was to stay behind travels after all.' })
  takePieceAlong(@Args() args: WishArgs, @Args('piece') piece: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'travel', piece }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult)
  endWaiver(@Args() args: WishArgs, @Args('piece') piece: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'end waiver', piece }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'One case of the register more, for this show.' })
  takeCase(@Args() args: WishArgs, @Args('case') caseId: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'take', case: caseId }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'A case that was taken along at the dock stays behind after all.' })
  leaveCase(@Args() args: WishArgs, @Args('case') caseId: string, @Me() me: SignedIn): Result {
    return this.wish(args, { kind: 'leave', case: caseId }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, { description: 'A group at the door, at the nose, or (null) in its usual place.' })
  setGroupEnd(
    @Args() args: WishArgs,
    @Args('group') group: string,
    @Args('end', { type: () => String, nullable: true }) end: string | null,
    @Me() me: SignedIn,
  ): Result {
    return this.wish(args, { kind: 'end', group, end: end ?? null }, me);
  }

  @AllowEverybody()
  @Query(() => RowSwapView, { description: 'What two exchanged rows would do to axles, side balance and order; nothing is kept.' })
  async rowSwap(
    @Args('planId', id) planId: string,
    @Args('truck') truck: string,
    @Args('first', int) first: number,
    @Args('second', int) second: number,
  ): Promise<RowSwapView> {
    const { places: _places, axles, breaches, ...rest } = await this.service.lookAtSwap({ planId, truck, first, second });
    return { ...rest, axles: [...axles], breaches: [...breaches] };
  }

  @Allow('warehouse', 'system')
  @Mutation(() => LoadingResult, {
    description: 'Two rows change places; a reason waives the unloading order where that is all that is broken.',
  })
  swapRows(
    @Args() args: WishArgs,
    @Args('truck') truck: string,
    @Args('first', int) first: number,
    @Args('second', int) second: number,
    @Args('reason', { type: () => String, nullable: true }) reason: string | null,
    @Me() me: SignedIn,
  ): Result {
    return this.wish(args, { kind: 'swap rows', truck, first, second, reason: reason ?? null }, me);
  }

  private async wish({ planId, waitMs }: WishArgs, wish: Wish, me: SignedIn): Result {
    const job = await this.service.wish(planId, wish, me);
    return outcomeOf(await this.jobs.wait(job, waitMs), (answer: LoadingDone) => answer);
  }
}
