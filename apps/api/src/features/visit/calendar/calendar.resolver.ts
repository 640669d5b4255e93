import { UuidArgument } from '../../../platform/graphql/uuid-argument.js';
import { Args, Field, ID, Mutation, ObjectType, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { CalendarService } from './calendar.service.js';

@ObjectType()
export class OwnCalendar {
  @Field(() => ID)
  id: string;

  @Field(() => String, { nullable: true, description: 'What is kept there alone; nothing: all depots.' })
  depot: string | null;

  @Field()
  madeAt: string;
}

@AllowEverybody()
@Resolver()
export class CalendarResolver {
  constructor(private readonly calendars: CalendarService) {}

  @Query(() => [OwnCalendar], { description: 'One’s own calendars whose address opens something.' })
  async ownCalendars(@Me() me: SignedIn): Promise<OwnCalendar[]> {
    return (await this.calendars.mine(me)).map((each) => ({ ...each, madeAt: each.madeAt.toISOString() }));
  }

  @Mutation(() => String, {
    description: 'A new secret for the address of one’s calendar, told once; earlier ones open nothing from now on.',
  })
  renewCalendar(@Args('depot', { type: () => String, nullable: true }) depot: string | null, @Me() me: SignedIn): Promise<string> {
    return this.calendars.renew(depot ?? null, me);
  }

  @Mutation(() => Boolean, { description: 'The address opens nothing any more.' })
  async withdrawCalendar(@Args('id', { type: () => ID }, new UuidArgument()) id: string, @Me() me: SignedIn): Promise<boolean> {
    await this.calendars.withdraw(id, me);
    return true;
  }
}
