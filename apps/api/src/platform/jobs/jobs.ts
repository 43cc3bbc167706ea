import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type OrganizationTransaction, inTransaction } from '../database/organization-transaction.js';
import { organizationActor } from '../database/actor.js';
import { asProblem } from '../problems/answer.js';
import { BackgroundJobRow, type JobOutcome } from './background-job.entity.js';
import { backgroundJobs } from './background-job.repository.js';

/** What a handler of background work is given. */
export interface JobRun {
  readonly organizationId: string;
  readonly payload: Readonly<Record<string, unknown>>;
  /** runs a piece of the work in a transaction of its own */
  within<T>(work: (tx: OrganizationTransaction) => Promise<T>): Promise<T>;
  /** tells how far it is */
  progress(done: number, total: number): Promise<void>;
}

/** How work ended: in a sentence, and as a code with its details. */
export interface JobEnd extends JobOutcome {
  readonly says: string;
}

/** A repeatable piece of background work; it returns how it ended, in a sentence at least. */
export type JobHandler = (run: JobRun) => Promise<string | JobEnd>;

/** The one task name in the queue: what to do stands in the job's row. */
export const TASK = 'background-job';

/** Background work: asked for in a transaction, done after its commit, one at a time for each organization. */
@Injectable()
export class Jobs {
  private readonly handlers = new Map<string, JobHandler>();

  constructor(@Inject(DataSource) private readonly source: DataSource) {}

  /** Says who does a kind of work. */
  handle(kind: string, handler: JobHandler): void {
    this.handlers.set(kind, handler);
  }

  /** Asks for work: it is queued if and only if the transaction commits; it waits until an instant where one is named. What is asked with the same `batch` is shown as one. */
  async ask(
    tx: OrganizationTransaction,
    kind: string,
    payload: Record<string, unknown>,
    at: Date | null = null,
  ): Promise<BackgroundJobRow> {
    const table = tx.of(BackgroundJobRow);
    const batch = typeof payload['batch'] === 'string' ? payload['batch'] : null;
    const leads = batch === null || (await backgroundJobs.leads(tx, batch));
    const row = table.create({
      organizationId: tx.organizationId,
      id: randomUUID(),
      kind,
      state: 'queued',
      done: 0,
      total: 0,
      says: null,
      outcome: null,
      payload: at ? { ...payload, waitsUntil: at.toISOString() } : payload,
      batch,
      leads,
      together: null,
      personId: tx.actor.personId,
      createdAt: new Date(),
      finishedAt: null,
    });
    await table.insert(row as never);
    if (at) await tx.query('select enqueue_job_at($1, $2, $3)', [TASK, row.id, at]);
    else await tx.query('select enqueue_job($1, $2)', [TASK, row.id]);
    return row;
  }

  /** Does one job. A failure is kept in the job's row and thrown on, so that the queue tries again. */
  async run(organizationId: string, jobId: string): Promise<void> {
    const actor = organizationActor(organizationId, 'job');
    const within = <T>(work: (tx: OrganizationTransaction) => Promise<T>) => inTransaction(this.source, actor, work);
    const key = { organizationId, id: jobId };
    const job = await within((tx) => tx.of(BackgroundJobRow).findOneBy(key));
    if (!job || job.state === 'done') return;
    const handler = this.handlers.get(job.kind);
    if (!handler) throw new TypeError(`no handler for background work of kind ${job.kind}`);
    await within(async (tx) => {
      await tx.of(BackgroundJobRow).update(key, { state: 'running' });
      if (job.batch !== null) await backgroundJobs.reopen(tx, job.batch);
    });
    const end = (values: Partial<BackgroundJobRow>): Promise<void> =>
      within(async (tx) => {
        await tx.of(BackgroundJobRow).update(key, { ...values, finishedAt: new Date() } as never);
        if (job.batch !== null) await backgroundJobs.close(tx, job.batch);
      });
    const progress = async (done: number, total: number): Promise<void> => {
      await within((tx) => tx.of(BackgroundJobRow).update(key, { done, total }));
    };
    try {
      const { says, outcome } = endOf(await handler({ organizationId, payload: job.payload, within, progress }));
      await end({ state: 'done', says, outcome });
    } catch (thrown) {
      const problem = asProblem(thrown);
      const { code, details, message: says } = problem;
      await end({ state: 'failed', says, outcome: { code, details } });
      throw problem;
    }
  }
}

const endOf = (end: string | JobEnd): { says: string; outcome: JobOutcome | null } =>
  typeof end === 'string' ? { says: end, outcome: null } : { says: end.says, outcome: { code: end.code, details: end.details } };
