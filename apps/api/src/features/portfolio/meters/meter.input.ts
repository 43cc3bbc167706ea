import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a meter. */
@InputType()
export class MeterInput {
  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  water: string;

  @Field(() => String)
  unit: string;

  @Field(() => Float, { nullable: true })
  multiplier?: number | null;

  @Field(() => Int, { nullable: true })
  digits?: number | null;

  @Field(() => Float, { nullable: true })
  resolution?: number | null;

  @Field(() => Float, { nullable: true })
  sizeMm?: number | null;

  @Field(() => Float, { nullable: true })
  maxLPerMin?: number | null;

  @Field(() => Float, { nullable: true })
  pressureKpa?: number | null;

  @Field(() => Float, { nullable: true })
  indoorLPerDay?: number | null;

  @Field(() => Float, { nullable: true })
  pricePerUnit?: number | null;

  @Field(() => DateScalar, { nullable: true })
  installedOn?: string | null;

  @Field(() => Float, { nullable: true })
  firstRegister?: number | null;

  @Field(() => DateScalar, { nullable: true })
  removedOn?: string | null;

  @Field(() => Float, { nullable: true })
  lastRegister?: number | null;
}
