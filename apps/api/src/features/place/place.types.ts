import { Field, ID, ObjectType } from '@nestjs/graphql';

@ObjectType()
export class PlaceDecision {
  @Field(() => String, { nullable: true, description: 'The place whose rules are taken; null where an answer was taken back.' })
  rulesOf: string | null;

  @Field()
  because: string;

  @Field()
  decidedBy: string;

  @Field()
  decidedAt: string;
}

@ObjectType()
export class TourPlace {
  @Field(() => ID, { description: 'ISO 3166 code.' })
  place: string;

  @Field({ description: 'Rules of the place itself, or of its country, are on file: no answer holds.' })
  hasRules: boolean;

  @Field(() => String, { nullable: true, description: 'The place whose rules it is judged by, where it has none; null: it is not judged.' })
  judgedBy: string | null;

  @Field(() => [PlaceDecision], { description: 'What was decided of it for this tour, the newest first.' })
  decisions: PlaceDecision[];
}

@ObjectType()
export class TourPlaces {
  @Field(() => [TourPlace])
  places: TourPlace[];

  @Field(() => [String], { description: 'Places with rules on file, whose rules may be taken.' })
  ruled: string[];

  @Field(() => String, { nullable: true, description: 'Where the depot of the tour is, if rules of that place are on file: home rules.' })
  home: string | null;
}
