import { Field, Float, ID, InputType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';

/** A reading as a device sends it, as often as it needs to. */
@InputType()
export class ReadingInput {
  /** made by the device when the reading was saved, never per attempt */
  @Field(() => ID)
  deviceRecordId: string;

  @Field(() => ID)
  meterId: string;

  @Field(() => DateTimeScalar)
  readAt: Date;

  @Field(() => Float)
  register: number;

  @Field(() => String, { nullable: true })
  note?: string | null;

  /** the reading that this one corrects */
  @Field(() => ID, { nullable: true })
  replacesId?: string | null;
}
