import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { MeterRow } from './meter.entity.js';

/** Measures water into a property. */
@ObjectType()
export class Meter {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  water: string;

  /** what the register counts in */
  @Field(() => String)
  unit: string;

  /** volume of a count of the register, in units [–] */
  @Field(() => Float)
  multiplier: number;

  /** after so many digits the register begins again at zero */
  @Field(() => Int, { nullable: true })
  digits: number | null;

  /** the least difference that the register shows [unit] */
  @Field(() => Float, { nullable: true })
  resolution: number | null;

  @Field(() => Float, { nullable: true })
  sizeMm: number | null;

  @Field(() => Float, { nullable: true })
  maxLPerMin: number | null;

  @Field(() => Float, { nullable: true })
  pressureKpa: number | null;

  /** of a mixed meter */
  @Field(() => Float, { nullable: true })
  indoorLPerDay: number | null;

  /** [money per unit] */
  @Field(() => Float, { nullable: true })
  pricePerUnit: number | null;

  @Field(() => DateScalar, { nullable: true })
  installedOn: string | null;

  @Field(() => Float, { nullable: true })
  firstRegister: number | null;

  @Field(() => DateScalar, { nullable: true })
  removedOn: string | null;

  @Field(() => Float, { nullable: true })
  lastRegister: number | null;
}

export const showMeter = (row: MeterRow): Meter => Object.assign(new Meter(), row);
