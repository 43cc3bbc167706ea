import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import type { RecommendationLine } from './recommendation.repository.js';

/** Something that the client may say yes to. */
@ObjectType()
export class Recommendation {
  @Field(() => ID)
  id: string;

  /** work order: it waits for approval; finding: a yes makes a work order of it */
  @Field(() => String)
  from: string;

  @Field(() => Int)
  version: number;

  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  propertyName: string;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  what: string;

  @Field(() => Float, { nullable: true })
  cost: number | null;

  @Field(() => Float, { nullable: true })
  litres: number | null;

  @Field(() => Float, { nullable: true })
  money: number | null;
}

export const showRecommendation = (line: RecommendationLine): Recommendation => Object.assign(new Recommendation(), line);
