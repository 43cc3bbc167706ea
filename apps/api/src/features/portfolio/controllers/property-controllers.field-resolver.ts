import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { byName } from '../../../platform/records/by-name.js';
import { Property } from '../properties/property.type.js';
import { Controller, showController } from './controller.type.js';
import { controllersOfProperty } from './controllers-of-property.loader.js';

/** Adds to a property its controllers in use. */
@Resolver(() => Property)
export class PropertyControllersResolver {
  @ResolveField(() => [Controller])
  async controllers(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<Controller[]> {
    return byName(await controllersOfProperty.of(tx).load(property.id)).map(showController);
  }
}
