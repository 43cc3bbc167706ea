import { Field, Float, ObjectType } from '@nestjs/graphql';

/** What the ordinance allows a property in a year of usual weather. */
@ObjectType()
export class OrdinanceYear {
  /** null where it cannot be said, for the reason beside it [L] */
  @Field(() => Float, { nullable: true })
  litres: number | null;

  /** no-zones: no irrigated area is on record; normals-missing: the station's history lacks a month of the year */
  @Field(() => String, { nullable: true })
  reason: 'no-zones' | 'normals-missing' | null;
}
