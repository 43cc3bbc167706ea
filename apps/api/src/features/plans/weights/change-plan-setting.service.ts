import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { between, judgeValues, timeOfDay } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { identityProblems } from '../../../platform/identity/sessions/identity.problems.js';
import { planSettings, type PlanSettingValues } from './plan-setting.repository.js';
import type { PlanSettingInput } from './plan-setting.type.js';

const price = between(0.01, 1000);
const LIMITS = {
  waterFrom: timeOfDay,
  waterUntil: timeOfDay,
  thirst: price,
  waste: price,
  keyPress: between(0, 10_000),
  watering: between(0, 10_000),
};

/** Changes what programs are planned by. */
@Injectable()
export class ChangePlanSetting {
  async run(tx: OrganizationTransaction, version: number, input: PlanSettingInput): Promise<PlanSettingValues> {
    judgeValues(input, LIMITS);
    const { waterFrom, waterUntil, thirst, waste, keyPress, watering } = input;
    const refuse = (field: string, found: unknown, expected: string): never => {
      throw platformProblems.valueRefused({ field, found, expected });
    };
    if (waterFrom === waterUntil) refuse('waterUntil', waterUntil, 'another time than the one at which watering may begin');
    if (thirst < waste) refuse('thirst', thirst, `at least the price of waste, ${waste}: thirst costs more than waste`);
    const isKept = await planSettings.keep(tx, version, { waterFrom, waterUntil, thirst, waste, keyPress, watering });
    const present = await planSettings.own(tx);
    if (!isKept) throw identityProblems.changedMeanwhile({ thing: 'plan setting', version: present.version });
    return present;
  }
}
