import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { RecomputeProperties, type SeriesOfStations } from './recompute-properties.service.js';

/** The kind of the background work. */
export const RECOMPUTE = 'compute accounts';

/** Properties in one transaction: enough to read and write them in few statements, few enough to show progress and to hold in memory. */
const BATCH = 100;
/** Batches under way at once: one is read or written by the database while another is computed. */
const LANES = 2;

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
    const series: SeriesOfStations = new Map();
    let [next, done, months] = [0, 0, 0];
    const lane = async (): Promise<void> => {
      for (let at = next; at < ids.length; at = next) {
        next = at + BATCH;
        const batch = ids.slice(at, next);
        const renewed = await run.within((tx) => this.recompute.run(tx, batch, series));
        months += renewed;
        done += batch.length;
        await run.progress(done, ids.length);
      }
    };
    // A lane that fails must not leave the other at work behind its back.
    const failed = (await Promise.allSettled(Array.from({ length: LANES }, lane))).find((each) => each.status === 'rejected');
    if (failed) throw failed.reason;
    return `${ids.length} ${ids.length === 1 ? 'property' : 'properties'}, ${months} ${months === 1 ? 'month' : 'months'} computed`;
  }
}

async function propertyIds(tx: OrganizationTransaction, named: readonly string[] | undefined): Promise<string[]> {
  const rows = await tx.query<{ id: string }>(
    'select id from property where organization_id = $1 and retired_at is null and ($2::uuid[] is null or id = any($2)) order by name',
    [tx.organizationId, named ?? null],
  );
  return rows.map((row) => row.id);
}
