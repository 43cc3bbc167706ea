import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { byName } from '../../../platform/records/by-name.js';
import { Property } from '../properties/property.type.js';
import { BackflowAssembly, showBackflowAssembly } from './backflow-assembly.type.js';
import { backflowAssembliesOfProperty } from './backflow-assemblies-of-property.loader.js';

/** Adds to a property its backflow assemblies in use. */
@Resolver(() => Property)
export class PropertyBackflowAssembliesResolver {
  @ResolveField(() => [BackflowAssembly])
  async backflowAssemblies(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<BackflowAssembly[]> {
    return byName(await backflowAssembliesOfProperty.of(tx).load(property.id)).map(showBackflowAssembly);
  }
}
