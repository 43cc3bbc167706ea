import { Logger, type Runner, type TaskList, run, runOnce } from 'graphile-worker';
import { ownerPool } from '../database/migrate.js';
import { log } from '../problems/log.js';
import { type Jobs, TASK } from './jobs.js';

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
  const runner: Runner = await run({
    pgPool: pool,
    taskList: tasks(jobs),
    logger,
    concurrency: 2,
    noHandleSignals: true,
    noPreparedStatements: false,
  });
  return {
    async stop() {
      await runner.stop();
      await pool.end();
    },
  };
}

/** Works the queue until it is empty: for the command line, where no product may be running. */
export async function drainQueue(adminUrl: string, jobs: Jobs): Promise<void> {
  const pool = ownerPool(adminUrl);
  try {
    await runOnce({ pgPool: pool, taskList: tasks(jobs), logger, noHandleSignals: true });
  } finally {
    await pool.end();
  }
}
