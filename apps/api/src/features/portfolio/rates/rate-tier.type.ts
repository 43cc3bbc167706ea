import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { RateTierRow } from './rate-tier.entity.js';

/** What water costs up to a volume. */
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

  /** money a month */
  @Field(() => Float, { nullable: true })
  fixed: number | null;

  @Field(() => Int)
  tier: number;

  @Field(() => Float, { nullable: true })
  upTo: number | null;

  /** volume, or share of allowance */
  @Field(() => String, { nullable: true })
  upToIs: string | null;

  @Field(() => String)
  unit: string;

  /** money for the unit */
  @Field(() => Float)
  price: number;
}

/** A row as the screens see it. */
export function showRateTier(row: RateTierRow): RateTier {
  const { organizationId: _, typed: __, ...shown } = row;
  return Object.assign(new RateTier(), shown);
}
