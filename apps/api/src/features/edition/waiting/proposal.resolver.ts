import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { Answerings } from './answerings.js';
import { ProposalQuery } from './proposal.query.js';
import { ProposalService } from './proposal.service.js';
import { ProposalAnswering, ProposalConnection, ProposalView } from './proposal.types.js';

@Resolver()
export class ProposalResolver {
  constructor(
    private readonly query: ProposalQuery,
    private readonly service: ProposalService,
    private readonly answerings: Answerings,
  ) {}

  @AllowEverybody()
  @Query(() => ProposalConnection, { description: 'What waits for the safety officer, oldest first.' })
  proposals(
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', { type: () => String, nullable: true }) after: string | null,
    @Me() me: SignedIn,
  ): Promise<ProposalConnection> {
    return this.query.proposals(me, first, after);
  }

  @AllowEverybody()
  @Query(() => [ProposalView], { description: 'What waits of one item: of itself and of its records.' })
  proposalsOfItem(@Args('itemId', { type: () => ID }) itemId: string, @Me() me: SignedIn): Promise<ProposalView[]> {
    return this.query.ofItem(me, itemId);
  }

  @AllowEverybody()
  @Query(() => [ProposalView], { description: 'What waits of a model, a rigging system or a load regime.' })
  proposalsOfCatalogue(@Me() me: SignedIn): Promise<ProposalView[]> {
    return this.query.ofCatalogue(me);
  }

  @Allow('safety')
  @ByDeputy('rows')
  @Mutation(() => Int, { description: 'Accepts or declines, in one act and with its reason; gives how many were answered.' })
  answerProposals(
    @Args('ids', { type: () => [ID], nullable: true, description: 'Left out: everything that waits, through the newest seen.' })
    ids: string[] | null,
    @Args('through', { type: () => ID, nullable: true }) through: string | null,
    @Args('accept') accept: boolean,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<number> {
    return this.service.answer({ ids: ids ?? null, through: through ?? null }, accept, reason, me);
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => ProposalAnswering, {
    description: 'Accepts or declines everything that waits, through the newest seen, in one signed act that is carried out in portions.',
  })
  answerAllProposals(
    @Args('through', { type: () => ID }) through: string,
    @Args('accept') accept: boolean,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<ProposalAnswering> {
    return this.answerings.start(through, accept, reason, me);
  }

  @AllowEverybody()
  @Query(() => ProposalAnswering, { nullable: true, description: 'The newest answer to all that waited, and how far it is.' })
  latestProposalAnswering(): Promise<ProposalAnswering | null> {
    return this.answerings.latest();
  }
}
