import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { MonthScalar } from '../../../platform/graphql/scalars.js';

/** Findings of one kind in a month. */
@ObjectType()
export class FindingsInMonth {
  @Field(() => String)
  kind: string;

  @Field(() => Int)
  opened: number;

  @Field(() => Int)
  resolved: number;

  @Field(() => Int)
  open: number;

  /** water too much, of those open, a month; 0 where the kind has no amount, null where that of one of them is not known [L] */
  @Field(() => Float, { nullable: true })
  litres: number | null;

  /** water too little, of those open, a month; null where that of one of them is not known [L] */
  @Field(() => Float, { nullable: true })
  lackingLitres: number | null;

  /** of the water too much, of those open, a month; null where that of one of them is not known [money] */
  @Field(() => Float, { nullable: true })
  money: number | null;
}

/** What a crew did in a month. */
@ObjectType()
export class CrewInMonth {
  @Field(() => String)
  name: string;

  @Field(() => Int)
  stops: number;

  @Field(() => Int)
  visits: number;

  @Field(() => Int)
  ordersDone: number;
}

/** A site that will not come right without an upgrade: it needs more than is allowed. */
@ObjectType()
export class SiteToUpgrade {
  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => Float)
  litres: number;

  @Field(() => Float, { nullable: true })
  money: number | null;
}

/** The company's month. */
@ObjectType()
export class OwnersMonth {
  @Field(() => MonthScalar)
  month: string;

  /** water not used, against the weather-corrected need before the work; of the properties where that can be told */
  @Field(() => Float)
  savedLitres: number;

  /** half-width of the interval that holds in nine of ten cases */
  @Field(() => Float)
  halfWidthLitres: number;

  /** null where the price of water of one of these properties is not known */
  @Field(() => Float, { nullable: true })
  savedMoney: number | null;

  /** properties of which the saving can be told, and those with work of which it cannot */
  @Field(() => Int)
  toldOf: number;

  @Field(() => Int)
  notToldOf: number;

  @Field(() => [FindingsInMonth])
  findings: FindingsInMonth[];

  @Field(() => [CrewInMonth])
  crews: CrewInMonth[];

  /** orders that were done in the month, on a route or off it */
  @Field(() => Int)
  ordersDone: number;

  @Field(() => [SiteToUpgrade])
  sitesToUpgrade: SiteToUpgrade[];
}
