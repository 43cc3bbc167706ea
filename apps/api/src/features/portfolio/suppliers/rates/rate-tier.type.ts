import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { RateTierRow } from './rate-tier.entity.js';

/** What water costs up to a volume, from a date on. */
@ObjectType()
export class RateTier {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  supplierId: string;

  @Field(() => DateScalar)
  effectiveFrom: string;

  /** each month, whatever the volume [money] */
  @Field(() => Float, { nullable: true })
  fixed: number | null;

  @Field(() => Int)
  tier: number;

  /** where the tier ends; the last has no end */
  @Field(() => Float, { nullable: true })
  upTo: number | null;

  @Field(() => String, { nullable: true })
  upToIs: string | null;

  @Field(() => String)
  unit: string;

  /** [money per unit] */
  @Field(() => Float)
  price: number;
}

export const showRateTier = (row: RateTierRow): RateTier => Object.assign(new RateTier(), row);
