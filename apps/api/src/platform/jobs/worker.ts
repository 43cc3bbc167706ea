import { setTimeout } from 'node:timers/promises';
import type pg from 'pg';
import { Logger, type Runner, type TaskList, run, runOnce } from 'graphile-worker';
import { ownerPool } from '../database/migrate.js';
import { log } from '../problems/log.js';
import { type Jobs, TASK } from './jobs.js';
import { LivingWorkers } from './living-workers.js';

/** Until the last piece is marked as done. */
const SHORT_WAIT_MS = 20;
const MOST_LOOKS = 250;
/** How often a process looks for workers that died. */
const LOOK_EVERY_MS = 15_000;

const logger = new Logger(() => (level, message) => {
  if (level === 'error') log.error({ message }, 'job queue');
  else if (level === 'warning') log.warn({ message }, 'job queue');
});

const tasks = (jobs: Jobs): TaskList => ({
  [TASK]: async (payload) => {
    const { organizationId, jobId } = payload as { organizationId: string; jobId: string };
    await jobs.run(organizationId, jobId);
  },
});

/** Works the queue until it is stopped. */
export async function startWorker(adminUrl: string, jobs: Jobs): Promise<{ stop(): Promise<void> }> {
  const pool = ownerPool(adminUrl);
  const living = new LivingWorkers(adminUrl);
  const runner: Runner = await run({
    pgPool: pool,
    taskList: tasks(jobs),
    logger,
    concurrency: 2,
    noHandleSignals: true,
    noPreparedStatements: false,
    events: living.events,
  });
  const looking = setInterval(() => void lookFor(living), LOOK_EVERY_MS);
  return {
    async stop() {
      clearInterval(looking);
      await runner.stop();
      await living.end();
      await pool.end();
    },
  };
}

async function lookFor(living: LivingWorkers): Promise<void> {
  try {
    const dead = await living.freeTheDead();
    if (dead.length) log.warn({ workers: dead }, 'workers ended without a word: their work is taken up again');
  } catch (problem) {
    log.warn({ message: String(problem) }, 'could not look for dead workers');
  }
}

/** Works the queue until it is empty: for the command line, where no product may be running. */
export async function drainQueue(adminUrl: string, jobs: Jobs): Promise<void> {
  const pool = ownerPool(adminUrl);
  const living = new LivingWorkers(adminUrl);
  try {
    do await runOnce({ pgPool: pool, taskList: tasks(jobs), logger, noHandleSignals: true, events: living.events });
    while (await isMoreDue(pool, living));
  } finally {
    await living.end();
    await pool.end();
  }
}

/**
 * Whether work is due that nobody else holds. The library looks for the next piece without waiting until the last one is marked as done, finds its
 * queue still held, and takes that for the end.
 */
async function isMoreDue(pool: pg.Pool, living: LivingWorkers): Promise<boolean> {
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    const { rows } = await pool.query<{ holder: string | null }>(
      `select distinct queue.locked_by as holder from graphile_worker._private_jobs job
        left join graphile_worker._private_job_queues queue on queue.id = job.job_queue_id where job.is_available and job.run_at <= now()`,
    );
    if (rows.some(({ holder }) => holder === null)) return true;
    if (!rows.some(({ holder }) => holder !== null && living.isOurs(holder))) return false;
    await setTimeout(SHORT_WAIT_MS);
  }
  return false;
}
