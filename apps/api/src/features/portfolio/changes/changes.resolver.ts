import { Args, ID, Int, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { inScope } from '../properties/property-scope.service.js';
import { Property } from '../properties/property.type.js';
import { changes } from './change.repository.js';
import { Change, showChange } from './change.type.js';
import { changesOfProperty } from './changes-of-property.loader.js';

const MOST = 200;

/** The record of changes. It is the company's own: a client sees none of it, a crew that of its properties. */
@Resolver(() => Property)
export class ChangesResolver {
  @Allow(Permission.ReadProperty)
  @Query(() => [Change], { name: 'changes' })
  async ofThing(@Tx() tx: OrganizationTransaction, @Args('thingId', { type: () => ID }) thingId: string): Promise<Change[]> {
    if (!isUuid(thingId) || !(await maySee(tx, thingId))) return [];
    return (await changes.ofThing(tx, thingId, MOST)).map(showChange);
  }

  @ResolveField(() => [Change])
  async changes(
    @Parent() property: Property,
    @Tx() tx: OrganizationTransaction,
    @Args('first', { type: () => Int, defaultValue: 50, nullable: true }) first: number | null,
  ): Promise<Change[]> {
    if (tx.actor.role === 'client') return [];
    return (
      await changesOfProperty(Math.min(Math.max(first ?? 50, 0), MOST))
        .of(tx)
        .load(property.id)
    ).map(showChange);
  }
}

async function maySee(tx: OrganizationTransaction, thingId: string): Promise<boolean> {
  if (tx.actor.role === 'client') return false;
  if (roleIncludes(tx.actor.role, Permission.ReadPortfolio)) return true;
  const propertyId = await changes.propertyOf(tx, thingId);
  return propertyId !== null && (await inScope(tx, [propertyId])).has(propertyId);
}
