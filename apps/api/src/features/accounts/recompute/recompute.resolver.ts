import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { BackgroundJob, showJob } from '../../../platform/jobs/background-job.type.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { requireProperty } from '../../portfolio/properties/property-scope.service.js';
import { RECOMPUTE } from './recompute.job.js';

/** Accounts computed again on a person's wish: one property's, or all. */
@Resolver()
export class RecomputeResolver {
  constructor(private readonly jobs: Jobs) {}

  @Allow(Permission.WritePortfolio)
  @Mutation(() => BackgroundJob)
  async recomputeAccounts(
    @Tx() tx: OrganizationTransaction,
    @Args('propertyId', { type: () => ID, nullable: true }) propertyId: string | null,
  ): Promise<BackgroundJob> {
    if (propertyId) await requireProperty(tx, propertyId);
    return showJob(await this.jobs.ask(tx, RECOMPUTE, propertyId ? { propertyIds: [propertyId] } : {}));
  }
}
