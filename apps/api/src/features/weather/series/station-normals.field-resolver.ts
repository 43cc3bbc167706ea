import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { WeatherStation } from '../stations/weather-station.type.js';
import { stationSeriesOf } from './station-series.loader.js';
import { WeatherNeighbour, WeatherNormal } from './weather-filling.type.js';

/** Adds to a weather station what is usual there, and which station may stand in for it. */
@Resolver(() => WeatherStation)
export class StationNormalsResolver {
  @ResolveField(() => [WeatherNormal])
  async normals(@Parent() station: WeatherStation, @Tx() tx: OrganizationTransaction): Promise<WeatherNormal[]> {
    const series = await stationSeriesOf.of(tx).load(station.id);
    return (series?.normals ?? []).map(({ month, days, etoMm, tmax, tmin, reason }) =>
      Object.assign(new WeatherNormal(), { month, days, etoMm, tmaxC: tmax, tminC: tmin, reason }),
    );
  }

  @ResolveField(() => WeatherNeighbour, { nullable: true })
  async neighbour(@Parent() station: WeatherStation, @Tx() tx: OrganizationTransaction): Promise<WeatherNeighbour | null> {
    const found = (await stationSeriesOf.of(tx).load(station.id))?.neighbour;
    if (!found) return null;
    return Object.assign(new WeatherNeighbour(), { id: found.station.id, name: found.station.name, distanceKm: found.distanceKm });
  }
}
