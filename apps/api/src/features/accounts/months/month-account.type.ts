import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Reason } from '../../../platform/graphql/reason.type.js';
import { DateScalar, DateTimeScalar, MonthScalar } from '../../../platform/graphql/scalars.js';

/** A volume that may be unknown: then it has a reason and no number. */
@ObjectType()
export class Volume {
  @Field(() => Float, { nullable: true })
  litres: number | null;

  @Field(() => Float, { nullable: true })
  sdLitres: number | null;

  /** the share of it that was filled in, 0 to 1 */
  @Field(() => Float)
  estimatedShare: number;

  @Field(() => Reason, { nullable: true })
  reason: Reason | null;
}

/** One of the inputs that a gap's uncertainty comes from: what to measure, and of what. */
@ObjectType()
export class UncertaintyShare {
  /** in the words of the account: area, plantFactor, flow, meter, ... */
  @Field(() => String)
  input: string;

  /** the zone, controller or meter that it is an input of; null for the weather */
  @Field(() => ID, { nullable: true })
  subjectId: string | null;

  /** its part of the gap's variance, 0 to 1 */
  @Field(() => Float)
  share: number;

  propertyId: string;
}

/** A difference of two volumes with its own uncertainty. */
@ObjectType()
export class Gap {
  @Field(() => Float, { nullable: true })
  litres: number | null;

  @Field(() => Float, { nullable: true })
  sdLitres: number | null;

  /** true when it lies within what can be measured, at the organization's confidence */
  @Field(() => Boolean, { nullable: true })
  within: boolean | null;

  @Field(() => Float, { nullable: true })
  money: number | null;

  @Field(() => Reason, { nullable: true })
  reason: Reason | null;

  /** why one of its volumes is an estimate where no record could give it */
  @Field(() => Reason, { nullable: true })
  estimate: Reason | null;

  /** at most five inputs that the uncertainty comes from, the largest first */
  @Field(() => [UncertaintyShare])
  inputs: UncertaintyShare[];
}

/** One zone's line of an account. */
@ObjectType()
export class ZoneAccount {
  @Field(() => ID)
  zoneId: string;

  @Field(() => Float, { nullable: true })
  neededLitres: number | null;

  @Field(() => Float, { nullable: true })
  programmedLitres: number | null;

  @Field(() => Float, { nullable: true })
  overLitres: number | null;

  @Field(() => Float, { nullable: true })
  underLitres: number | null;

  @Field(() => Float, { nullable: true })
  minutes: number | null;

  @Field(() => Reason, { nullable: true })
  reason: Reason | null;

  /** why programmed is an estimate; null where it was replayed */
  @Field(() => Reason, { nullable: true })
  estimate: Reason | null;
}

/** The four volumes and the gaps between them, of a property and month or of one meter. */
@ObjectType()
export class MonthAccount {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  propertyId: string;

  @Field(() => ID, { nullable: true })
  meterId: string | null;

  @Field(() => MonthScalar)
  month: string;

  @Field(() => DateScalar)
  through: string;

  @Field(() => Int)
  daysCovered: number;

  @Field(() => Int)
  daysInMonth: number;

  @Field(() => Volume)
  allowed: Volume;

  @Field(() => Volume)
  needed: Volume;

  @Field(() => Volume)
  programmed: Volume;

  @Field(() => Volume)
  metered: Volume;

  /** needed less allowed */
  @Field(() => Gap)
  landscapeGap: Gap;

  /** programmed less needed */
  @Field(() => Gap)
  settingsGap: Gap;

  /** metered less programmed */
  @Field(() => Gap)
  unexplainedGap: Gap;

  /** metered less needed: the plain question */
  @Field(() => Gap)
  aboveNeed: Gap;

  /** metered less allowed */
  @Field(() => Gap)
  aboveAllowed: Gap;

  @Field(() => Float, { nullable: true })
  overLitres: number | null;

  @Field(() => Float, { nullable: true })
  underLitres: number | null;

  @Field(() => [ZoneAccount])
  zones: ZoneAccount[];

  @Field(() => [Reason])
  notes: Reason[];

  @Field(() => Float, { nullable: true })
  etoMm: number | null;

  @Field(() => Float, { nullable: true })
  rainMm: number | null;

  @Field(() => Float, { nullable: true })
  pricePerLitre: number | null;

  @Field(() => String)
  inputsVersion: string;

  @Field(() => DateTimeScalar)
  computedAt: Date;
}
