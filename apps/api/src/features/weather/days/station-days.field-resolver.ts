import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { WeatherStation } from '../stations/weather-station.type.js';
import { daySpanOfStation } from './day-span-of-station.loader.js';

/** Adds to a weather station the first and the newest day that it has. */
@Resolver(() => WeatherStation)
export class StationDaysResolver {
  @ResolveField(() => DateScalar, { nullable: true })
  async firstDay(@Parent() station: WeatherStation, @Tx() tx: OrganizationTransaction): Promise<string | null> {
    return (await daySpanOfStation.of(tx).load(station.id))?.first ?? null;
  }

  @ResolveField(() => DateScalar, { nullable: true })
  async lastDay(@Parent() station: WeatherStation, @Tx() tx: OrganizationTransaction): Promise<string | null> {
    return (await daySpanOfStation.of(tx).load(station.id))?.last ?? null;
  }
}
