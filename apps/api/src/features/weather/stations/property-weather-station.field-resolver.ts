import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { weatherStationOfId } from './weather-station.loader.js';
import { showWeatherStation, WeatherStation } from './weather-station.type.js';

/** Adds to a property the station whose weather it is reckoned with. */
@Resolver(() => Property)
export class PropertyWeatherStationResolver {
  @ResolveField(() => WeatherStation, { nullable: true })
  async weatherStation(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<WeatherStation | null> {
    const row = property.weatherStationId ? await weatherStationOfId.of(tx).load(property.weatherStationId) : null;
    return row && showWeatherStation(row);
  }
}
