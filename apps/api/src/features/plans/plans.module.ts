import { Module } from '@nestjs/common';
import { YearCardResolver } from './card/year-card.field-resolver.js';
import { ControllerPlanResolver } from './offers/controller-plan.field-resolver.js';
import { PlanGroundResolver } from './ground/plan-ground.field-resolver.js';
import { RainPauseListResolver } from './rain/rain-pause-list.resolver.js';
import { RainPauses } from './rain/rain-pauses.service.js';
import { BreakersOfRules } from './rule-change/breakers-of-rules.service.js';
import { RuleChangeResolver } from './rule-change/rule-change.resolver.js';
import { WhatARuleChanges } from './rule-change/what-a-rule-changes.service.js';
import { ChangePlanSetting } from './weights/change-plan-setting.service.js';
import { PlanSettingResolver } from './weights/plan-setting.resolver.js';

/** Programs worth setting: what each controller would best be set to, and what a new rule changes. */
@Module({
  providers: [
    ControllerPlanResolver,
    PlanGroundResolver,
    YearCardResolver,
    RuleChangeResolver,
    WhatARuleChanges,
    BreakersOfRules,
    PlanSettingResolver,
    ChangePlanSetting,
    RainPauseListResolver,
    RainPauses,
  ],
  exports: [BreakersOfRules],
})
export class PlansModule {}
