import { In, IsNull, Not } from 'typeorm';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { grouped } from '../graphql/loader.js';
import { BackgroundJobRow, type Batch, type BatchSum, type Together } from './background-job.entity.js';
import { asOneJob } from './batch-of-jobs.js';

const LATEST = 20;

/** What a batch came to, where that is kept whole: else it is counted anew. */
const keptOf = ({ together }: BackgroundJobRow): Together | null => (together?.counts && together.sums ? together : null);

/** All SQL of background work, as people look at it. */
export const backgroundJobs = {
  latest(tx: OrganizationTransaction): Promise<BackgroundJobRow[]> {
    return tx
      .of(BackgroundJobRow)
      .find({ where: { organizationId: tx.organizationId }, order: { createdAt: 'DESC', id: 'ASC' }, take: LATEST });
  },

  /** The latest; what was asked together is one, with how many of it are over: looked at again and again, it reads the rows of what is open alone. */
  async latestTogether(tx: OrganizationTransaction): Promise<BackgroundJobRow[]> {
    const leading = await tx
      .of(BackgroundJobRow)
      .find({ where: { organizationId: tx.organizationId, leads: true }, order: { createdAt: 'DESC', id: 'ASC' }, take: LATEST });
    const open = leading.flatMap((row) => (row.batch !== null && keptOf(row) === null ? [row.batch] : []));
    const together = await this.togetherOf(tx, open);
    return leading.map((row) => {
      const sum = keptOf(row) ?? together.get(row.batch ?? '');
      return sum ? asOneJob(row, sum) : row;
    });
  },

  /** Whether the next of a batch is its first; else what the batch came to is open again. */
  async leads(tx: OrganizationTransaction, batch: string): Promise<boolean> {
    const isFirst = !(await tx.of(BackgroundJobRow).existsBy({ organizationId: tx.organizationId, batch, leads: true }));
    if (!isFirst) await this.reopen(tx, batch);
    return isFirst;
  },

  /** Keeps what a batch came to, once nothing of it is open, with the first of it. */
  async close(tx: OrganizationTransaction, batch: string): Promise<void> {
    const open = await tx.of(BackgroundJobRow).existsBy({ organizationId: tx.organizationId, batch, state: In(['queued', 'running']) });
    const together = open ? undefined : (await this.togetherOf(tx, [batch])).get(batch);
    if (together) await tx.of(BackgroundJobRow).update({ organizationId: tx.organizationId, batch, leads: true }, { together } as never);
  },

  /** Something of a batch is asked for, or begun, again. */
  async reopen(tx: OrganizationTransaction, batch: string): Promise<void> {
    await tx
      .of(BackgroundJobRow)
      .update({ organizationId: tx.organizationId, batch, leads: true, together: Not(IsNull()) }, { together: null });
  },

  /** What some batches come to as they stand. */
  async togetherOf(tx: OrganizationTransaction, batches: readonly string[]): Promise<Map<string, Together>> {
    const counts = await this.countsOf(tx, batches);
    const ended = [...counts.values()].flatMap(({ batch, total, over }) => (over === total && total > 1 ? [batch] : []));
    const sums = await this.sumsOf(tx, ended);
    return new Map([...counts].map(([batch, each]) => [batch, { counts: each, sums: sums.get(batch) ?? [] }]));
  },

  /** How many of some batches are over, failed, at work, or wait for an instant that is yet to come. */
  async countsOf(tx: OrganizationTransaction, batches: readonly string[]): Promise<Map<string, Batch>> {
    if (batches.length === 0) return new Map();
    const rows = await tx.query<Batch>(
      `select batch, count(*)::int as total, count(*) filter (where state in ('done', 'failed'))::int as over,
        count(*) filter (where state = 'failed')::int as failed, count(*) filter (where state = 'running')::int as running,
        count(*) filter (where state = 'queued' and (payload->>'waitsUntil')::timestamptz > now())::int as waiting,
        min(payload->>'waitsUntil') filter (where state = 'queued') as "waitsUntil"
        from background_job where organization_id = $1 and batch = any($2::text[]) group by batch`,
      [tx.organizationId, batches],
    );
    return new Map(rows.map((row) => [row.batch, row]));
  },

  /** What the numbers of those that ended alike add up to. */
  async sumsOf(tx: OrganizationTransaction, batches: readonly string[]): Promise<Map<string, BatchSum[]>> {
    if (batches.length === 0) return new Map();
    const rows = await tx.query<BatchSum & { batch: string }>(
      `select batch, code, coalesce(jsonb_object_agg(name, total) filter (where name is not null), '{}') as details from
        (select batch, outcome->>'code' as code, each.name, sum(each.value::numeric) as total from background_job
          left join lateral jsonb_each(outcome->'details') as each (name, value) on jsonb_typeof(each.value) = 'number'
          where organization_id = $1 and batch = any($2::text[]) and outcome is not null group by 1, 2, 3) as summed
        group by batch, code order by batch, code`,
      [tx.organizationId, batches],
    );
    return grouped(rows, ({ batch }) => batch);
  },

  one(tx: OrganizationTransaction, id: string): Promise<BackgroundJobRow | null> {
    return tx.of(BackgroundJobRow).findOneBy({ organizationId: tx.organizationId, id });
  },
};
