import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** A station at which it rained in the last few days. */
@ObjectType()
export class RecentRain {
  @Field(() => ID)
  stationId: string;

  @Field(() => String)
  name: string;

  /** in all these days [mm] */
  @Field(() => Float)
  rainMm: number;

  @Field(() => DateScalar)
  lastRainOn: string;
}

/** Rain of so many days up to today is looked at: what fell before has been used or paused for. Common practice: pauses of 24 to 48 hours. [d] */
export const RECENT_DAYS = 4;
