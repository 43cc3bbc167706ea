import { Args, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { ChangePlanSetting } from './change-plan-setting.service.js';
import { planSettings, type PlanSettingValues } from './plan-setting.repository.js';
import { PlanSetting, PlanSettingInput } from './plan-setting.type.js';

/** What programs are planned by. */
@Resolver(() => PlanSetting)
export class PlanSettingResolver {
  constructor(private readonly changeSetting: ChangePlanSetting) {}

  @Allow(Permission.ReadPortfolio)
  @Query(() => PlanSetting)
  async planSetting(@Tx() tx: OrganizationTransaction): Promise<PlanSetting> {
    return shown(await planSettings.own(tx));
  }

  @Allow(Permission.ManageOrganization)
  @Mutation(() => PlanSetting, { name: 'changePlanSetting' })
  async change(
    @Tx() tx: OrganizationTransaction,
    @Args('version', { type: () => Int }) version: number,
    @Args('input', { type: () => PlanSettingInput }) input: PlanSettingInput,
  ): Promise<PlanSetting> {
    return shown(await this.changeSetting.run(tx, version, input));
  }
}

const shown = (values: PlanSettingValues): PlanSetting => Object.assign(new PlanSetting(), values);
