import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { choicesOfPlan } from './care-choices.js';
import { ControllerPlan } from './controller-plan.type.js';
import { planOfController } from './plan-of-controller.service.js';
import { showPlan } from './show-plan.js';

/** What a controller would best be set to. */
@Resolver(() => Controller)
export class ControllerPlanResolver {
  /** for a month, else the one that is under way; null for who does not read the portfolio */
  @ResolveField(() => ControllerPlan, { nullable: true })
  async plan(
    @Tx() tx: OrganizationTransaction,
    @Parent() controller: Controller,
    @Args('month', { type: () => MonthScalar, nullable: true }) month: string | null | undefined,
  ): Promise<ControllerPlan | null> {
    if (!roleIncludes(tx.actor.role, Permission.ReadPortfolio)) return null;
    const asked = month ?? todayOf(await organizations.own(tx)).slice(0, 7);
    const row = (await controllerOfId.of(tx).load(controller.id))!;
    const planned = await planOfController(tx, row, asked);
    const { gathered, plan } = planned;
    const choices = gathered.input && plan ? await choicesOfPlan(tx, gathered.input, gathered.accountZones, plan) : [];
    return Object.assign(showPlan(controller.id, asked, planned), { choices });
  }
}
