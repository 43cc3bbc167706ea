import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import type { WeatherStationRow } from '../stations/weather-station.entity.js';
import { etoOfDay } from './eto-of-day.js';
import type { WeatherDayRow } from './weather-day.entity.js';

/** One day of a weather station: as it was measured, with the reference evapotranspiration computed from it. */
@ObjectType()
export class WeatherDay {
  @Field(() => ID)
  stationId: string;

  @Field(() => DateScalar)
  day: string;

  @Field(() => Float, { nullable: true })
  tmaxC: number | null;

  @Field(() => Float, { nullable: true })
  tminC: number | null;

  @Field(() => Float, { nullable: true })
  rhMaxPercent: number | null;

  @Field(() => Float, { nullable: true })
  rhMinPercent: number | null;

  @Field(() => Float, { nullable: true })
  dewPointC: number | null;

  @Field(() => Float, { nullable: true })
  windMPerS: number | null;

  @Field(() => Float, { nullable: true })
  solarMjPerM2: number | null;

  @Field(() => Float, { nullable: true })
  rainMm: number | null;

  /** as the source itself states it */
  @Field(() => Float, { nullable: true })
  givenEtoMm: number | null;

  /** null when the day's values do not suffice */
  @Field(() => Float, { nullable: true })
  etoMm: number | null;

  @Field(() => String, { nullable: true })
  etoMethod: string | null;

  /** what was assumed because nobody measured it */
  @Field(() => [String])
  etoAssumed: string[];
}

/** A row as the screens see it, with its reference evapotranspiration. */
export function showWeatherDay(row: WeatherDayRow, station: WeatherStationRow): WeatherDay {
  const { organizationId: _, typed: __, quality: ___, windHeightM: ____, ...measured } = row;
  const eto = etoOfDay(row, station);
  const computed =
    eto.etoMm === null
      ? { etoMm: null, etoMethod: null, etoAssumed: [] }
      : { etoMm: eto.etoMm as number, etoMethod: eto.method, etoAssumed: [...eto.assumed] };
  return Object.assign(new WeatherDay(), measured, computed);
}
