import { Field, Float, ID, InputType } from '@nestjs/graphql';

/** What is said of a property. */
@InputType()
export class PropertyInput {
  @Field(() => ID)
  clientId: string;

  @Field(() => String)
  name: string;

  @Field(() => String, { nullable: true })
  address?: string | null;

  @Field(() => String, { nullable: true })
  city?: string | null;

  @Field(() => Float, { nullable: true })
  latitude?: number | null;

  @Field(() => Float, { nullable: true })
  longitude?: number | null;

  @Field(() => Float, { nullable: true })
  elevationM?: number | null;

  @Field(() => String)
  timeZone: string;

  @Field(() => ID, { nullable: true })
  weatherStationId?: string | null;

  @Field(() => ID, { nullable: true })
  waterSupplierId?: string | null;

  @Field(() => String, { nullable: true })
  allowanceFrom?: string | null;

  @Field(() => Float, { nullable: true })
  allowanceEtaf?: number | null;

  @Field(() => [Float], { nullable: true })
  allowanceLitresPerMonth?: number[] | null;

  @Field(() => Float, { nullable: true })
  specialLandscapeAreaM2?: number | null;

  @Field(() => String, { nullable: true })
  notes?: string | null;
}
