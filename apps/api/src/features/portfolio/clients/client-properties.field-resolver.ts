import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { byName } from '../../../platform/records/by-name.js';
import { propertiesOfClient } from '../properties/properties-of-client.loader.js';
import { Property, showProperty } from '../properties/property.type.js';
import { Client } from './client.type.js';

/** Adds to a client its properties in use, those that the actor may see. */
@Resolver(() => Client)
export class ClientPropertiesResolver {
  @ResolveField(() => [Property])
  async properties(@Parent() client: Client, @Tx() tx: OrganizationTransaction): Promise<Property[]> {
    return byName(await propertiesOfClient.of(tx).load(client.id)).map(showProperty);
  }
}
