import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { accountsProblems } from '../accounts.problems.js';
import { standingProperties } from '../standing/standing-properties.service.js';
import { ComputingThreads } from './computing-threads.js';
import { RecomputeProperties, type SharedInJob } from './recompute-properties.service.js';

/** The kind of the background work. */
export const RECOMPUTE = 'compute accounts';

/** Properties in one transaction: enough to read and write them in few statements, few enough to show progress and to hold in memory. */
const BATCH = 40;
/** Batches under way besides those that are computed: they are read or written by the database meanwhile. */
const LANES_BESIDES = 1;
/** With threads one is read, one is written. */
const LANES_BESIDES_THREADS = 2;

/** A property whose facts the library refuses, and what it says of them. */
interface Refused {
  readonly id: string;
  readonly why: string;
}

/** Brings accounts up to date in the background, some properties at a time. Doing it again changes nothing. */
@Injectable()
export class RecomputeJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly recompute: RecomputeProperties,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(RECOMPUTE, (run) => this.run(run));
  }

  private async run(run: JobRun): Promise<string> {
    const named = run.payload['propertyIds'] as readonly string[] | undefined;
    const ids = await run.within((tx) => propertyIds(tx, named));
    // Who is named has changed.
    const inputs = named ? null : await run.within((tx) => standingProperties.inputs(tx));
    const changed = ids.filter((id) => !inputs?.get(id)?.stands);
    const threads = ComputingThreads.forJob(changed.length);
    try {
      const months = await this.inLanes(run, changed, { series: new Map(), threads, inputs });
      return `${ids.length} ${ids.length === 1 ? 'property' : 'properties'}, ${months} ${months === 1 ? 'month' : 'months'} computed`;
    } finally {
      await threads?.close();
    }
  }

  /** Gives how many months were computed anew. */
  private async inLanes(run: JobRun, ids: readonly string[], shared: SharedInJob): Promise<number> {
    let [next, done, months] = [0, 0, 0];
    const refused: Refused[] = [];
    const lane = async (): Promise<void> => {
      for (let at = next; at < ids.length; at = next) {
        next = at + BATCH;
        const batch = ids.slice(at, next);
        months += await this.batch(run, batch, shared, refused);
        done += batch.length;
        await run.progress(done, ids.length);
      }
    };
    const lanes = shared.threads ? shared.threads.count + LANES_BESIDES_THREADS : 1 + LANES_BESIDES;
    // A lane that fails must not leave the others at work behind its back.
    const failed = (await Promise.allSettled(Array.from({ length: lanes }, lane))).find((each) => each.status === 'rejected');
    if (failed) throw failed.reason;
    if (refused.length) throw await run.within((tx) => notComputed(tx, refused, ids.length - refused.length));
    return months;
  }

  /** Property by property where one has facts that no account can be computed from: it does not keep the others from theirs. */
  private async batch(run: JobRun, ids: readonly string[], shared: SharedInJob, refused: Refused[]): Promise<number> {
    try {
      return await run.within((tx) => this.recompute.run(tx, ids, shared));
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      if (ids.length === 1) {
        refused.push({ id: ids[0]!, why: error.message });
        return 0;
      }
      let months = 0;
      for (const id of ids) months += await this.batch(run, [id], { ...shared, threads: null }, refused);
      return months;
    }
  }
}

async function notComputed(tx: OrganizationTransaction, refused: readonly Refused[], others: number): Promise<Error> {
  const ids = refused.map(({ id }) => id);
  const rows = await tx.query<{ id: string; name: string }>(
    'select id, name from property where organization_id = $1 and id = any($2) order by name',
    [tx.organizationId, ids],
  );
  const whyOf = new Map(refused.map(({ id, why }) => [id, why]));
  return accountsProblems.notComputed({ properties: rows.map(({ id, name }) => `${name} (${whyOf.get(id)})`).join(', '), others });
}

async function propertyIds(tx: OrganizationTransaction, named: readonly string[] | undefined): Promise<string[]> {
  const rows = await tx.query<{ id: string }>(
    'select id from property where organization_id = $1 and retired_at is null and ($2::uuid[] is null or id = any($2)) order by name',
    [tx.organizationId, named ?? null],
  );
  return rows.map((row) => row.id);
}
