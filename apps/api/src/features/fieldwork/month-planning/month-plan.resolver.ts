import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar, MonthScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { PlanMonth } from './deeds/plan-month.service.js';
import { ReplanDay } from './deeds/replan-day.service.js';
import { UndoPlan } from './deeds/undo-plan.service.js';
import { MonthPlan, PlannedStop, PlanRun } from './shown/month-plan.type.js';
import { ShowMonth, showRun } from './shown/show-month.service.js';
import { ShowTimes } from './shown/show-times.service.js';

const MADE_BY_DEVICE = {
  type: () => ID,
  nullable: true,
  description: 'made by the device: sent again after a lost answer, the same planning is answered',
};

/** The plan of a month. */
@Resolver(() => MonthPlan)
export class MonthPlanResolver {
  constructor(
    private readonly show: ShowMonth,
    private readonly times: ShowTimes,
    private readonly plan: PlanMonth,
    private readonly replan: ReplanDay,
    private readonly undo: UndoPlan,
  ) {}

  @Allow(Permission.PlanMonths)
  @Query(() => MonthPlan)
  monthPlan(@Tx() tx: OrganizationTransaction, @Args('month', { type: () => MonthScalar }) month: string): Promise<MonthPlan> {
    return this.show.run(tx, month);
  }

  /** When a day's stops begin and end, in their order; of today, what was done as it was, and the rest from now on as long as the crew works. */
  @Allow(Permission.ReadRoutes)
  @Query(() => [PlannedStop])
  plannedTimes(
    @Tx() tx: OrganizationTransaction,
    @Args('day', { type: () => DateScalar }) day: string,
    @Args('crewId', { type: () => ID, nullable: true }) crewId: string | null,
  ): Promise<PlannedStop[]> {
    return this.times.run(tx, day, crewId);
  }

  @Allow(Permission.PlanMonths)
  @Mutation(() => PlanRun)
  async planMonth(
    @Tx() tx: OrganizationTransaction,
    @Args('month', { type: () => MonthScalar }) month: string,
    @Args('deviceRecordId', MADE_BY_DEVICE) id: string | null,
  ): Promise<PlanRun> {
    return showRun(await this.plan.run(tx, month, id));
  }

  /** What is left of a crew's day today, from a minute of it on; from now where none is named. */
  @Allow(Permission.PlanMonths)
  @Mutation(() => PlanRun)
  async replanDay(
    @Tx() tx: OrganizationTransaction,
    @Args('crewId', { type: () => ID }) crewId: string,
    @Args('minute', { type: () => Int, nullable: true }) minute: number | null,
    @Args('deviceRecordId', MADE_BY_DEVICE) id: string | null,
  ): Promise<PlanRun> {
    return showRun(await this.replan.run(tx, { crewId, from: minute, id }));
  }

  @Allow(Permission.PlanMonths)
  @Mutation(() => PlanRun)
  async undoPlan(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<PlanRun> {
    return showRun(await this.undo.run(tx, id));
  }
}
