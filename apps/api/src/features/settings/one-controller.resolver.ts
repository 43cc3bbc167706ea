import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { Allow } from '../../platform/identity/allow.js';
import { Permission } from '../../platform/identity/permission.js';
import { Tx } from '../../platform/identity/tx.js';
import { Controller, showController } from '../portfolio/controllers/controller.type.js';
import { controllerInScope } from './require-controller.js';

/** One controller, so that what is dear to ask of it is asked of it alone. */
@Resolver(() => Controller)
export class OneControllerResolver {
  @Allow(Permission.ReadProperty)
  @Query(() => Controller, { nullable: true })
  async controller(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Controller | null> {
    const row = await controllerInScope(tx, id);
    return row && showController(row);
  }
}
