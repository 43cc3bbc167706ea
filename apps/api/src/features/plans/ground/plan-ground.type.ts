import { Field, Int, ObjectType } from '@nestjs/graphql';
import { Reason } from '../../../platform/graphql/reason.type.js';
import { DateTimeScalar, JsonScalar, MonthScalar } from '../../../platform/graphql/scalars.js';

/** What a plan of a controller asks for, all but what is set on it: carried to the controller, it is planned on there without signal. */
@ObjectType()
export class PlanGround {
  @Field(() => MonthScalar)
  month: string;

  /** by the organization's clock */
  @Field(() => DateTimeScalar)
  gatheredAt: Date;

  /** the form of the ground: what is of another form is not planned on */
  @Field(() => Int)
  form: number;

  /** as the computing library takes it; null where something is missing */
  @Field(() => JsonScalar, { nullable: true })
  ground: unknown;

  /** what is missing; null where nothing is */
  @Field(() => Reason, { nullable: true })
  reason: Reason | null;
}
