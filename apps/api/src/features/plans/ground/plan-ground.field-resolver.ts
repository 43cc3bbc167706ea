import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { GROUND_FORM } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { nowOf, todayOf } from '../../../platform/jobs/clock.js';
import { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { gatherGround } from '../gather/plan-input.service.js';
import { PlanGround } from './plan-ground.type.js';

/** What a crew carries to a controller, to plan on what it finds there. */
@Resolver(() => Controller)
export class PlanGroundResolver {
  /** for the month that is under way; null for who records no field work */
  @ResolveField(() => PlanGround, { nullable: true })
  async planGround(@Tx() tx: OrganizationTransaction, @Parent() controller: Controller): Promise<PlanGround | null> {
    if (!roleIncludes(tx.actor.role, Permission.RecordFieldwork)) return null;
    const organization = await organizations.own(tx);
    const month = todayOf(organization).slice(0, 7);
    const row = (await controllerOfId.of(tx).load(controller.id))!;
    const { ground, reason } = await gatherGround(tx, row, month);
    const carried = ground && { ...ground, traits: traitsOf(ground.traits) };
    return Object.assign(new PlanGround(), { month, gatheredAt: nowOf(organization), form: GROUND_FORM, ground: carried, reason });
  }
}

/** A controller's row holds much else: what it can hold and how it rounds is carried, and nothing more. */
const traitsOf = ({
  stations,
  programs,
  startsPerProgram,
  maxMinutes,
  minuteStep,
  adjustScope,
  ...more
}: ControllerTraits): ControllerTraits => ({
  ...{ stations, programs, startsPerProgram, maxMinutes, minuteStep, adjustScope },
  adjustStepPercent: more.adjustStepPercent,
  maxAdjustPercent: more.maxAdjustPercent,
  monthlyAdjustPercent: more.monthlyAdjustPercent,
  runsAtOnce: more.runsAtOnce,
  cycleSoak: more.cycleSoak,
  rainSensor: more.rainSensor,
  rainSensorMm: more.rainSensorMm,
});
