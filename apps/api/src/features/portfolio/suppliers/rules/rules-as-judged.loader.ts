import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { AllowedDays, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { Weekday } from '@rillbook/irrigation/settings/settings-fact.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { WateringRuleRow } from './watering-rule.entity.js';
import { wateringRulesOfSupplier } from './watering-rules.loader.js';

const CLOCK = /^(\d{1,2}):(\d{2})/;
const MINUTES_PER_HOUR = 60;

/** The watering rules in use of a supplier, as settings are judged by them. */
export async function rulesOfSupplier(tx: OrganizationTransaction, supplierId: string): Promise<WateringRule[]> {
  return (await wateringRulesOfSupplier.of(tx).load(supplierId)).map(asJudged);
}

function asJudged(row: WateringRuleRow): WateringRule {
  const { name, daysPerWeek, addressParity, maxMinutes, hoursAfterRain, rainMm, effectiveFrom, effectiveUntil } = row;
  return {
    ...{ name, daysPerWeek, addressParity, maxMinutes, hoursAfterRain, rainMm, effectiveFrom, effectiveUntil },
    allowedDays: allowedDays(row.allowedDays),
    blockedFrom: minuteOf(row.blockedFrom),
    blockedUntil: minuteOf(row.blockedUntil),
    plants: words(row.plants),
    exemptMethods: words(row.exemptMethods) as readonly IrrigationMethod[] | null,
    water: words(row.water),
  };
}

function allowedDays(text: string | null): AllowedDays | null {
  if (text === null || text === 'daily') return null;
  if (text === 'odd' || text === 'even' || text === 'none') return { kind: text };
  return { kind: 'weekdays', weekdays: text.split(' ') as Weekday[] };
}

function minuteOf(clock: string | null): number | null {
  const [, hours, minutes] = CLOCK.exec(clock ?? '') ?? [];
  return hours === undefined ? null : Number(hours) * MINUTES_PER_HOUR + Number(minutes);
}

const words = (text: string | null): readonly string[] | null => (text === null ? null : text.split(',').map((word) => word.trim()));
