import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar, MonthScalar } from '../../../platform/graphql/scalars.js';

/** A part that a repair needs. */
@InputType()
export class PartInput {
  @Field(() => String)
  name: string;

  @Field(() => Float)
  count: number;

  @Field(() => Float)
  price: number;
}

/** Which settings an adjustment is to enter. */
@InputType()
export class SettingsWishInput {
  /** `least change` or `full program`, as the controller's plan offers them */
  @Field(() => String)
  offer: string;

  /** the month that is planned for */
  @Field(() => MonthScalar)
  month: string;
}

/** What is said of a work order. */
@InputType()
export class WorkOrderInput {
  /** a UUID made where a new order is typed, which becomes its id: sent again it is the same order */
  @Field(() => ID, { nullable: true })
  deviceRecordId?: string | null;

  @Field(() => ID)
  propertyId: string;

  @Field(() => ID, { nullable: true })
  findingId?: string | null;

  @Field(() => ID, { nullable: true })
  controllerId?: string | null;

  @Field(() => ID, { nullable: true })
  meterId?: string | null;

  @Field(() => ID, { nullable: true })
  zoneId?: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => String, { nullable: true })
  what?: string | null;

  /** `finding` where `what` is what the page itself wrote of the finding: who reads another language is told of the finding in it */
  @Field(() => String, { nullable: true })
  wordsOf?: string | null;

  @Field(() => Float, { nullable: true })
  estimateMinutes?: number | null;

  /** the first day on which it may be done */
  @Field(() => DateScalar, { nullable: true })
  notBefore?: string | null;

  /** the last day on which it may be done */
  @Field(() => DateScalar, { nullable: true })
  dueOn?: string | null;

  /** what somebody of the crew must be able to do */
  @Field(() => [String], { nullable: true })
  skills?: string[] | null;

  @Field(() => Float, { nullable: true })
  labourHours?: number | null;

  @Field(() => Float, { nullable: true })
  labourRate?: number | null;

  @Field(() => [PartInput], { nullable: true })
  parts?: PartInput[] | null;

  /** for a new adjustment of a controller; where nothing is said, the least change of the month that is under way */
  @Field(() => SettingsWishInput, { nullable: true })
  settings?: SettingsWishInput | null;
}

/** How a work order ended for the crew: done, or left for another day. */
@InputType()
export class CloseOrderInput {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => Boolean)
  done: boolean;

  @Field(() => String, { nullable: true })
  note?: string | null;

  @Field(() => Boolean, { nullable: true })
  resolvesFinding?: boolean | null;
}
