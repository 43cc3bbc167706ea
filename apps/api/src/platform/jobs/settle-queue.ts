import type { DataSource } from 'typeorm';
import { inTransaction } from '../database/organization-transaction.js';
import { organizationActor } from '../database/actor.js';
import type { BackgroundJobRow } from './background-job.entity.js';
import { backgroundJobs } from './background-job.repository.js';
import type { Jobs } from './jobs.js';
import { drainQueue } from './worker.js';

/** What background work needs to be waited for. */
export interface Queue {
  readonly source: DataSource;
  readonly adminUrl: string;
  readonly jobs: Jobs;
}

/** How far the background work of an organization is. */
export interface Settling {
  readonly done: number;
  readonly total: number;
}

/** How a piece of work ended, in a sentence. */
export interface Ended {
  readonly says: string;
  readonly isDone: boolean;
}

const LOOK_EVERY_MS = 250;
/** Work that another process began and never ended must not hold a command for ever. */
const GIVE_UP_AFTER_MS = 60_000;

/**
 * Does the background work that waits, here or beside a product that runs and does some of it, until an organization has
 * none left; gives how the last pieces ended.
 */
export async function settleQueue(
  queue: Queue,
  organizationId: string,
  look: (settling: Settling) => void = () => undefined,
): Promise<Ended[]> {
  const actor = organizationActor(organizationId, 'job');
  const latest = () => inTransaction(queue.source, actor, (tx) => backgroundJobs.latest(tx));
  const began = new Date();
  const draining = drainQueue(queue.adminUrl, queue.jobs);
  const settled = waitUntilNoneWaits(latest, look);
  await Promise.all([draining, settled]);
  const jobs = await latest();
  return jobs
    .filter(({ state, finishedAt }) => state === 'queued' || state === 'running' || (finishedAt !== null && finishedAt >= began))
    .map(({ kind, state, says }) => ({ says: `${kind}: ${says ?? state}.`.replace(/\.\.$/, '.'), isDone: state === 'done' }));
}

async function waitUntilNoneWaits(latest: () => Promise<BackgroundJobRow[]>, look: (settling: Settling) => void): Promise<void> {
  let seen = '';
  let since = Date.now();
  while (Date.now() - since < GIVE_UP_AFTER_MS) {
    const waiting = (await latest()).filter(({ state }) => state === 'queued' || state === 'running');
    if (!waiting.length) return;
    const { done, total } = waiting.at(-1)!;
    look({ done, total });
    const now = waiting.map((job) => `${job.id} ${job.state} ${job.done}`).join();
    if (now !== seen) since = Date.now();
    seen = now;
    await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
  }
}
