import { Field, ID, InputType } from '@nestjs/graphql';
import { DateScalar, MonthScalar } from '../../../../platform/graphql/scalars.js';

/** Where a rule change is worked off, and by whom. */
@InputType()
export class RuleChangeOrderInput {
  @Field(() => [ID])
  propertyIds: string[];

  @Field(() => MonthScalar)
  month: string;

  /** why the crew comes: the rule in a few words */
  @Field(() => String)
  what: string;

  @Field(() => ID, { nullable: true })
  crewId?: string | null;

  @Field(() => DateScalar, { nullable: true })
  day?: string | null;
}
