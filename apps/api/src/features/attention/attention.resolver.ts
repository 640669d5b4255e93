import { Inject } from '@nestjs/common';
import { Field, ID, ObjectType, Query, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { changedInputs } from '#pack-plan';
import { type Words, tell } from '#words';
import { WORDS } from '../../platform/words.js';
import { CLOCK, type Clock, today } from '../../platform/config.js';
import { PlanReader } from '../plan/plan.reader.js';
import { TourFileReader } from '../../planning/tour-file.reader.js';
import { TourReader } from '../tour/tour.reader.js';
import { type PlanInForce, attentionNotes } from './attention.js';

@ObjectType()
export class AttentionNote {
  @Field()
  role: string;

  @Field()
  weight: string;

  @Field()
  code: string;

  @Field()
  subject: string;

  @Field(() => String, { nullable: true })
  date: string | null;

  @Field()
  sentence: string;

  @Field(() => ID, { nullable: true })
  tourId: string | null;

  @Field(() => ID, { nullable: true })
  showId: string | null;

  @Field(() => ID, { nullable: true })
  itemId: string | null;
}

@Resolver()
export class AttentionResolver {
  constructor(
    private readonly dataSource: DataSource,
    private readonly tours: TourReader,
    private readonly files: TourFileReader,
    private readonly plans: PlanReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  @Query(() => [AttentionNote], { description: 'What needs eyes today, for each of the three roles.' })
  async attention(): Promise<readonly AttentionNote[]> {
    const { manager } = this.dataSource;
    const [tours, rows] = await Promise.all([this.tours.tours(manager), this.plans.current()]);
    const files = new Map(await Promise.all(tours.map(async (tour) => [tour.id, await this.files.load(manager, tour.id)] as const)));
    const checks: { plan_id: string; load: string }[] = await manager.query(`SELECT plan_id, load FROM cart_check`);
    const inForce = rows.map(
      (row): PlanInForce => ({
        tourId: row.tourId,
        showId: row.showId,
        state: row.state,
        revision: row.revision,
        plan: row.plan,
        changed: files.has(row.tourId) ? changedInputs(row.plan, files.get(row.tourId)!).map((each) => tell(this.words.changes, each)) : [],
        confirmedLoads: checks.filter((each) => each.plan_id === row.id).map((each) => each.load),
      }),
    );
    return attentionNotes(
      tours.map((each) => each.data),
      inForce,
      today(this.clock),
    );
  }
}
