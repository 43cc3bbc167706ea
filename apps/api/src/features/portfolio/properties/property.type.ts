import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { PropertyRow } from './property.entity.js';

/** One place with an address, a position, a time zone. */
@ObjectType()
export class Property {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  clientId: string;

  @Field(() => String)
  name: string;

  @Field(() => String, { nullable: true })
  address: string | null;

  @Field(() => String, { nullable: true })
  city: string | null;

  /** [°] */
  @Field(() => Float, { nullable: true })
  latitude: number | null;

  /** [°] */
  @Field(() => Float, { nullable: true })
  longitude: number | null;

  /** [m] */
  @Field(() => Float, { nullable: true })
  elevationM: number | null;

  /** IANA */
  @Field(() => String)
  timeZone: string;

  weatherStationId: string | null;

  waterSupplierId: string | null;

  /** ordinance or contract */
  @Field(() => String, { nullable: true })
  allowanceFrom: string | null;

  /** share of reference ET that the ordinance allows [–] */
  @Field(() => Float, { nullable: true })
  allowanceEtaf: number | null;

  /** January to December [L] */
  @Field(() => [Float], { nullable: true })
  allowanceLitresPerMonth: number[] | null;

  /** [m²] */
  @Field(() => Float, { nullable: true })
  specialLandscapeAreaM2: number | null;

  notes: string | null;
}

/** A row as the screens see it. */
export function showProperty(row: PropertyRow): Property {
  const { organizationId: _, typed: __, ...shown } = row;
  return Object.assign(new Property(), shown);
}
