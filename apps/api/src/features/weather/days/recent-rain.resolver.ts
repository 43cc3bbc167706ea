import { Query, Resolver } from '@nestjs/graphql';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { RECENT_DAYS, RecentRain } from './recent-rain.type.js';

import { weatherDays } from './weather-day.repository.js';

/** Whether it rained just now: what the office looks at the day after a storm. */
@Resolver(() => RecentRain)
export class RecentRainResolver {
  /** of today and the days before it for which pauses are worth a look, the wettest station first; none where it was dry */
  @Allow(Permission.ReadPortfolio)
  @Query(() => [RecentRain])
  async recentRain(@Tx() tx: OrganizationTransaction): Promise<RecentRain[]> {
    const today = todayOf(await organizations.own(tx));
    const from = Temporal.PlainDate.from(today).subtract({ days: RECENT_DAYS - 1 });
    return (await weatherDays.rainBetween(tx, from.toString(), today)).map((row) => Object.assign(new RecentRain(), row));
  }
}
