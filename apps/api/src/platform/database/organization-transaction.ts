import type { DataSource, EntityManager, EntityTarget, ObjectLiteral, QueryRunner, Repository } from 'typeorm';
import type { Actor } from './actor.js';

type Step = () => Promise<void>;

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

  private constructor(
    private readonly runner: QueryRunner,
    readonly actor: Actor,
  ) {}

  /** Opens a transaction for an actor. Whoever opens it must end it with commit or rollback. */
  static async open(source: DataSource, actor: Actor): Promise<OrganizationTransaction> {
    const runner = source.createQueryRunner();
    oneStatementAtATime(runner);
    try {
      await runner.startTransaction();
      await runner.query(`select set_config('app.organization_id', $1, true), set_config('app.person_id', '', true)`, [
        actor.organizationId,
      ]);
      return new OrganizationTransaction(runner, actor);
    } catch (problem) {
      await runner.release();
      throw problem;
    }
  }

  get organizationId(): string {
    return this.actor.organizationId;
  }

  get manager(): EntityManager {
    return this.runner.manager;
  }

  /** The table of a row class. */
  of<Row extends ObjectLiteral>(row: EntityTarget<Row>): Repository<Row> {
    return this.runner.manager.getRepository(row);
  }

  /** One statement with bound parameters. */
  query<Row>(sql: string, parameters: readonly unknown[] = []): Promise<Row[]> {
    return this.runner.query(sql, [...parameters]) as Promise<Row[]>;
  }

  /** The driver's own connection inside this transaction, for COPY. */
  connection(): Promise<unknown> {
    return this.runner.connect();
  }

  /** Does something that may meet a constraint: then only this part is undone and the error is thrown on. */
  async attempt<T>(work: () => Promise<T>): Promise<T> {
    this.attempts += 1;
    const name = `attempt_${this.attempts}`;
    await this.runner.query(`savepoint ${name}`);
    try {
      const result = await work();
      await this.runner.query(`release savepoint ${name}`);
      return result;
    } catch (problem) {
      await this.runner.query(`rollback to savepoint ${name}`);
      throw problem;
    }
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
      await this.runner.commitTransaction();
    } catch (problem) {
      await this.rollback();
      throw problem;
    }
    await this.runner.release();
    for (const step of this.after) step();
  }

  async rollback(): Promise<void> {
    if (this.runner.isReleased) return;
    try {
      if (this.runner.isTransactionActive) await this.runner.rollbackTransaction();
    } finally {
      await this.runner.release();
    }
  }
}

/** Resolvers run side by side on one connection, which takes one statement at a time. */
function oneStatementAtATime(runner: QueryRunner): void {
  const query = runner.query.bind(runner) as (...args: unknown[]) => Promise<unknown>;
  let turn: Promise<unknown> = Promise.resolve();
  const queued = (...args: unknown[]): Promise<unknown> => {
    const mine = turn.then(() => query(...args));
    turn = mine.catch(() => undefined);
    return mine;
  };
  (runner as unknown as { query: typeof queued }).query = queued;
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
