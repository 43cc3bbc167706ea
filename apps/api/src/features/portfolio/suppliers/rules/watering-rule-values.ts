import { plantsWords } from '@rillbook/agronomy/plants/plant-words.js';
import { irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { between, judgeOrder, judgeValues, name, oneOf, type Rule, someOf, timeOfDay } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { filled } from '../../../../platform/records/filled.js';
import { requireInUse } from '../../../../platform/records/require-in-use.js';
import { waters } from '../../meters/meter-words.js';
import { addressParities } from './rule-words.js';
import type { WateringRuleRow } from './watering-rule.entity.js';
import type { WateringRuleInput } from './watering-rule.input.js';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

const allowedDays: Rule = (value: string) => {
  const days = value.split(' ');
  const fits =
    ['none', 'odd', 'even'].includes(value) || (new Set(days).size === days.length && days.every((day) => WEEKDAYS.includes(day)));
  return fits ? null : 'days such as Mon Wed Fri, or odd, even, or none where nothing may be watered';
};

const RULES = {
  name: name(),
  allowedDays,
  daysPerWeek: between(0, 7),
  addressParity: oneOf(...addressParities),
  blockedFrom: timeOfDay,
  blockedUntil: timeOfDay,
  maxMinutes: between(0, 1440, 'minutes'),
  hoursAfterRain: between(0, 1000, 'hours'),
  rainMm: between(0, 2000, 'mm'),
  plants: someOf(...plantsWords),
  exemptMethods: someOf(...irrigationMethods),
  water: someOf(...waters),
};

function judgeBlocked(input: WateringRuleInput): void {
  if (!input.blockedFrom === !input.blockedUntil) return;
  throw platformProblems.valueRefused({
    field: input.blockedFrom ? 'blockedUntil' : 'blockedFrom',
    found: null,
    expected: 'both ends of the blocked hours, or neither',
  });
}

/** Looks at what is said of a rule. */
export async function judgeWateringRule(tx: OrganizationTransaction, input: WateringRuleInput): Promise<void> {
  judgeValues(input, RULES);
  judgeBlocked(input);
  judgeOrder('effectiveUntil', input.effectiveFrom, input.effectiveUntil, 'the day it begins');
  await requireInUse(tx, 'water_supplier', input.supplierId);
}

/** A rule's columns as they are said. */
export const wateringRuleValues = (input: WateringRuleInput) =>
  filled<WateringRuleRow>(input, [
    'supplierId',
    'name',
    'allowedDays',
    'daysPerWeek',
    'addressParity',
    'blockedFrom',
    'blockedUntil',
    'maxMinutes',
    'hoursAfterRain',
    'rainMm',
    'plants',
    'exemptMethods',
    'water',
    'effectiveFrom',
    'effectiveUntil',
  ]);
