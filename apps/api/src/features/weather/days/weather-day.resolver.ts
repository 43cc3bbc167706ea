import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { judgeOrder } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import type { WeatherStationRow } from '../stations/weather-station.entity.js';
import { weatherStationOfId } from '../stations/weather-station.loader.js';
import { RecordWeatherDay } from './record-weather-day.service.js';
import { WeatherDayInput } from './weather-day.input.js';
import { weatherDays } from './weather-day.repository.js';
import { showWeatherDay, WeatherDay } from './weather-day.type.js';

const MOST_YEARS = 10;

/** Days of weather: read with their reference evapotranspiration, recorded. */
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
    const station = await stationOf(tx, stationId);
    return (await weatherDays.between(tx, station.id, from, until)).map((row) => showWeatherDay(row, station));
  }

  @Allow(Permission.WritePortfolio)
  @Mutation(() => WeatherDay)
  async recordWeatherDay(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => WeatherDayInput }) input: WeatherDayInput,
  ): Promise<WeatherDay> {
    const row = await this.recordDay.run(tx, input);
    return showWeatherDay(row, await stationOf(tx, row.stationId));
  }
}

async function stationOf(tx: OrganizationTransaction, id: string): Promise<WeatherStationRow> {
  const station = isUuid(id) ? await weatherStationOfId.of(tx).load(id) : null;
  if (!station) throw platformProblems.notFound({ thing: 'weather station', id });
  return station;
}
