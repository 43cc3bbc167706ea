import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { WeatherStation } from '../stations/weather-station.type.js';
import { lastDayOfStation } from './last-day-of-station.loader.js';

/** Adds to a weather station the newest day that it has. */
@Resolver(() => WeatherStation)
export class StationLastDayResolver {
  @ResolveField(() => DateScalar, { nullable: true })
  lastDay(@Parent() station: WeatherStation, @Tx() tx: OrganizationTransaction): Promise<string | null> {
    return lastDayOfStation.of(tx).load(station.id);
  }
}
