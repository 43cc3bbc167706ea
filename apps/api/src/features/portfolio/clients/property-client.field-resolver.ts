import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Property } from '../properties/property.type.js';
import { clientOfId } from './client.loader.js';
import { Client, showClient } from './client.type.js';

/** Adds to a property its client. */
@Resolver(() => Property)
export class PropertyClientResolver {
  @ResolveField(() => Client)
  async client(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<Client> {
    const row = await clientOfId.of(tx).load(property.clientId);
    if (!row) throw platformProblems.notFound({ thing: 'client', id: property.clientId });
    const client = showClient(row);
    // The crew needs the name at the gate, not whom the office writes to.
    return roleIncludes(tx.actor.role, Permission.ReadPortfolio) ? client : Object.assign(client, { emails: null, notToExceed: null });
  }
}
