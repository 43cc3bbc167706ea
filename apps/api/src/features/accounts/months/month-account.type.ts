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
}

/** An input's part in the uncertainty of metered above need. */
@ObjectType()
export class UncertaintyShare {
  @Field(() => String)
  input: string;

  @Field(() => Float)
  share: number;
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

  @Field(() => [UncertaintyShare])
  uncertainty: UncertaintyShare[];

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
