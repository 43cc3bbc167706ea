import { Field, Float, ID, InputType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a planting. */
@InputType()
export class PlantingInput {
  @Field(() => ID)
  zoneId: string;

  @Field(() => String)
  species: string;

  @Field(() => Float, { nullable: true })
  coverPercent?: number | null;

  @Field(() => String, { nullable: true })
  waterNeed?: string | null;

  @Field(() => DateScalar, { nullable: true })
  plantedOn?: string | null;
}
