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

  /** Two plannings of an organization, or one and a hand that carries a stop, never go on at once: each begins from what the other left. */
  async oneAtATime(tx: OrganizationTransaction): Promise<void> {
    await tx.query('select pg_advisory_xact_lock(hashtext($1))', [`plan the routes of ${tx.organizationId}`]);
  },

  async ofId(tx: OrganizationTransaction, id: string): Promise<MonthPlanRow | null> {
    return isUuid(id) ? tx.of(MonthPlanRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },
};
