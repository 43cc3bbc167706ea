import { EventEmitter } from 'node:events';
import type { WorkerEvents } from 'graphile-worker';
import pg from 'pg';
import { OWNER_ROLE } from '../database/database-url.js';
import { log } from '../problems/log.js';

/** The advisory locks of workers are of this class; nothing else of the product takes such locks. */
const LOCK_CLASS = 7226;
/** A worker says that it lives right after it is made: work that was taken up this long ago has an owner who said so, or who is dead. [s] */
const LEAST_AGE_S = 30;

/**
 * Tells the living workers of all processes from the dead. Each holds an advisory lock by its name on a connection of its process's own; the
 * database gives it up when the process ends, however it ends. What a dead worker had begun is freed at once, else the queue would keep it for
 * four hours, and with it everything of its organization that waits behind it.
 */
export class LivingWorkers {
  /** handed to the workers, which tell their names by it */
  readonly events: WorkerEvents = new EventEmitter();
  private readonly names = new Set<string>();
  private holding: Promise<pg.Client> | null = null;
  private hasEnded = false;
  /** One after the other: a connection takes one statement at a time. */
  private entering: Promise<unknown> = Promise.resolve();

  constructor(private readonly adminUrl: string) {
    // The queue keeps work by the name of the pool that took it up, or by that of a worker alone: both say that they live.
    this.events.on('pool:create', ({ workerPool }) => this.enter(workerPool.id));
    this.events.on('worker:create', ({ worker }) => this.enter(worker.workerId));
  }

  private enter(name: string): void {
    this.names.add(name);
    // Work is not held up by it: the first look at the dead comes much later, and takes the lock where this failed.
    this.entering = this.entering
      .then(() => (this.hasEnded ? null : this.live([name])))
      .catch((problem: Error) => {
        if (!this.hasEnded) log.warn({ message: problem.message }, 'a worker could not say that it lives');
      });
  }

  /** Whether a name is of a worker of this process. */
  isOurs(name: string): boolean {
    return this.names.has(name);
  }

  /** Frees the work of those who are dead. Gives their names. */
  async freeTheDead(leastAgeSeconds = LEAST_AGE_S): Promise<string[]> {
    const client = await this.live([]);
    const { rows } = await client.query<{ name: string }>(
      `select distinct locked_by as name from (select locked_by, locked_at from graphile_worker._private_jobs union all select locked_by, locked_at from graphile_worker._private_job_queues) held
        where locked_by is not null and locked_at < now() - make_interval(secs => $1)`,
      [leastAgeSeconds],
    );
    const dead: string[] = [];
    for (const { name } of rows) if (!this.names.has(name) && (await this.isDead(client, name))) dead.push(name);
    if (dead.length) await client.query('select graphile_worker.force_unlock_workers($1::text[])', [dead]);
    return dead;
  }

  /** Lets the names go: whoever ends in order leaves nothing begun behind. */
  async end(): Promise<void> {
    this.hasEnded = true;
    const { holding } = this;
    this.holding = null;
    const client = await holding?.catch(() => null);
    await client?.end();
  }

  /** Whoever gets a worker's lock has found it without an owner. */
  private async isDead(client: pg.Client, name: string): Promise<boolean> {
    const { rows } = await client.query<{ free: boolean }>('select pg_try_advisory_lock($1, hashtext($2)) as free', [LOCK_CLASS, name]);
    if (rows[0]?.free) await client.query('select pg_advisory_unlock($1, hashtext($2))', [LOCK_CLASS, name]);
    return rows[0]?.free ?? false;
  }

  /** The connection that holds the locks, once these names have theirs. */
  private async live(newNames: readonly string[]): Promise<pg.Client> {
    this.holding ??= this.connect();
    const client = await this.holding;
    for (const name of newNames) await client.query('select pg_advisory_lock($1, hashtext($2))', [LOCK_CLASS, name]);
    return client;
  }

  /** A new connection takes all locks again. */
  private async connect(): Promise<pg.Client> {
    const client = new pg.Client({ connectionString: this.adminUrl, options: `-c role=${OWNER_ROLE}` });
    const forget = (): void => {
      this.holding = null;
    };
    // One that breaks is replaced at the next look.
    client.on('error', forget);
    try {
      await client.connect();
      for (const name of this.names) await client.query('select pg_advisory_lock($1, hashtext($2))', [LOCK_CLASS, name]);
    } catch (problem) {
      forget();
      throw problem;
    }
    return client;
  }
}
