import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { PlantingRow } from './planting.entity.js';

/** A species or plant type in a zone. */
@ObjectType()
export class Planting {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  zoneId: string;

  @Field(() => String)
  species: string;

  @Field(() => Float, { nullable: true })
  coverPercent: number | null;

  @Field(() => String, { nullable: true })
  waterNeed: string | null;

  @Field(() => DateScalar, { nullable: true })
  plantedOn: string | null;
}

export const showPlanting = (row: PlantingRow): Planting => Object.assign(new Planting(), row);
