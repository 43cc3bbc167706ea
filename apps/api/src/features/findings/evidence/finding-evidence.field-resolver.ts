import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { usageStrip } from '../../accounts/strip/usage-strip.loader.js';
import { UsageStrip } from '../../accounts/strip/usage-strip.type.js';
import { Finding } from '../finding.type.js';

/** Days before the first sign, and after the last: what was usual, and what became of it. */
const DAYS_AROUND = 3;
/** Five weeks and the days around them: more is a page of its own. */
const MOST_DAYS = 42;

/** What a finding is seen in: the hours of its days. */
@Resolver(() => Finding)
export class FindingEvidenceResolver {
  /** the hours of the days around the finding, its newest six weeks, or those that are asked for; null where the meter has no feed by the hour */
  @ResolveField(() => UsageStrip, { nullable: true })
  async usageStrip(
    @Tx() tx: OrganizationTransaction,
    @Parent() { propertyId, meterId, fromOn, untilOn }: Finding,
    @Args('from', { type: () => DateScalar, nullable: true }) from: string | null,
    @Args('until', { type: () => DateScalar, nullable: true }) until: string | null,
  ): Promise<UsageStrip | null> {
    const last = until ?? (untilOn && dateOfDayNumber(dayNumberOfDate(untilOn) + DAYS_AROUND));
    if (!last) return null;
    const earliest = dateOfDayNumber(dayNumberOfDate(last) - MOST_DAYS + 1);
    const around = fromOn ? dateOfDayNumber(dayNumberOfDate(fromOn) - DAYS_AROUND) : earliest;
    const first = from ?? (around > earliest ? around : earliest);
    if (first > last || first < earliest)
      throw platformProblems.valueRefused({
        field: 'from',
        found: first,
        expected: `a day from ${earliest} to ${last}: at most ${MOST_DAYS} days`,
      });
    return usageStrip(tx, { propertyId, meterId, from: first, until: last });
  }
}
