import { Args, ID, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { showStop, Stop } from '../routes/stop.type.js';
import { CarryInput } from './deeds/carry-stop.input.js';
import { CarryStop } from './deeds/carry-stop.service.js';
import { PlaceItem } from './deeds/place-item.service.js';

/** What of a month's plan is decided by hand. */
@Resolver(() => Stop)
export class PlanByHandResolver {
  constructor(
    private readonly carry: CarryStop,
    private readonly place: PlaceItem,
  ) {}

  /** Carries a stop to a crew, day and position by hand; locked it stays there when the month is planned again. */
  @Allow(Permission.PlanMonths)
  @Mutation(() => Stop)
  async carryStop(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('to', { type: () => CarryInput }) to: CarryInput,
  ): Promise<Stop> {
    return showStop(await this.carry.run(tx, id, version, to));
  }

  /** Gives something without a day a crew and a day by hand; it is the last stop there. */
  @Allow(Permission.PlanMonths)
  @Mutation(() => Stop)
  async placeItem(
    @Tx() tx: OrganizationTransaction,
    @Args('month', { type: () => MonthScalar }) month: string,
    @Args('itemId', { type: () => ID }) itemId: string,
    @Args('to', { type: () => CarryInput }) to: CarryInput,
  ): Promise<Stop> {
    return showStop(await this.place.run(tx, month, itemId, to));
  }
}
