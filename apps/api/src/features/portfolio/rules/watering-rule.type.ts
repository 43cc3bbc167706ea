import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { WateringRuleRow } from './watering-rule.entity.js';

/** A local restriction. */
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

  /** blank: any day; 'none': must not be watered */
  @Field(() => String, { nullable: true })
  allowedDays: string | null;

  @Field(() => Int, { nullable: true })
  daysPerWeek: number | null;

  /** odd or even */
  @Field(() => String, { nullable: true })
  addressParity: string | null;

  /** HH:MM */
  @Field(() => String, { nullable: true })
  blockedFrom: string | null;

  /** HH:MM */
  @Field(() => String, { nullable: true })
  blockedUntil: string | null;

  /** [min] */
  @Field(() => Float, { nullable: true })
  maxMinutes: number | null;

  /** [h] */
  @Field(() => Float, { nullable: true })
  hoursAfterRain: number | null;

  /** [mm] */
  @Field(() => Float, { nullable: true })
  rainMm: number | null;

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

/** A row as the screens see it. */
export function showWateringRule(row: WateringRuleRow): WateringRule {
  const { organizationId: _, typed: __, ...shown } = row;
  return Object.assign(new WateringRule(), shown);
}
