import { In } from 'typeorm';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { BackgroundJobRow, type JobOutcome } from './background-job.entity.js';
import { asOneJob, type Batch } from './batch-of-jobs.js';

const LATEST = 20;
/** So far back is looked for what was asked together. */
const MOST_TOGETHER = 2000;

/** All SQL of background work, as people look at it. */
export const backgroundJobs = {
  latest(tx: OrganizationTransaction): Promise<BackgroundJobRow[]> {
    return tx
      .of(BackgroundJobRow)
      .find({ where: { organizationId: tx.organizationId }, order: { createdAt: 'DESC', id: 'ASC' }, take: LATEST });
  },

  /** The latest; what was asked together is one, with how many of it are over. */
  async latestTogether(tx: OrganizationTransaction): Promise<BackgroundJobRow[]> {
    const batches = await tx.query<Batch & { id: string; outcomes: readonly (JobOutcome | null)[] }>(
      `select (array_agg(id order by created_at desc, id))[1] as id, count(*)::int as total,
        count(*) filter (where state in ('done', 'failed'))::int as over, count(*) filter (where state = 'failed')::int as failed,
        count(*) filter (where state = 'running')::int as running, jsonb_agg(outcome) as outcomes
        from (select id, state, outcome, payload->>'batch' as batch, created_at from background_job where organization_id = $1 order by created_at desc, id limit ${MOST_TOGETHER}) as recent
        group by coalesce(batch, id::text) order by max(created_at) desc, 1 limit ${LATEST}`,
      [tx.organizationId],
    );
    const rows = await tx.of(BackgroundJobRow).findBy({ organizationId: tx.organizationId, id: In(batches.map(({ id }) => id)) });
    const rowOf = new Map(rows.map((row) => [row.id, row]));
    return batches.flatMap((batch) => {
      const row = rowOf.get(batch.id);
      return row ? [asOneJob(row, batch)] : [];
    });
  },

  one(tx: OrganizationTransaction, id: string): Promise<BackgroundJobRow | null> {
    return tx.of(BackgroundJobRow).findOneBy({ organizationId: tx.organizationId, id });
  },
};
