import { Field, ID, InputType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a water report. */
@InputType()
export class WaterReportInput {
  @Field(() => ID)
  clientId: string;

  /** all of the client's properties when left out */
  @Field(() => ID, { nullable: true })
  propertyId?: string | null;

  /** the first day of a month */
  @Field(() => DateScalar)
  fromOn: string;

  /** the last day of a month */
  @Field(() => DateScalar)
  untilOn: string;

  @Field(() => String, { nullable: true })
  note?: string | null;
}
