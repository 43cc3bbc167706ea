import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { MonthPlanRow } from './month-plan.entity.js';

/** All SQL of plannings. */
export const monthPlans = {
  /** The last one of a month, undone or not. */
  latest(tx: OrganizationTransaction, month: string): Promise<MonthPlanRow | null> {
    return tx
      .of(MonthPlanRow)
      .findOne({ where: { organizationId: tx.organizationId, month: `${month}-01` }, order: { madeAt: 'DESC', id: 'ASC' } });
  },

  async ofId(tx: OrganizationTransaction, id: string): Promise<MonthPlanRow | null> {
    return isUuid(id) ? tx.of(MonthPlanRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },
};
