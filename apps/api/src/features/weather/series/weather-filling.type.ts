import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';

/** Where the reference evapotranspiration of a day without its own is from. */
@ObjectType()
export class WeatherFilling {
  /** neighbour or normals */
  @Field(() => String)
  source: string;

  /** the station that stood in; null for normals */
  @Field(() => String, { nullable: true })
  stationName: string | null;

  /** days that it was learnt from: common days with the neighbour, or days of that month in the history */
  @Field(() => Int)
  days: number;
}

/** The station whose days may stand in for another's. */
@ObjectType()
export class WeatherNeighbour {
  @Field(() => ID)
  id: string;

  @Field(() => String)
  name: string;

  @Field(() => Float)
  distanceKm: number;
}

/** What is usual at a station in one month of the year, from its own history. */
@ObjectType()
export class WeatherNormal {
  /** 1 for January */
  @Field(() => Int)
  month: number;

  /** days of that month in the history */
  @Field(() => Int)
  days: number;

  /** of a day; null where too few days are known */
  @Field(() => Float, { nullable: true })
  etoMm: number | null;

  @Field(() => Float, { nullable: true })
  tmaxC: number | null;

  @Field(() => Float, { nullable: true })
  tminC: number | null;

  /** why it is not known */
  @Field(() => String, { nullable: true })
  reason: string | null;
}
