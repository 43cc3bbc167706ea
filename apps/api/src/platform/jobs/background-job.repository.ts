import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { BackgroundJobRow } from './background-job.entity.js';

const LATEST = 20;

/** All SQL of background work, as people look at it. */
export const backgroundJobs = {
  latest(tx: OrganizationTransaction): Promise<BackgroundJobRow[]> {
    return tx
      .of(BackgroundJobRow)
      .find({ where: { organizationId: tx.organizationId }, order: { createdAt: 'DESC', id: 'ASC' }, take: LATEST });
  },

  one(tx: OrganizationTransaction, id: string): Promise<BackgroundJobRow | null> {
    return tx.of(BackgroundJobRow).findOneBy({ organizationId: tx.organizationId, id });
  },
};
