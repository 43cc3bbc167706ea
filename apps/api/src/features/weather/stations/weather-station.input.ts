import { Field, Float, InputType } from '@nestjs/graphql';

/** What is said of a weather station. */
@InputType()
export class WeatherStationInput {
  @Field(() => String)
  name: string;

  @Field(() => Float)
  latitude: number;

  @Field(() => Float)
  longitude: number;

  @Field(() => Float, { nullable: true })
  elevationM?: number | null;
}
