import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Meter } from '../../portfolio/meters/meter.type.js';
import { meterDaysKey, usageDaysBetween } from './usage-days.loader.js';
import { UsageDay, showUsageDay } from './usage-day.type.js';

const MOST_DAYS = 400;

/** A meter's feed, by local day. */
@Resolver(() => Meter)
export class MeterUsageResolver {
  /** Both days included. */
  @ResolveField(() => [UsageDay])
  async usageDays(
    @Tx() tx: OrganizationTransaction,
    @Parent() meter: Meter,
    @Args('from', { type: () => DateScalar }) from: string,
    @Args('until', { type: () => DateScalar }) until: string,
  ): Promise<UsageDay[]> {
    const days = dayNumberOfDate(until) - dayNumberOfDate(from) + 1;
    if (days > MOST_DAYS)
      throw platformProblems.valueRefused({ field: 'until', found: until, expected: `at most ${MOST_DAYS} days from ${from}` });
    return (await usageDaysBetween.of(tx).load(meterDaysKey({ meterId: meter.id, from, until }))).map(showUsageDay);
  }
}
