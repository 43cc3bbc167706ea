import { Resolver } from '@nestjs/graphql';
import { keptThingResolver } from '../../../../platform/kept-things/kept-thing.resolver.js';
import { judgeWateringRule, wateringRuleValues } from './watering-rule-values.js';
import { WateringRuleRow } from './watering-rule.entity.js';
import { WateringRuleInput } from './watering-rule.input.js';
import { showWateringRule, WateringRule } from './watering-rule.type.js';

const Kept = keptThingResolver({
  name: 'WateringRule',
  row: WateringRuleRow,
  type: WateringRule,
  input: WateringRuleInput,
  show: showWateringRule,
  keep: wateringRuleValues,
  judge: judgeWateringRule,
});

/** Watering rules: created, changed, retired. */
@Resolver(() => WateringRule)
export class WateringRuleResolver extends Kept {}
