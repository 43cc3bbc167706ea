import { Field, Float, ObjectType } from '@nestjs/graphql';

/** Where driving times come from. */
@ObjectType()
export class TravelBasis {
  /** routing server, or straight-line estimate */
  @Field(() => String)
  source: string;

  /** way by road over the straight line; null with a routing server */
  @Field(() => Float, { nullable: true })
  factor: number | null;

  @Field(() => Float, { nullable: true })
  kilometresPerHour: number | null;

  /** what each drive takes besides [min] */
  @Field(() => Float, { nullable: true })
  perDriveMinutes: number | null;

  /** why the configured routing server was not used: not reached, no answer in time, refused, no whole table; null where none is configured or it answered */
  @Field(() => String, { nullable: true })
  serverFault: string | null;
}
