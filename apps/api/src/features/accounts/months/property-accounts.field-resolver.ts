import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { accountsOfProperty, leastConfidence } from './month-account.loader.js';
import { MonthAccount } from './month-account.type.js';
import { showMonthAccount } from './shown-account.type.js';

/** A property's month accounts. */
@Resolver(() => Property)
export class PropertyAccountsResolver {
  /** oldest first */
  @ResolveField(() => [MonthAccount])
  async accounts(
    @Tx() tx: OrganizationTransaction,
    @Parent() property: Property,
    @Args('from', { type: () => MonthScalar, nullable: true }) from: string | null,
    @Args('until', { type: () => MonthScalar, nullable: true }) until: string | null,
  ): Promise<MonthAccount[]> {
    const rows = (await accountsOfProperty.of(tx).load(property.id)).filter(
      (row) => row.meterId === null && (!from || row.month.slice(0, 7) >= from) && (!until || row.month.slice(0, 7) <= until),
    );
    const least = await leastConfidence(tx);
    return rows.map((row) => showMonthAccount(row, least));
  }

  /** that of a month, else of the newest in which both meter and need are known, as the portfolio shows it; else the newest */
  @ResolveField(() => MonthAccount, { nullable: true })
  async account(
    @Tx() tx: OrganizationTransaction,
    @Parent() property: Property,
    @Args('month', { type: () => MonthScalar, nullable: true }) month: string | null,
  ): Promise<MonthAccount | null> {
    const rows = (await accountsOfProperty.of(tx).load(property.id)).filter((row) => row.meterId === null);
    const newest = () => rows.findLast(({ meteredL, neededL }) => meteredL !== null && neededL !== null) ?? rows.at(-1);
    const row = month ? rows.find((one) => one.month.startsWith(month)) : newest();
    return row ? showMonthAccount(row, await leastConfidence(tx)) : null;
  }
}

/** The accounts of the meters that a property's account is the sum of. */
@Resolver(() => MonthAccount)
export class MeterAccountsResolver {
  @ResolveField(() => [MonthAccount])
  async meterAccounts(@Tx() tx: OrganizationTransaction, @Parent() account: MonthAccount): Promise<MonthAccount[]> {
    if (account.meterId !== null) return [];
    const rows = (await accountsOfProperty.of(tx).load(account.propertyId)).filter(
      (row) => row.meterId !== null && row.month.startsWith(account.month),
    );
    const least = await leastConfidence(tx);
    return rows.map((row) => showMonthAccount(row, least));
  }
}
