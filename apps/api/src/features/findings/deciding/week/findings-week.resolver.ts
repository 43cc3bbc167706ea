import { Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { organizations } from '../../../../platform/identity/organizations/organization.repository.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { todayOf } from '../../../../platform/jobs/clock.js';
import { propertyOfId } from '../../../portfolio/properties/property.loader.js';
import { requireProperty } from '../../../portfolio/properties/property-scope.service.js';
import { Property, showProperty } from '../../../portfolio/properties/property.type.js';
import { findings } from '../../finding.repository.js';
import { showFinding } from '../../finding.type.js';
import { FindingsWeek, PaceOfProperty } from './findings-week.type.js';
import { pacesOfProperties } from './pace-of-properties.js';
import { sortedByWeek } from './sorted-by-week.js';

/** A week. [d] */
const DAYS = 7;

/** A feed whose newest day is older says nothing of now. An assumption. [d] */
const FRESH_DAYS = 3;

/** What a week brought: read on Monday, it says where to begin. */
@Resolver(() => FindingsWeek)
export class FindingsWeekResolver {
  @Allow(Permission.ReadFindings)
  @Query(() => FindingsWeek)
  async findingsWeek(@Tx() tx: OrganizationTransaction): Promise<FindingsWeek> {
    const organization = await organizations.own(tx);
    const through = todayOf(organization);
    const today = Temporal.PlainDate.from(through);
    const first = today.subtract({ days: DAYS - 1 });
    const begins = new Date(first.toZonedDateTime(organization.timeZone).epochMilliseconds);
    const { waiting, ...week } = sortedByWeek(await findings.list(tx, {}), begins, through);
    const priced = waiting.filter(({ money }) => money !== null);
    const paces = await pacesOfProperties(tx, today.subtract({ days: FRESH_DAYS }).toString());
    return Object.assign(new FindingsWeek(), {
      from: first.toString(),
      through,
      paces: paces.filter(({ verdict }) => verdict !== 'within'),
      begun: week.begun.map(showFinding),
      cameBack: week.cameBack.map(showFinding),
      ended: week.ended.map(showFinding),
      stillWaiting: waiting.length,
      stillWaitingMoney: priced.length ? priced.reduce((sum, { money }) => sum + money!, 0) : null,
    });
  }
}

/** The property of a pace. */
@Resolver(() => PaceOfProperty)
export class PaceOfPropertyResolver {
  @ResolveField(() => Property)
  async property(@Tx() tx: OrganizationTransaction, @Parent() { propertyId }: PaceOfProperty): Promise<Property> {
    return showProperty((await propertyOfId.of(tx).load(propertyId)) ?? (await requireProperty(tx, propertyId)));
  }
}
