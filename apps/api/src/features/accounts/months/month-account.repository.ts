import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { MonthAccountRow } from './month-account.entity.js';

const firstOf = (month: string): string => `${month}-01`;

/** All SQL of month accounts. */
export const monthAccounts = {
  /** The property's own accounts of some properties, oldest first. */
  async ofProperties(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<Map<string, MonthAccountRow[]>> {
    const rows = await tx
      .of(MonthAccountRow)
      .find({ where: { organizationId: tx.organizationId, propertyId: In([...propertyIds]) }, order: { month: 'ASC' } });
    return grouped(rows, (row) => row.propertyId);
  },

  /** The accounts of these ids. */
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<MonthAccountRow[]> {
    return tx.of(MonthAccountRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** Puts a month's accounts, the property's and its meters', in the place of those that were there. */
  async replace(tx: OrganizationTransaction, propertyId: string, month: string, rows: readonly Partial<MonthAccountRow>[]): Promise<void> {
    await tx.of(MonthAccountRow).delete({ organizationId: tx.organizationId, propertyId, month: firstOf(month) });
    await tx.of(MonthAccountRow).insert(rows as never);
  },

  /** Takes away the months that no longer have anything to compute from. */
  async keepOnly(tx: OrganizationTransaction, propertyId: string, months: readonly string[]): Promise<void> {
    await tx.query('delete from month_account where organization_id = $1 and property_id = $2 and not (month = any($3::date[]))', [
      tx.organizationId,
      propertyId,
      months.map(firstOf),
    ]);
  },

  /** The months that have an account of any property, the newest first. */
  async months(tx: OrganizationTransaction): Promise<string[]> {
    const rows = await tx.query<{ month: string }>(
      `select distinct to_char(month, 'YYYY-MM') as month from month_account where organization_id = $1 and meter_id is null order by 1 desc`,
      [tx.organizationId],
    );
    return rows.map((row) => row.month);
  },
};
