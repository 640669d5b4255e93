import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { barOfLent } from '#inspection-calendar';
import type { Lent } from '#tour-file';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { LentService } from './lent.service.js';
import { LentKit, LentKitInput, TakenIn } from './lent.types.js';

const onFile = `SELECT id AS "itemId", kind, model, count, depot, coalesce(rest->>'owner', '') AS owner, rest->'lent' AS lent
FROM item WHERE rest ? 'lent' ORDER BY rest->'lent' ? 'givenBack', rest->'lent'->'delivered'->>'on' DESC, place DESC LIMIT 500`;

@Resolver()
export class LentResolver {
  constructor(
    private readonly service: LentService,
    private readonly dataSource: DataSource,
  ) {}

  @AllowEverybody()
  @Query(() => [LentKit], { description: 'Kit of others, what is here first; the newest five hundred.' })
  async lentKit(): Promise<LentKit[]> {
    const rows: (Omit<LentKit, 'barredBy'> & { lent: Lent })[] = await this.dataSource.query(onFile);
    return rows.map((row) => ({ ...row, barredBy: barOfLent(row)?.code ?? null }));
  }

  @AllowEverybody()
  @Mutation(() => TakenIn, { description: 'Kit of others comes on file; nothing of it is used before its paper was seen.' })
  takeInLentKit(@Args('kit') kit: LentKitInput, @Me() me: SignedIn): Promise<TakenIn> {
    return this.service.takeIn(kit, me);
  }

  @Allow('safety')
  @ByDeputy({ item: 'itemId' })
  @Mutation(() => Boolean, { description: 'The safety officer clears on site that the paper is missing.' })
  async clearLentPaper(
    @Args('itemId', { type: () => ID }) itemId: string,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.clear(itemId, reason, me);
    return true;
  }

  @AllowEverybody()
  @Mutation(() => Boolean, { description: 'It goes back: nothing of it is used from now on.' })
  async giveBackLentKit(
    @Args('itemId', { type: () => ID }) itemId: string,
    @Args('on') on: string,
    @Args('condition') condition: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.giveBack(itemId, on, condition, me);
    return true;
  }
}
