import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { Allow } from '../identity/allow.js';
import { Permission } from '../identity/permission.js';
import { Tx } from '../identity/tx.js';
import { backgroundJobs } from './background-job.repository.js';
import { BackgroundJob, showJob } from './background-job.type.js';

/** How far the work in the background is. */
@Resolver(() => BackgroundJob)
export class BackgroundJobResolver {
  @Allow(Permission.Exchange)
  @Query(() => [BackgroundJob], { name: 'jobs' })
  async jobs(@Tx() tx: OrganizationTransaction): Promise<BackgroundJob[]> {
    return (await backgroundJobs.latestTogether(tx)).map(showJob);
  }

  @Allow(Permission.Exchange)
  @Query(() => BackgroundJob, { name: 'job', nullable: true })
  async job(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<BackgroundJob | null> {
    const row = await backgroundJobs.one(tx, id);
    return row && showJob(row);
  }
}
