import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { WateringRuleRow } from './watering-rule.entity.js';

/** A local restriction on watering. */
@ObjectType()
export class WateringRule {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  supplierId: string;

  @Field(() => String)
  name: string;

  /** such as `Mon Wed Fri`; `none`: must not be watered */
  @Field(() => String, { nullable: true })
  allowedDays: string | null;

  @Field(() => Int, { nullable: true })
  daysPerWeek: number | null;

  @Field(() => String, { nullable: true })
  addressParity: string | null;

  /** local time HH:MM */
  @Field(() => String, { nullable: true })
  blockedFrom: string | null;

  @Field(() => String, { nullable: true })
  blockedUntil: string | null;

  /** that a station may run on a day */
  @Field(() => Float, { nullable: true })
  maxMinutes: number | null;

  @Field(() => Float, { nullable: true })
  hoursAfterRain: number | null;

  /** the least rain that counts */
  @Field(() => Float, { nullable: true })
  rainMm: number | null;

  /** what it applies to, separated by commas; all when absent */
  @Field(() => String, { nullable: true })
  plants: string | null;

  @Field(() => String, { nullable: true })
  exemptMethods: string | null;

  @Field(() => String, { nullable: true })
  water: string | null;

  @Field(() => DateScalar, { nullable: true })
  effectiveFrom: string | null;

  @Field(() => DateScalar, { nullable: true })
  effectiveUntil: string | null;
}

export const showWateringRule = (row: WateringRuleRow): WateringRule => Object.assign(new WateringRule(), row);
