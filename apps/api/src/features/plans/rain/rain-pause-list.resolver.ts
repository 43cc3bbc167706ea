import { Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { RainPauseList } from './rain-pause-list.type.js';
import { RainPauses } from './rain-pauses.service.js';

/** The list for the day after a storm. */
@Resolver(() => RainPauseList)
export class RainPauseListResolver {
  constructor(private readonly pauses: RainPauses) {}

  @Allow(Permission.ReadPortfolio)
  @Query(() => RainPauseList)
  rainPauseList(@Tx() tx: OrganizationTransaction): Promise<RainPauseList> {
    return this.pauses.run(tx);
  }
}
