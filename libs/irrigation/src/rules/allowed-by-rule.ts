import { dateOfDayNumber, weekdayOfDayNumber } from '../calendar/local-date.js';
import type { Weekday } from '../settings/settings-fact.js';
import { parityOf } from './rule-applies.js';
import type { AllowedDays, RainThatEnded, WateringRule } from './watering-rule.js';

const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MINUTES_PER_DAY = 1440;
const MINUTES_PER_HOUR = 60;

/**
 * The days that a rule leaves: those it names, or those of the address's own parity where it says nothing but the parity.
 *
 * @param rule - The rule. [code]
 * @returns The days, or null where any day is allowed. [code]
 */
export function daysLeftBy(rule: WateringRule): AllowedDays | null {
  if (rule.allowedDays !== null || rule.addressParity === null) return rule.allowedDays;
  const others = [rule.daysPerWeek, rule.blockedFrom, rule.maxMinutes, rule.hoursAfterRain];
  return others.every((other) => other === null) ? { kind: rule.addressParity } : null;
}

/**
 * Whether a rule's days allow watering on a local date.
 *
 * @param allowed - The days; null allows any. [code]
 * @param dayNumber - Local date, whole days since 1970-01-01. [d]
 * @returns True when watering is allowed. [–]
 */
export function dayIsAllowed(allowed: AllowedDays | null, dayNumber: number): boolean {
  if (allowed === null) return true;
  switch (allowed.kind) {
    case 'none':
      return false;
    case 'weekdays':
      return allowed.weekdays.includes(WEEKDAYS[weekdayOfDayNumber(dayNumber)] as Weekday);
    default:
      return parityOf(Number(dateOfDayNumber(dayNumber).slice(8))) === allowed.kind;
  }
}

/**
 * Minutes of a run that fall into a rule's blocked hours.
 *
 * @param rule - Blocked from and until, in minutes after midnight; hours that end before they begin reach over midnight. [min]
 * @param begin - Begin of the run on the wall clock, in minutes after a local midnight. [min]
 * @param minutes - How long it runs. [min]
 * @returns Minutes within the blocked hours. [min]
 */
export function blockedMinutes(rule: Pick<WateringRule, 'blockedFrom' | 'blockedUntil'>, begin: number, minutes: number): number {
  const { blockedFrom, blockedUntil } = rule;
  if (blockedFrom === null && blockedUntil === null) return 0;
  const from = blockedFrom ?? 0;
  const to = blockedUntil ?? MINUTES_PER_DAY;
  const until = to > from ? to : to + MINUTES_PER_DAY;
  // The day's own span, yesterday's that reaches into it, and tomorrow's that a long run reaches.
  return [-MINUTES_PER_DAY, 0, MINUTES_PER_DAY].reduce(
    (sum, shift) => sum + Math.max(0, Math.min(begin + minutes, until + shift) - Math.max(begin, from + shift)),
    0,
  );
}

/**
 * Whether an instant surely lies within the hours after rain in which nothing may be watered.
 *
 * Where the hour of the rain is not known it is surely after the latest and before the earliest hours are over.
 *
 * @param rule - Hours, and the least rain that counts; null counts any rain above zero. [h] and [mm]
 * @param rain - Rain that ended. [mm]
 * @param minute - The instant, in elapsed minutes. [min]
 * @returns The rain that forbids it, or null. [mm]
 * @example With 48 hours: 24 and 47 hours after rain are forbidden, 49 are not.
 */
export function rainForbidding(
  rule: Pick<WateringRule, 'hoursAfterRain' | 'rainMm'>,
  rain: readonly RainThatEnded[],
  minute: number,
): RainThatEnded | null {
  const { hoursAfterRain, rainMm } = rule;
  if (hoursAfterRain === null) return null;
  const counts = ({ mm }: RainThatEnded) => (rainMm === null ? mm > 0 : mm >= rainMm);
  return (
    rain.find((each) => counts(each) && minute >= each.endedUntil && minute < each.endedFrom + hoursAfterRain * MINUTES_PER_HOUR) ?? null
  );
}
