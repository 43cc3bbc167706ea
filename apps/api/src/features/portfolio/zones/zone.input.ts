import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a zone. */
@InputType()
export class ZoneInput {
  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => ID, { nullable: true })
  controllerId?: string | null;

  @Field(() => Int, { nullable: true })
  station?: number | null;

  @Field(() => ID, { nullable: true })
  meterId?: string | null;

  @Field(() => Boolean, { nullable: true })
  unmetered?: boolean | null;

  @Field(() => Float)
  areaM2: number;

  @Field(() => String, { nullable: true })
  plants?: string | null;

  @Field(() => String, { nullable: true })
  waterNeed?: string | null;

  @Field(() => Float, { nullable: true })
  plantFactor?: number | null;

  @Field(() => String)
  method: string;

  @Field(() => Float, { nullable: true })
  precipMmPerH?: number | null;

  @Field(() => Float, { nullable: true })
  flowLPerMin?: number | null;

  @Field(() => String, { nullable: true })
  flowSource?: string | null;

  @Field(() => Float, { nullable: true })
  handLPerWeek?: number | null;

  @Field(() => Float, { nullable: true })
  duLq?: number | null;

  @Field(() => String, { nullable: true })
  soil?: string | null;

  @Field(() => Float, { nullable: true })
  slopePercent?: number | null;

  @Field(() => Float, { nullable: true })
  fillMinutes?: number | null;

  @Field(() => String, { nullable: true })
  sun?: string | null;

  @Field(() => Float, { nullable: true })
  density?: number | null;

  @Field(() => Float, { nullable: true })
  rootDepthMm?: number | null;

  @Field(() => Float, { nullable: true })
  mulchMm?: number | null;

  @Field(() => Float, { nullable: true })
  leachingFraction?: number | null;

  @Field(() => DateScalar, { nullable: true })
  establishedOn?: string | null;
}
