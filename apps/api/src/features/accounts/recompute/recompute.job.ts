import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { type JobRun, Jobs } from '../../../platform/jobs/jobs.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { RecomputeProperty } from './recompute-property.service.js';

/** The kind of the background work. */
export const RECOMPUTE = 'compute accounts';

/** Properties in one transaction: enough to read in few statements, few enough to show progress. */
const BATCH = 10;

/** Brings accounts up to date in the background, some properties at a time. Doing it again changes nothing. */
@Injectable()
export class RecomputeJob implements OnModuleInit {
  constructor(
    @Inject(Jobs) private readonly jobs: Jobs,
    private readonly recompute: RecomputeProperty,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(RECOMPUTE, (run) => this.run(run));
  }

  private async run(run: JobRun): Promise<string> {
    const named = run.payload['propertyIds'] as readonly string[] | undefined;
    const ids = await run.within((tx) => propertyIds(tx, named));
    let months = 0;
    for (let at = 0; at < ids.length; at += BATCH) {
      months += await run.within((tx) => this.batch(tx, ids.slice(at, at + BATCH)));
      await run.progress(Math.min(ids.length, at + BATCH), ids.length);
    }
    return `${ids.length} ${ids.length === 1 ? 'property' : 'properties'}, ${months} ${months === 1 ? 'month' : 'months'} computed`;
  }

  private async batch(tx: OrganizationTransaction, ids: readonly string[]): Promise<number> {
    const [clock] = await tx.query<{ timeZone: string; standsStillOn: string | null }>(
      'select time_zone as "timeZone", stands_still_on::text as "standsStillOn" from organization where id = $1',
      [tx.organizationId],
    );
    let months = 0;
    for (const facts of await propertyFacts.of(tx, ids))
      months += await this.recompute.run(tx, facts, todayOf({ standsStillOn: clock!.standsStillOn, timeZone: facts.property.timeZone }));
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
