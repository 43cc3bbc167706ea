import type { DataSource, EntityManager, EntityTarget, ObjectLiteral, QueryRunner, Repository } from 'typeorm';
import type { Actor } from './actor.js';

type Step = () => Promise<void>;

/** One row: whether this transaction holds anything that would be lost by ending it early. */
const HOLDS = `select pg_current_xact_id_if_assigned() is not null
  or exists (select from pg_locks where pid = pg_backend_pid() and locktype = 'advisory') as holds`;

/**
 * The only handle to the database outside this folder: a transaction that belongs to one organization.
 *
 * It cannot be made without an actor, and row-level security sees that actor's organization until it ends.
 */
export class OrganizationTransaction {
  /** what loaders keep for the length of the transaction */
  readonly kept = new Map<unknown, unknown>();
  private readonly last = new Map<string, Step>();
  private readonly after: (() => void)[] = [];
  private attempts = 0;
  private attemptsUnderWay = 0;
  private turn: Promise<unknown> = Promise.resolve();

  /** `front` is what repositories are bound to: its statements go to `runner`, which is null while the transaction rests. */
  private constructor(
    private readonly source: DataSource,
    private readonly front: QueryRunner,
    private runner: QueryRunner | null,
    readonly actor: Actor,
  ) {
    // An open transaction as TypeORM sees it: a repository begins none of its own, and connects through this one alone.
    Object.assign(front, {
      isTransactionActive: true,
      query: (...args: Parameters<QueryRunner['query']>) => this.inTurn(async () => (await this.active()).query(...args)),
      connect: () => this.inTurn(async () => (await this.active()).connect()),
    });
  }

  /** Opens a transaction for an actor. Whoever opens it must end it with commit or rollback. */
  static async open(source: DataSource, actor: Actor): Promise<OrganizationTransaction> {
    return new OrganizationTransaction(source, source.createQueryRunner(), await begun(source, actor), actor);
  }

  get organizationId(): string {
    return this.actor.organizationId;
  }

  get manager(): EntityManager {
    return this.front.manager;
  }

  /** The table of a row class. */
  of<Row extends ObjectLiteral>(row: EntityTarget<Row>): Repository<Row> {
    return this.front.manager.getRepository(row);
  }

  /** One statement with bound parameters. */
  query<Row>(sql: string, parameters: readonly unknown[] = []): Promise<Row[]> {
    return this.front.query(sql, [...parameters]) as Promise<Row[]>;
  }

  /** Does something that may meet a constraint: then only this part is undone and the error is thrown on. */
  async attempt<T>(work: () => Promise<T>): Promise<T> {
    this.attempts += 1;
    const name = `attempt_${this.attempts}`;
    this.attemptsUnderWay += 1;
    try {
      return await this.attempted(name, work);
    } finally {
      this.attemptsUnderWay -= 1;
    }
  }

  private async attempted<T>(name: string, work: () => Promise<T>): Promise<T> {
    await this.query(`savepoint ${name}`);
    try {
      const result = await work();
      await this.query(`release savepoint ${name}`);
      return result;
    } catch (problem) {
      await this.query(`rollback to savepoint ${name}`);
      throw problem;
    }
  }

  /**
   * Gives the connection back for as long as no statement follows, so that long work without the database holds none. The next statement
   * begins anew and sees what others have kept meanwhile; what loaders keep stays, until `kept` is cleared.
   *
   * @returns false where nothing was done: something was written or locked, and one fate must hold
   */
  rest(): Promise<boolean> {
    return this.inTurn(async () => {
      if (!this.runner) return true;
      if (this.attemptsUnderWay > 0) return false;
      const [{ holds }] = (await this.runner.query(HOLDS)) as [{ holds: boolean }];
      if (holds) return false;
      const { runner } = this;
      this.runner = null;
      await ended(runner, () => runner.commitTransaction());
      return true;
    });
  }

  /** A step to do once, just before the commit: a later step of the same name replaces it. */
  beforeCommit(name: string, step: Step): void {
    this.last.set(name, step);
  }

  /** Something to do when the commit has succeeded; it must not need the database. */
  afterCommit(step: () => void): void {
    this.after.push(step);
  }

  async commit(): Promise<void> {
    try {
      for (const step of this.last.values()) await step();
      await this.inTurn(async () => this.runner?.commitTransaction());
    } catch (problem) {
      await this.rollback();
      throw problem;
    }
    await this.release();
    for (const step of this.after) step();
  }

  async rollback(): Promise<void> {
    if (this.front.isReleased) return;
    try {
      await this.inTurn(async () => {
        if (this.runner?.isTransactionActive) await this.runner.rollbackTransaction();
      });
    } finally {
      await this.release();
    }
  }

  /** The runner that is under way; a transaction that rested begins anew. */
  private async active(): Promise<QueryRunner> {
    if (this.front.isReleased) throw new TypeError('a statement came after the end of its transaction');
    this.runner ??= await begun(this.source, this.actor);
    return this.runner;
  }

  private async release(): Promise<void> {
    await this.front.release();
    await this.runner?.release();
  }

  /** Resolvers run side by side on one connection, which takes one statement at a time. */
  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.turn.then(work);
    this.turn = mine.catch(() => undefined);
    return mine;
  }
}

async function begun(source: DataSource, { organizationId }: Actor): Promise<QueryRunner> {
  const runner = source.createQueryRunner();
  try {
    await runner.startTransaction();
    await runner.query(`select set_config('app.organization_id', $1, true), set_config('app.person_id', '', true)`, [organizationId]);
    return runner;
  } catch (problem) {
    await runner.release();
    throw problem;
  }
}

async function ended(runner: QueryRunner, end: () => Promise<void>): Promise<void> {
  try {
    await end();
  } finally {
    await runner.release();
  }
}

/** Runs work in a transaction of its own: committed when it returns, undone when it throws. */
export async function inTransaction<T>(source: DataSource, actor: Actor, work: (tx: OrganizationTransaction) => Promise<T>): Promise<T> {
  const tx = await OrganizationTransaction.open(source, actor);
  let result: T;
  try {
    result = await work(tx);
  } catch (problem) {
    await tx.rollback();
    throw problem;
  }
  await tx.commit();
  return result;
}
