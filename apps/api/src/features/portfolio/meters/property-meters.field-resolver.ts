import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { byName } from '../../../platform/records/by-name.js';
import { Property } from '../properties/property.type.js';
import { Meter, showMeter } from './meter.type.js';
import { metersOfProperty } from './meters-of-property.loader.js';

/** Adds to a property its meters in use. */
@Resolver(() => Property)
export class PropertyMetersResolver {
  @ResolveField(() => [Meter])
  async meters(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<Meter[]> {
    return byName(await metersOfProperty.of(tx).load(property.id)).map(showMeter);
  }
}
