import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of it: what water costs up to a volume. */
@InputType()
export class RateTierInput {
  @Field(() => ID)
  supplierId: string;

  @Field(() => DateScalar)
  effectiveFrom: string;

  @Field(() => Float, { nullable: true })
  fixed?: number | null;

  @Field(() => Int)
  tier: number;

  @Field(() => Float, { nullable: true })
  upTo?: number | null;

  @Field(() => String, { nullable: true })
  upToIs?: string | null;

  @Field(() => String)
  unit: string;

  @Field(() => Float)
  price: number;
}
