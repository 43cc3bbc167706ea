import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { judgeOrder } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { stationSeriesOf } from '../series/station-series.loader.js';
import type { StationSeries } from '../series/station-series.js';
import { RecordWeatherDay } from './record-weather-day.service.js';
import { WeatherDayInput } from './weather-day.input.js';
import { showWeatherDay, WeatherDay } from './weather-day.type.js';

const MOST_YEARS = 10;

/** Days of weather: read with their marks and reference evapotranspiration, recorded. */
@Resolver(() => WeatherDay)
export class WeatherDayResolver {
  constructor(private readonly recordDay: RecordWeatherDay) {}

  @Allow(Permission.ReadPortfolio)
  @Query(() => [WeatherDay], { name: 'weatherDays' })
  async between(
    @Tx() tx: OrganizationTransaction,
    @Args('stationId', { type: () => ID }) stationId: string,
    @Args('from', { type: () => DateScalar }) from: string,
    @Args('until', { type: () => DateScalar }) until: string,
  ): Promise<WeatherDay[]> {
    judgeOrder('until', from, until, 'the first day');
    if (Number(until.slice(0, 4)) - Number(from.slice(0, 4)) > MOST_YEARS)
      throw platformProblems.valueRefused({
        field: 'until',
        found: until,
        expected: `at most ${MOST_YEARS} years after the first day: ask in parts`,
      });
    const series = await seriesOf(tx, stationId);
    return series.days.filter(({ date }) => date >= from && date <= until).map((day) => showWeatherDay(series, day));
  }

  @Allow(Permission.WritePortfolio)
  @Mutation(() => WeatherDay)
  async recordWeatherDay(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => WeatherDayInput }) input: WeatherDayInput,
  ): Promise<WeatherDay> {
    await this.recordDay.run(tx, input);
    // What was reckoned before in this request did not know the day.
    stationSeriesOf.of(tx).clearAll();
    const series = await seriesOf(tx, input.stationId);
    return showWeatherDay(series, series.days.find(({ date }) => date === input.day)!);
  }
}

async function seriesOf(tx: OrganizationTransaction, id: string): Promise<StationSeries> {
  const series = isUuid(id) ? await stationSeriesOf.of(tx).load(id) : null;
  if (!series) throw platformProblems.notFound({ thing: 'weather station', id });
  return series;
}
