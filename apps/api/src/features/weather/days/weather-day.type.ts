import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import type { DayEto, EtoFilling, StationDay } from '@rillbook/agronomy/station-days/station-day.js';
import type { WeatherValue } from '@rillbook/agronomy/weather/plausible-weather-day.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import type { StationSeries } from '../series/station-series.js';
import { WeatherFilling } from '../series/weather-filling.type.js';
import { WeatherMark } from '../series/weather-mark.type.js';

/** One day of a weather station: as it was measured, what the checks say of it, and the reference evapotranspiration reckoned with. */
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

  /** what the checks say of the values; a value without a mark passed them */
  @Field(() => [WeatherMark])
  marks: WeatherMark[];

  /** null when the day's values do not suffice and nothing could fill it */
  @Field(() => Float, { nullable: true })
  etoMm: number | null;

  /** standard deviation over value */
  @Field(() => Float, { nullable: true })
  etoRelativeSd: number | null;

  /** null when it is not known, or the mean of a history */
  @Field(() => String, { nullable: true })
  etoMethod: string | null;

  /** what was assumed because nobody measured it */
  @Field(() => [String])
  etoAssumed: string[];

  /** why there is none */
  @Field(() => String, { nullable: true })
  etoReason: string | null;

  /** whether the reference evapotranspiration is not of this station's own day */
  @Field(() => Boolean)
  estimated: boolean;

  /** where it is from then */
  @Field(() => WeatherFilling, { nullable: true })
  filling: WeatherFilling | null;

  /** the rain that is reckoned with: the neighbour's where none was measured here */
  @Field(() => Float, { nullable: true })
  reckonedRainMm: number | null;

  /** how far it may be off, beside what rain differs from place to place; where it is not known, how much may have fallen */
  @Field(() => Float)
  reckonedRainSdMm: number;

  @Field(() => Boolean)
  rainFromNeighbour: boolean;
}

/** The fields of a day by the library's names of its values; the height of the anemometer is no field. */
const FIELDS = {
  tmax: 'tmaxC',
  tmin: 'tminC',
  rhmax: 'rhMaxPercent',
  rhmin: 'rhMinPercent',
  dewPoint: 'dewPointC',
  wind: 'windMPerS',
  windHeight: 'windMPerS',
  solar: 'solarMjPerM2',
  rain: 'rainMm',
  givenEto: 'givenEtoMm',
} as const satisfies Readonly<Record<WeatherValue, keyof WeatherDay>>;

/** A day of a series as the screens see it. */
export function showWeatherDay(series: StationSeries, day: StationDay): WeatherDay {
  const measured = series.measured.get(day.date);
  const values = Object.entries(FIELDS)
    .filter(([name]) => name !== 'windHeight')
    .map(([name, field]) => [field, measured?.[name as WeatherValue] ?? null] as const);
  return Object.assign(new WeatherDay(), {
    stationId: series.station.id,
    day: day.date,
    ...Object.fromEntries(values),
    marks: day.marks.map(({ value, check, effect, reason }) =>
      Object.assign(new WeatherMark(), { value: FIELDS[value], mark: check, effect, reason }),
    ),
    ...etoOf(day.eto),
    filling: day.eto.filling && fillingOf(day.eto.filling, series),
    reckonedRainMm: day.rainMm,
    reckonedRainSdMm: day.rainSdMm,
    rainFromNeighbour: day.rainFrom === 'neighbour',
  });
}

function etoOf(eto: DayEto) {
  if (eto.etoMm === null)
    return { etoMm: null, etoRelativeSd: null, etoMethod: null, etoAssumed: [], etoReason: eto.reason, estimated: false };
  const { etoMm, relativeSd, method, assumed, filling } = eto;
  return { etoMm, etoRelativeSd: relativeSd, etoMethod: method, etoAssumed: [...assumed], etoReason: null, estimated: filling !== null };
}

function fillingOf(filling: EtoFilling, { neighbour }: StationSeries): WeatherFilling {
  const isNormal = filling.from === 'normals';
  const days = isNormal ? filling.days : Math.min(...Object.values(filling.values).map(({ commonDays }) => commonDays));
  return Object.assign(new WeatherFilling(), {
    source: filling.from,
    stationName: isNormal ? null : (neighbour?.station.name ?? null),
    days,
  });
}
