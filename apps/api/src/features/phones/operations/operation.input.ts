import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';

/** One thing that was saved on a phone, sent as often as needed. */
@InputType()
export class OperationInput {
  /** made by the phone when it was saved, never per attempt */
  @Field(() => ID)
  key: string;

  /** the place in the phone's own order */
  @Field(() => Int)
  seq: number;

  @Field(() => String)
  kind: string;

  /** the form of the body; forms are understood for at least 90 days after phones stop writing them */
  @Field(() => Int)
  payloadVersion: number;

  /** by the organization's clock as far as the phone knew it */
  @Field(() => DateTimeScalar)
  savedAt: Date;

  /** JSON, as it was saved */
  @Field(() => String)
  body: string;
}

/** Which phone, and what is still on it. */
@InputType()
export class DeviceInput {
  @Field(() => ID)
  id: string;

  @Field(() => String, { nullable: true })
  name?: string | null;

  @Field(() => String, { nullable: true })
  appVersion?: string | null;

  @Field(() => Int)
  waiting: number;

  @Field(() => Int)
  photosWaiting: number;

  @Field(() => Int)
  refused: number;

  @Field(() => DateTimeScalar, { nullable: true })
  oldestWaitingAt?: Date | null;
}
