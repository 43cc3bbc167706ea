import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar } from '../../../../platform/graphql/scalars.js';

/** What is said of a watering rule. */
@InputType()
export class WateringRuleInput {
  @Field(() => ID)
  supplierId: string;

  @Field(() => String)
  name: string;

  @Field(() => String, { nullable: true })
  allowedDays?: string | null;

  @Field(() => Int, { nullable: true })
  daysPerWeek?: number | null;

  @Field(() => String, { nullable: true })
  addressParity?: string | null;

  @Field(() => String, { nullable: true })
  blockedFrom?: string | null;

  @Field(() => String, { nullable: true })
  blockedUntil?: string | null;

  @Field(() => Float, { nullable: true })
  maxMinutes?: number | null;

  @Field(() => Float, { nullable: true })
  hoursAfterRain?: number | null;

  @Field(() => Float, { nullable: true })
  rainMm?: number | null;

  @Field(() => String, { nullable: true })
  plants?: string | null;

  @Field(() => String, { nullable: true })
  exemptMethods?: string | null;

  @Field(() => String, { nullable: true })
  water?: string | null;

  @Field(() => DateScalar, { nullable: true })
  effectiveFrom?: string | null;

  @Field(() => DateScalar, { nullable: true })
  effectiveUntil?: string | null;
}
