import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { byName } from '../../../platform/records/by-name.js';
import { Property } from '../properties/property.type.js';
import { Zone, showZone } from './zone.type.js';
import { zonesOfProperty } from './zones-of-property.loader.js';

/** Adds to a property its zones in use. */
@Resolver(() => Property)
export class PropertyZonesResolver {
  @ResolveField(() => [Zone])
  async zones(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<Zone[]> {
    return byName(await zonesOfProperty.of(tx).load(property.id)).map(showZone);
  }
}
