import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { EtoSeries } from '../gather/eto-series.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { stagesOfZones, weatherOfMonths, wholeYearUntil } from '../gather/year-of-zones.js';
import { WhatIf, WhatIfStage, WhatIfWeather, WhatIfZone } from './what-if.type.js';

/** A year of a property as its accounts take it, so that who asks what if begins where the accounts stand. */
@Resolver(() => Property)
export class WhatIfResolver {
  /** the year that ends with a month, else with the last that is over; null for who does not read the portfolio */
  @ResolveField(() => WhatIf, { nullable: true })
  async whatIf(
    @Tx() tx: OrganizationTransaction,
    @Parent() property: Property,
    @Args('until', { type: () => MonthScalar, nullable: true }) until: string | null | undefined,
  ): Promise<WhatIf | null> {
    if (!roleIncludes(tx.actor.role, Permission.ReadPortfolio)) return null;
    const months = wholeYearUntil(until ?? null, todayOf(await organizations.own(tx)));
    const stationId = property.weatherStationId ?? null;
    const days = stationId === null ? [] : weatherOfMonths(await EtoSeries.of(tx, stationId), months);
    const stages = stagesOfZones(await propertyFacts.zonesAndMeters(tx, property.id), months);
    return Object.assign(new WhatIf(), {
      months,
      weather: days.length ? shownWeather(days) : null,
      stages: stages.map(({ months: ofStage, zones }) =>
        Object.assign(new WhatIfStage(), { months: ofStage, zones: zones.map(shownZone) }),
      ),
    });
  }
}

function shownWeather(days: EtoSeries['days']): WhatIfWeather {
  return Object.assign(new WhatIfWeather(), {
    firstDay: days[0]!.date,
    etoMm: days.map(({ etoMm }) => etoMm),
    rainMm: days.map(({ rainMm }) => rainMm),
  });
}

function shownZone(zone: AccountZone): WhatIfZone {
  const { id: zoneId, areaM2, plantFactor, density, shade, rawMm, duLq, leachingFraction, assumed } = zone;
  const isCounted = !zone.handWatered && zone.meterId !== 'none';
  const inputs = { zoneId, areaM2, plantFactor, density, shade, rawMm, duLq, leachingFraction, assumed: [...assumed] };
  return Object.assign(new WhatIfZone(), { ...inputs, isCounted });
}
