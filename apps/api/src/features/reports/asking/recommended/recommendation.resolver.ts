import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { ApproveRecommended } from './approve-recommended.service.js';
import { recommendations } from './recommendation.repository.js';
import { Recommendation, showRecommendation } from './recommendation.type.js';

/** What a client may say yes to. */
@Resolver(() => Recommendation)
export class RecommendationResolver {
  constructor(private readonly approve: ApproveRecommended) {}

  /** for a client, on their own properties; none for others */
  @Allow(Permission.ReadReports)
  @Query(() => [Recommendation], { name: 'recommendations' })
  async all(@Tx() tx: OrganizationTransaction): Promise<Recommendation[]> {
    const { clientId } = tx.actor;
    return clientId === null ? [] : (await recommendations.ofClient(tx, clientId)).map(showRecommendation);
  }

  /** the client says yes to what they looked at, which version tells; gives what is left to decide */
  @Allow(Permission.ReadReports)
  @Mutation(() => [Recommendation])
  async approveRecommended(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int, nullable: true }) version: number | null | undefined,
  ): Promise<Recommendation[]> {
    return (await this.approve.run(tx, id, version ?? null)).map(showRecommendation);
  }
}
