import { Args, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { companySavings } from './company-savings.js';
import { ownersMonth } from './owners-month.repository.js';
import { sitesToUpgrade } from './sites-to-upgrade.js';
import { CrewInMonth, FindingsInMonth, OwnersMonth, SiteToUpgrade } from './owners-month.type.js';

/** The owner's report: the company's month. */
@Resolver(() => OwnersMonth)
export class OwnersMonthResolver {
  @Allow(Permission.WriteReports)
  @Query(() => OwnersMonth, { name: 'ownersMonth' })
  async month(@Tx() tx: OrganizationTransaction, @Args('month', { type: () => MonthScalar }) month: string): Promise<OwnersMonth> {
    const worked = await ownersMonth.worked(tx, month);
    const accounts = await ownersMonth.accounts(
      tx,
      month,
      worked.map(({ id }) => id),
    );
    const of = <Shown extends object>(make: new () => Shown, rows: readonly object[]): Shown[] =>
      rows.map((row) => Object.assign(new make(), row));
    return Object.assign(new OwnersMonth(), {
      month,
      ...(await companySavings(tx, worked, accounts, month)),
      findings: of(FindingsInMonth, await ownersMonth.findings(tx, month)),
      ordersDone: await ownersMonth.ordersDone(tx, month),
      crews: of(CrewInMonth, await ownersMonth.crews(tx, month)),
      sitesToUpgrade: of(SiteToUpgrade, await sitesToUpgrade(tx, await ownersMonth.beyondAllowance(tx, month))),
    });
  }
}
