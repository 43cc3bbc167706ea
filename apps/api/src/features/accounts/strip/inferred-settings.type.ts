import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** Water that recurs at the same time of the clock, as a program would make it. Minutes are of all its stations together. */
@ObjectType()
export class InferredProgram {
  @Field(() => String)
  name: string;

  /** in the words of settings: daily, 'Mon Wed Fri' or 'every 3 from 2026-09-01' */
  @Field(() => String)
  days: string;

  /** HH:MM on the property's clocks, to the nearest five minutes */
  @Field(() => [String])
  starts: string[];

  /** how long water ran after each start [min] */
  @Field(() => [Float])
  minutes: number[];

  /** the share of days on which water and program agree [–] */
  @Field(() => Float)
  confidence: number;
}

/** What a controller seems to be set to, by the usage of its meter alone: to be confirmed by a person who reads it. */
@ObjectType()
export class InferredSettings {
  @Field(() => ID)
  meterId: string;

  /** the last day of usage that was looked at */
  @Field(() => DateScalar)
  through: string;

  /** the surest first */
  @Field(() => [InferredProgram])
  programs: InferredProgram[];
}
