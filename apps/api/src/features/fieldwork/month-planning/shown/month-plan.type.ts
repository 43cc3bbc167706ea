import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar, MonthScalar } from '../../../../platform/graphql/scalars.js';
import { Reason } from '../../../../platform/graphql/reason.type.js';
import { Property } from '../../../portfolio/properties/property.type.js';
import { Crew } from '../../crews/crew.type.js';
import { WorkOrder } from '../../orders/work-order.type.js';
import { Stop } from '../../routes/stop.type.js';
import { TravelBasis } from '../travel/travel-basis.type.js';

/** A stop with the times that its day gives it. Minutes since midnight, or of length. */
@ObjectType()
export class PlannedStop {
  @Field(() => Stop)
  stop: Stop;

  @Field(() => Int)
  driveMinutes: number;

  @Field(() => Int)
  beginMinute: number;

  @Field(() => Int)
  endMinute: number;

  /** begins so much later than the property's hours allow; 0 in time; null where it is not open long enough on this day */
  @Field(() => Int, { nullable: true })
  lateMinutes: number | null;

  @Field(() => Boolean)
  visited: boolean;

  /** the day on which the property's visit interval ends */
  @Field(() => DateScalar, { nullable: true })
  visitDueOn: string | null;
}

/** One crew on one day: its stops in order, and whether they fit. */
@ObjectType()
export class PlannedDay {
  /** crew and day */
  @Field(() => ID)
  id: string;

  @Field(() => Crew)
  crew: Crew;

  @Field(() => DateScalar)
  day: string;

  /** whether the crew works on this day of the week */
  @Field(() => Boolean)
  works: boolean;

  @Field(() => [PlannedStop])
  stops: PlannedStop[];

  @Field(() => Int)
  leavesMinute: number;

  @Field(() => Int)
  homeMinute: number;

  @Field(() => Int)
  driveMinutes: number;

  /** null where ways are not known */
  @Field(() => Float, { nullable: true })
  driveMetres: number | null;

  @Field(() => Int)
  workMinutes: number;

  @Field(() => Int)
  waitMinutes: number;

  /** the most work and driving that the day has */
  @Field(() => Int)
  mostMinutes: number;

  /** what does not fit */
  @Field(() => [Reason])
  says: Reason[];
}

/** Work or a due visit that has no day, and why. */
@ObjectType()
export class UnplacedStop {
  @Field(() => ID)
  id: string;

  @Field(() => Property)
  property: Property;

  @Field(() => [WorkOrder])
  orders: WorkOrder[];

  @Field(() => DateScalar, { nullable: true })
  visitDueOn: string | null;

  @Field(() => Int)
  minutes: number;

  /** as the last plan found; 'notPlannedYet' where it came after */
  @Field(() => Reason)
  reason: Reason;
}

/** One planning of a month. */
@ObjectType()
export class PlanRun {
  @Field(() => ID)
  id: string;

  @Field(() => DateTimeScalar)
  madeAt: Date;

  @Field(() => DateTimeScalar, { nullable: true })
  undoneAt: Date | null;

  /** stops that went to another crew or day, or got one */
  @Field(() => Int)
  moved: number;

  @Field(() => Int)
  unplaced: number;
}

/** How long a crew takes, as its own visits tell. */
@ObjectType()
export class CrewPaceShown {
  @Field(() => Crew)
  crew: Crew;

  /** what estimates are multiplied with */
  @Field(() => Float)
  factor: number;

  /** how many visits that rests on; 0 where there are too few and the factor is 1 */
  @Field(() => Int)
  visits: number;
}

/** The plan of a month: every crew's days, and what has none. */
@ObjectType()
export class MonthPlan {
  @Field(() => MonthScalar)
  month: string;

  @Field(() => DateScalar)
  today: string;

  @Field(() => [PlannedDay])
  days: PlannedDay[];

  @Field(() => [UnplacedStop])
  unplaced: UnplacedStop[];

  @Field(() => TravelBasis)
  travel: TravelBasis;

  @Field(() => [CrewPaceShown])
  pace: CrewPaceShown[];

  /** the last planning, undone or not */
  @Field(() => PlanRun, { nullable: true })
  latest: PlanRun | null;
}
