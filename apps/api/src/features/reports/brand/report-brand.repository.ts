import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { ReportBrandRow } from './report-brand.entity.js';

/** All SQL of the dress of reports. */
export const reportBrands = {
  own(tx: OrganizationTransaction): Promise<ReportBrandRow | null> {
    return tx.of(ReportBrandRow).findOneBy({ organizationId: tx.organizationId });
  },

  /** Keeps it in place of what was there. */
  async keep(tx: OrganizationTransaction, values: Pick<ReportBrandRow, 'name' | 'colour' | 'logo' | 'contact'>): Promise<ReportBrandRow> {
    const present = await this.own(tx);
    if (present)
      await tx
        .of(ReportBrandRow)
        .update({ organizationId: tx.organizationId, id: present.id }, { ...values, version: present.version + 1 });
    else await tx.of(ReportBrandRow).insert({ ...values, organizationId: tx.organizationId, id: randomUUID() });
    return (await this.own(tx))!;
  },
};
