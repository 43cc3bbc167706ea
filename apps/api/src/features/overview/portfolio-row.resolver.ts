import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { Reason } from '../../platform/graphql/reason.type.js';
import { Tx } from '../../platform/identity/tx.js';
import { accountOfId, leastConfidence } from '../accounts/months/month-account.loader.js';
import { MonthAccount } from '../accounts/months/month-account.type.js';
import { showMonthAccount } from '../accounts/months/shown-account.type.js';
import { WorkOrder, showWorkOrder } from '../fieldwork/orders/work-order.type.js';
import { workOrderOfId } from '../fieldwork/orders/work-order.loader.js';
import { findingOfId } from '../findings/finding.loader.js';
import { Finding, showFinding } from '../findings/finding.type.js';
import { propertyOfId } from '../portfolio/properties/property.loader.js';
import { Property, showProperty } from '../portfolio/properties/property.type.js';
import { PortfolioRow } from './portfolio.type.js';

/** What a row of the portfolio shows, asked for in batches. */
@Resolver(() => PortfolioRow)
export class PortfolioRowResolver {
  @ResolveField(() => Property)
  async property(@Tx() tx: OrganizationTransaction, @Parent() row: PortfolioRow): Promise<Property> {
    return showProperty((await propertyOfId.of(tx).load(row.line.propertyId))!);
  }

  @ResolveField(() => MonthAccount, { nullable: true })
  async account(@Tx() tx: OrganizationTransaction, @Parent() row: PortfolioRow): Promise<MonthAccount | null> {
    const found = row.line.accountId && (await accountOfId.of(tx).load(row.line.accountId));
    return found ? showMonthAccount(found, await leastConfidence(tx)) : null;
  }

  @ResolveField(() => Finding, { nullable: true })
  async topFinding(@Tx() tx: OrganizationTransaction, @Parent() row: PortfolioRow): Promise<Finding | null> {
    const found = row.line.topFindingId && (await findingOfId.of(tx).load(row.line.topFindingId));
    return found ? showFinding(found) : null;
  }

  @ResolveField(() => WorkOrder, { nullable: true })
  async whoIsOnIt(@Tx() tx: OrganizationTransaction, @Parent() row: PortfolioRow): Promise<WorkOrder | null> {
    const found = row.line.orderId && (await workOrderOfId.of(tx).load(row.line.orderId));
    return found ? showWorkOrder(found) : null;
  }

  /** the costliest finding's sentence, else why it cannot be counted, else that all is within what can be measured */
  @ResolveField(() => Reason)
  async why(@Tx() tx: OrganizationTransaction, @Parent() row: PortfolioRow): Promise<Reason> {
    const finding = await this.topFinding(tx, row);
    if (finding) return finding.says;
    const account = await this.account(tx, row);
    if (!account) return { code: 'no-account', details: {} };
    return (
      account.metered.reason ?? account.needed.reason ?? account.programmed.reason ?? { code: 'within-what-can-be-measured', details: {} }
    );
  }
}
