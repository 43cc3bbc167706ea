import { Args, ID, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { FindingResult, outcome } from '../finding-result.type.js';
import { AcknowledgeFinding } from './acknowledge-finding.service.js';

/** Findings that somebody has seen and that can wait. */
@Resolver()
export class AcknowledgeResolver {
  constructor(private readonly acknowledge: AcknowledgeFinding) {}

  @Allow(Permission.DecideFindings)
  @Mutation(() => FindingResult)
  async acknowledgeFinding(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('note') note: string,
    @Args('until', { type: () => DateScalar, nullable: true, description: 'the last day on which it is silent; null: until it clears' })
    until: string | null,
  ): Promise<object> {
    return outcome(await this.acknowledge.run(tx, id, { version, note, until: until ?? null }));
  }
}
