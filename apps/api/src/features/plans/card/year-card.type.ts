import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Reason } from '../../../platform/graphql/reason.type.js';
import { Program } from '../../settings/programs/program.type.js';

/** A month on a cabinet card. */
@ObjectType()
export class YearCardMonth {
  @Field(() => MonthScalar)
  month: string;

  /** nothing is watered: the need is too small to be worth it */
  @Field(() => Boolean)
  isOff: boolean;

  /** the card's programs as they are in this month; null where no percent, days or start times keep this month's rules */
  @Field(() => [Program], { nullable: true })
  programs: Program[] | null;

  @Field(() => Float)
  neededLitres: number;

  /** the months whose weather the need is the mean of, latest first */
  @Field(() => [MonthScalar])
  needMonths: string[];

  /** null where there are no programs */
  @Field(() => Float, { nullable: true })
  usedLitres: number | null;
}

/** In which months frost was measured at the property's station. */
@ObjectType()
export class FrostRecord {
  /** 1 to 12, in the order of the cold season: November before January */
  @Field(() => [Int])
  months: number[];

  /** days whose lowest temperature was measured */
  @Field(() => Int)
  measuredDays: number;
}

/** A year of a controller on one card: programs entered once, and what is turned month by month. */
@ObjectType()
export class YearCard {
  @Field(() => ID)
  controllerId: string;

  /** why there is no card; null where there is one */
  @Field(() => Reason, { nullable: true })
  reason: Reason | null;

  @Field(() => MonthScalar, { nullable: true })
  thirstiest: string | null;

  @Field(() => [Program])
  programs: Program[];

  /** stations that get less than half of what they need in the thirstiest month: rules, hours or timer leave no more */
  @Field(() => [Int])
  shortStations: number[];

  @Field(() => [YearCardMonth])
  months: YearCardMonth[];

  /** null where no lowest temperatures are known */
  @Field(() => FrostRecord, { nullable: true })
  frost: FrostRecord | null;
}
