import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { ruleAppliesToPlace, ruleAppliesToStation, ruleIsInForce } from '@rillbook/irrigation/rules/rule-applies.js';
import type { RuledPlace, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { RainOfDay } from '../../accounts/needs/root-zones-today.service.js';

const HOURS_PER_DAY = 24;

/**
 * Whole days from today on in which a rule forbids all of a controller's stations to run after the rain that fell. Its hour is not known: the
 * hours are counted from the end of its day, and days that they reach into are counted whole, so that the rule is kept whenever it rained.
 */
export function daysByRule(
  rules: readonly WateringRule[],
  place: Omit<RuledPlace, 'rain'>,
  rain: readonly RainOfDay[],
  today: string,
): number {
  const day = dayNumberOfDate(today);
  const daysOf = (rule: WateringRule): number => {
    const counted = rain.filter(({ mm }) => (rule.rainMm === null ? mm > 0 : mm >= rule.rainMm));
    const last = counted.at(-1);
    if (rule.hoursAfterRain === null || !last) return 0;
    return dayNumberOfDate(last.date) + Math.ceil(rule.hoursAfterRain / HOURS_PER_DAY) + 1 - day;
  };
  const ruling = rules.filter(
    (rule) =>
      ruleIsInForce(rule, today) &&
      ruleAppliesToPlace(rule, { ...place, rain: [] }) &&
      place.stations.every((station) => ruleAppliesToStation(rule, station)),
  );
  return Math.max(0, ...ruling.map(daysOf));
}
