import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import type { RecommendationLine } from './recommendation.repository.js';
import { isInOwnWords } from './words-of-order.js';

/** Something that the client may say yes to. */
@ObjectType()
export class Recommendation {
  @Field(() => ID)
  id: string;

  /** work order: it waits for approval; finding: a yes makes a work order of it, which waits for an offer where the cost is not known */
  @Field(() => String)
  from: string;

  @Field(() => Int)
  version: number;

  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  propertyName: string;

  /** the zone that it is of; null where it is of more, or of none */
  @Field(() => String, { nullable: true })
  zoneName: string | null;

  @Field(() => String)
  kind: string;

  /** empty where the kind says it */
  @Field(() => String)
  what: string;

  /** null where it is not known: an offer is to be made before it can be approved [money] */
  @Field(() => Float, { nullable: true })
  cost: number | null;

  /** of a month */
  @Field(() => Float, { nullable: true })
  litres: number | null;

  /** of a month */
  @Field(() => Float, { nullable: true })
  money: number | null;
}

/** What an order says in the product's own words is told by the kind of its finding, so that each reads it in their own language. */
export const showRecommendation = ({ findingKind, findingZone, ...line }: RecommendationLine): Recommendation =>
  Object.assign(
    new Recommendation(),
    line,
    findingKind !== null &&
      isInOwnWords({ what: line.what, zoneName: findingZone }) && { kind: findingKind, zoneName: findingZone, what: '' },
  );
