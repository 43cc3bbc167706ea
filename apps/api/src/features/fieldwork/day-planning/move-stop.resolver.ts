import { Args, ID, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Route, showRoute } from '../routes/route.type.js';
import { MoveStop } from './move-stop.service.js';

/** The order of a day. */
@Resolver()
export class MoveStopResolver {
  constructor(private readonly move: MoveStop) {}

  @Allow(Permission.AssignWork)
  @Mutation(() => Route)
  async moveStop(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('position', { type: () => Int }) position: number,
  ): Promise<Route> {
    return showRoute(await this.move.run(tx, id, version, position));
  }
}
