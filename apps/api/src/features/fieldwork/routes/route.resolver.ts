import { Args, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { crewInScope, crewsInScope } from '../crews/crew-scope.js';
import { crewOfId } from '../crews/crew.loader.js';
import { Crew, showCrew } from '../crews/crew.type.js';
import { todayIn } from '../organization-clock.js';
import { routes } from './route.repository.js';
import { Route, showRoute } from './route.type.js';
import { stopsOfRoute } from './stops-of-route.loader.js';
import { Stop, showStop } from './stop.type.js';

/** Routes: the days of the crews whose work the actor sees. */
@Resolver(() => Route)
export class RouteResolver {
  @Allow(Permission.ReadRoutes)
  @Query(() => [Route], { name: 'routes' })
  async between(
    @Tx() tx: OrganizationTransaction,
    @Args('from', { type: () => DateScalar }) from: string,
    @Args('until', { type: () => DateScalar }) until: string,
  ): Promise<Route[]> {
    return (await routes.between(tx, { from, until }, await crewsInScope(tx))).map(showRoute);
  }

  @Allow(Permission.ReadRoutes)
  @Query(() => [Route], { name: 'today' })
  async today(
    @Tx() tx: OrganizationTransaction,
    @Args('day', { type: () => DateScalar, nullable: true }) day: string | null,
    @Args('crewId', { type: () => ID, nullable: true }) crewId: string | null,
  ): Promise<Route[]> {
    if (crewId && !((await crewInScope(tx, crewId)) && (await crewOfId.of(tx).load(crewId))))
      throw platformProblems.notFound({ thing: 'crew', id: crewId });
    const from = day ?? (await todayIn(tx));
    return (await routes.between(tx, { from, until: from }, crewId ? [crewId] : await crewsInScope(tx))).map(showRoute);
  }

  @ResolveField(() => Crew)
  async crew(@Tx() tx: OrganizationTransaction, @Parent() route: Route): Promise<Crew> {
    return showCrew((await crewOfId.of(tx).load(route.crewId))!);
  }

  @ResolveField(() => [Stop])
  async stops(@Tx() tx: OrganizationTransaction, @Parent() route: Route): Promise<Stop[]> {
    return (await stopsOfRoute.of(tx).load(route.id)).map(showStop);
  }
}
