import { daysLeftBy } from '../../rules/allowed-by-rule.js';
import { ruleAppliesToPlace, ruleAppliesToStation } from '../../rules/rule-applies.js';
import type { AllowedDays, RuledPlace, RuledStation, WateringRule } from '../../rules/watering-rule.js';
import { type DayPattern, EVERY_DAY, maskOfWeekdays } from './day-pattern.js';

/**
 * What all rules together leave a zone: weekdays (Monday the lowest bit), a parity of the days of the month, days a week, minutes a day, and
 * whether it may be watered at all.
 */
export interface RulesOfZone {
  readonly mask: number;
  readonly parity: 'odd' | 'even' | null;
  readonly daysPerWeek: number;
  readonly maxMinutes: number;
  readonly forbidden: boolean;
}

const FREE: RulesOfZone = { mask: EVERY_DAY, parity: null, daysPerWeek: 7, maxMinutes: Number.POSITIVE_INFINITY, forbidden: false };

/**
 * Rules that are in force on any day of a month: the stricter wins.
 *
 * @param rules - Rules of the supplier. [code]
 * @param month - Calendar month, 'YYYY-MM'. [code]
 * @param place - The address and its water. [code]
 * @returns Those that meet the place in that month. [code]
 */
export function rulesInMonth(
  rules: readonly WateringRule[],
  month: string,
  place: Pick<RuledPlace, 'addressNumber' | 'water'>,
): readonly WateringRule[] {
  return rules.filter(
    (rule) =>
      (rule.effectiveFrom === null || rule.effectiveFrom <= `${month}-31`) &&
      (rule.effectiveUntil === null || rule.effectiveUntil >= `${month}-01`) &&
      ruleAppliesToPlace(rule, { ...place, stations: [], rain: [] }),
  );
}

/**
 * What the rules leave one zone.
 *
 * @param rules - Rules that meet the place in the month. [code]
 * @param zone - Plants and method of the zone. [code]
 * @returns The strictest of each. [code]
 */
export function rulesOfZone(rules: readonly WateringRule[], zone: RuledStation): RulesOfZone {
  return rules.filter((rule) => ruleAppliesToStation(rule, zone)).reduce(stricter, FREE);
}

function stricter(before: RulesOfZone, rule: WateringRule): RulesOfZone {
  const { mask, parity, forbidden } = withDays(before, daysLeftBy(rule));
  return {
    mask,
    parity,
    forbidden: forbidden || rule.daysPerWeek === 0,
    daysPerWeek: Math.min(before.daysPerWeek, rule.daysPerWeek ?? 7),
    maxMinutes: Math.min(before.maxMinutes, rule.maxMinutes ?? Number.POSITIVE_INFINITY),
  };
}

function withDays(before: RulesOfZone, allowed: AllowedDays | null): Pick<RulesOfZone, 'mask' | 'parity' | 'forbidden'> {
  if (allowed === null) return before;
  if (allowed.kind === 'none') return { ...before, forbidden: true };
  if (allowed.kind === 'weekdays') {
    const mask = before.mask & maskOfWeekdays(allowed.weekdays);
    return { ...before, mask, forbidden: before.forbidden || mask === 0 };
  }
  return { ...before, parity: allowed.kind, forbidden: before.forbidden || (before.parity !== null && before.parity !== allowed.kind) };
}

/**
 * Whether a zone may be watered on the days of a pattern.
 *
 * @param rules - What the rules leave the zone. [code]
 * @param pattern - The days. [d]
 * @param daysOfWeek - The weekdays that all ruled zones together keep to, Monday the lowest bit. [code]
 * @returns True when no day of it is forbidden. [–]
 */
export function patternIsAllowed(rules: RulesOfZone, pattern: DayPattern, daysOfWeek: number): boolean {
  if (rules.forbidden || pattern.mostInWeek > rules.daysPerWeek) return false;
  const { kind } = pattern.days;
  const bound = rules.mask !== EVERY_DAY || rules.daysPerWeek < 7;
  if (rules.parity !== null) return kind === rules.parity && !bound;
  if (!bound) return true;
  return (kind === 'weekdays' || kind === 'daily') && (pattern.mask & ~(rules.mask & daysOfWeek)) === 0;
}
