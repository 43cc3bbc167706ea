import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { AllowedDays, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { Weekday } from '@rillbook/irrigation/settings/settings-fact.js';

/** A rule as its table keeps it: days, plants, methods and waters in words. */
export interface RuleWords
  extends Omit<WateringRule, 'allowedDays' | 'blockedFrom' | 'blockedUntil' | 'plants' | 'exemptMethods' | 'water'> {
  readonly allowedDays: string | null;
  readonly blockedFrom: string | null;
  readonly blockedUntil: string | null;
  readonly plants: string | null;
  readonly exemptMethods: string | null;
  readonly water: string | null;
}

/** A rule as plans and judgements take it. */
export function ruleOfRow(row: RuleWords): WateringRule {
  const { name, daysPerWeek, addressParity, maxMinutes, hoursAfterRain, rainMm, effectiveFrom, effectiveUntil } = row;
  return {
    ...{ name, daysPerWeek, addressParity, maxMinutes, hoursAfterRain, rainMm, effectiveFrom, effectiveUntil },
    allowedDays: row.allowedDays === null ? null : daysOf(row.allowedDays),
    blockedFrom: minutesOf(row.blockedFrom),
    blockedUntil: minutesOf(row.blockedUntil),
    plants: listOf(row.plants),
    exemptMethods: listOf(row.exemptMethods) as readonly IrrigationMethod[] | null,
    water: listOf(row.water),
  };
}

const daysOf = (words: string): AllowedDays =>
  words === 'odd' || words === 'even' || words === 'none' ? { kind: words } : { kind: 'weekdays', weekdays: words.split(' ') as Weekday[] };

const listOf = (words: string | null): readonly string[] | null => words?.split(',').map((word) => word.trim()) ?? null;

/** Minutes after midnight of a local time HH:MM. [min] */
export function minutesOf(clock: string): number;
export function minutesOf(clock: string | null): number | null;
export function minutesOf(clock: string | null): number | null {
  if (clock === null) return null;
  const [hours, minutes] = clock.split(':').map(Number);
  return hours! * 60 + minutes!;
}
