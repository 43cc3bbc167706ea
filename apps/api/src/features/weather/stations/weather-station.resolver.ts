import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { between, judgeValues, name } from '../../../platform/problems/judge-values.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { filled } from '../../../platform/records/filled.js';
import { propertiesThatNeed } from '../../portfolio/properties/properties-that-need.service.js';
import { WeatherStationRow } from './weather-station.entity.js';
import { WeatherStationInput } from './weather-station.input.js';
import { weatherStationOfId } from './weather-station.loader.js';
import { weatherStations } from './weather-station.repository.js';
import { showWeatherStation, WeatherStation } from './weather-station.type.js';

const RULES = {
  name: name(),
  latitude: between(-90, 90, 'degrees'),
  longitude: between(-180, 180, 'degrees'),
  elevationM: between(-500, 9000, 'm'),
};

const Kept = keptThingResolver({
  name: 'WeatherStation',
  row: WeatherStationRow,
  type: WeatherStation,
  input: WeatherStationInput,
  show: showWeatherStation,
  keep: (input) => filled<WeatherStationRow>(input, ['name', 'latitude', 'longitude', 'elevationM']),
  judge: async (_, input) => judgeValues(input, RULES),
  needs: (tx, id) => propertiesThatNeed(tx, 'weatherStationId', id),
});

/** Weather stations: read, created, changed, retired. */
@Resolver(() => WeatherStation)
export class WeatherStationResolver extends Kept {
  @Allow(Permission.ReadPortfolio)
  @Query(() => [WeatherStation], { name: 'weatherStations' })
  async all(@Tx() tx: OrganizationTransaction): Promise<WeatherStation[]> {
    return (await weatherStations.inUse(tx)).map(showWeatherStation);
  }

  @Allow(Permission.ReadPortfolio)
  @Query(() => WeatherStation, { nullable: true, name: 'weatherStation' })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<WeatherStation | null> {
    const row = isUuid(id) ? await weatherStationOfId.of(tx).load(id) : null;
    return row && showWeatherStation(row);
  }
}
