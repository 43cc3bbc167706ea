import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
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
    const lane = async (): Promise<void> => {
      for (let at = next; at < ids.length; at = next) {
        next = at + BATCH;
        const batch = ids.slice(at, next);
        const renewed = await run.within((tx) => this.recompute.run(tx, batch, shared));
        months += renewed;
        done += batch.length;
        await run.progress(done, ids.length);
      }
    };
    const lanes = shared.threads ? shared.threads.count + LANES_BESIDES_THREADS : 1 + LANES_BESIDES;
    // A lane that fails must not leave the others at work behind its back.
    const failed = (await Promise.allSettled(Array.from({ length: lanes }, lane))).find((each) => each.status === 'rejected');
    if (failed) throw failed.reason;
    return months;
  }
}

async function propertyIds(tx: OrganizationTransaction, named: readonly string[] | undefined): Promise<string[]> {
  const rows = await tx.query<{ id: string }>(
    'select id from property where organization_id = $1 and retired_at is null and ($2::uuid[] is null or id = any($2)) order by name',
    [tx.organizationId, named ?? null],
  );
  return rows.map((row) => row.id);
}
