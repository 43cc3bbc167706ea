import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** A stretch of a day in which a program ran by the settings. */
@ObjectType()
export class ProgrammedWindow {
  @Field(() => ID)
  controllerId: string;

  @Field(() => String)
  program: string;

  /** elapsed since local midnight [min] */
  @Field(() => Float)
  fromMinute: number;

  /** elapsed since local midnight [min] */
  @Field(() => Float)
  untilMinute: number;
}

/** One local day of the strip: its hours in order, 23 or 25 of them where clocks change. */
@ObjectType()
export class UsageStripDay {
  @Field(() => DateScalar)
  date: string;

  /** what passed in each hour; null where it is not known [L] */
  @Field(() => [Float], { nullable: 'items' })
  hours: (number | null)[];

  /** the hour that the clock on the wall shows when each begins */
  @Field(() => [Int])
  clock: number[];

  /** null where it is not known [mm] */
  @Field(() => Float, { nullable: true })
  rainMm: number | null;

  @Field(() => [ProgrammedWindow])
  windows: ProgrammedWindow[];

  /** whether the settings of all controllers are known on this day; windows are none where they are not */
  @Field(() => Boolean)
  isProgrammedKnown: boolean;
}

/** A meter's usage hour by hour over some days, with what the settings held and the rain of each day. */
@ObjectType()
export class UsageStrip {
  @Field(() => ID)
  meterId: string;

  @Field(() => [UsageStripDay])
  days: UsageStripDay[];

  /** a smaller steady flow cannot be seen by this meter's feed; null where there is no feed by the hour [L/min] */
  @Field(() => Float, { nullable: true })
  smallestSeenLPerMin: number | null;
}
