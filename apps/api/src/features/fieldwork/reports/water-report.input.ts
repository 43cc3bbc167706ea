import { Field, ID, InputType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a water report. */
@InputType()
export class WaterReportInput {
  @Field(() => ID)
  clientId: string;

  @Field(() => DateScalar)
  fromOn: string;

  @Field(() => DateScalar)
  untilOn: string;

  @Field(() => String, { nullable: true })
  note?: string | null;
}
