import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { WeatherStationRow } from './weather-station.entity.js';

/** A source of daily weather. */
@ObjectType()
export class WeatherStation {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => String)
  name: string;

  @Field(() => Float)
  latitude: number;

  @Field(() => Float)
  longitude: number;

  @Field(() => Float, { nullable: true })
  elevationM: number | null;
}

export const showWeatherStation = (row: WeatherStationRow): WeatherStation => Object.assign(new WeatherStation(), row);
