import { Args, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { Property, showProperty } from '../../portfolio/properties/property.type.js';
import { findStop } from './require-stop.js';
import { routeOfId } from './route.loader.js';
import { Route, showRoute } from './route.type.js';
import { Stop, showStop } from './stop.type.js';

/** Stops, as the phone asks for them. */
@Resolver(() => Stop)
export class StopResolver {
  @Allow(Permission.ReadRoutes)
  @Query(() => Stop, { name: 'stop', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Stop | null> {
    const found = await findStop(tx, id);
    return found && !found.stop.retiredAt ? showStop(found.stop) : null;
  }

  @ResolveField(() => Route)
  async route(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<Route> {
    return showRoute((await routeOfId.of(tx).load(stop.routeId))!);
  }

  @ResolveField(() => Property)
  async property(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<Property> {
    return showProperty((await propertyOfId.of(tx).load(stop.propertyId))!);
  }
}
