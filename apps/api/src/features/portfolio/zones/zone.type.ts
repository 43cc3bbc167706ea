import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ZoneRow } from './zone.entity.js';

/** What one station waters. */
@ObjectType()
export class Zone {
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

  @Field(() => ID, { nullable: true })
  controllerId: string | null;

  @Field(() => Int, { nullable: true })
  station: number | null;

  @Field(() => ID, { nullable: true })
  meterId: string | null;

  @Field(() => Boolean)
  unmetered: boolean;

  @Field(() => Float)
  areaM2: number;

  @Field(() => String, { nullable: true })
  plants: string | null;

  @Field(() => String, { nullable: true })
  waterNeed: string | null;

  /** overrides what the water need says [–] */
  @Field(() => Float, { nullable: true })
  plantFactor: number | null;

  @Field(() => String)
  method: string;

  @Field(() => Float, { nullable: true })
  precipMmPerH: number | null;

  @Field(() => Float, { nullable: true })
  flowLPerMin: number | null;

  @Field(() => String, { nullable: true })
  flowSource: string | null;

  @Field(() => Float, { nullable: true })
  handLPerWeek: number | null;

  /** distribution uniformity of the low quarter [–] */
  @Field(() => Float, { nullable: true })
  duLq: number | null;

  @Field(() => String, { nullable: true })
  soil: string | null;

  @Field(() => Float, { nullable: true })
  slopePercent: number | null;

  /** until the line is full and water comes out, at each start; null where nobody has said [min] */
  @Field(() => Float, { nullable: true })
  fillMinutes: number | null;

  @Field(() => String, { nullable: true })
  sun: string | null;

  /** density factor [–] */
  @Field(() => Float, { nullable: true })
  density: number | null;

  @Field(() => Float, { nullable: true })
  rootDepthMm: number | null;

  @Field(() => Float, { nullable: true })
  mulchMm: number | null;

  @Field(() => Float, { nullable: true })
  leachingFraction: number | null;

  @Field(() => DateScalar, { nullable: true })
  establishedOn: string | null;
}

export const showZone = (row: ZoneRow): Zone => Object.assign(new Zone(), row);
