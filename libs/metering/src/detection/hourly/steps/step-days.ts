import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { MeterEvidence, StepUsage } from '../../evidence/meter-evidence.js';
import { valueAt } from './value-at.js';

const MINUTES_PER_DAY = 1440;

/** Hour at which clocks change, as minutes of the local day: common practice, no source. */
const CLOCK_CHANGES_AT = 120;

/** What is needed to know the local day and clock of an elapsed minute. */
export type LocalDays = Pick<MeterEvidence, 'firstDay' | 'days' | 'midnights'>;

/** Which steps begin in which local day, and what the clock on the wall shows then. */
export interface StepDays {
  /** First step of each day, and one past the last of the last day. */
  readonly firstStep: Int32Array;
  /** Minutes on the wall clock at which each step begins. */
  readonly clockMinute: Float64Array;
}

/**
 * Steps by local day.
 *
 * @param calendar - The local days. [code]
 * @param usage - The steps. [code]
 * @returns First step of each day and the clock of each step. [min]
 */
export function stepDays(calendar: LocalDays, usage: StepUsage): StepDays {
  const { firstMinute, stepMinutes, litres } = usage;
  const firstStep = Int32Array.from(calendar.midnights, (midnight) =>
    Math.min(litres.length, Math.max(0, Math.ceil((midnight - firstMinute) / stepMinutes))),
  );
  const clockMinute = new Float64Array(litres.length);
  for (let day = 0; day < calendar.days; day++) {
    for (let step = firstStep[day] ?? 0; step < valueAt(firstStep, day + 1); step++)
      clockMinute[step] = clockOf(calendar, day, firstMinute + step * stepMinutes);
  }
  return { firstStep, clockMinute };
}

function clockOf({ midnights }: LocalDays, day: number, minute: number): number {
  const begin = midnights[day] ?? 0;
  const since = minute - begin;
  const length = valueAt(midnights, day + 1) - begin;
  return since < CLOCK_CHANGES_AT ? since : since + MINUTES_PER_DAY - length;
}

/**
 * Local day, with its elapsed share, of an elapsed minute.
 *
 * @param calendar - The local days. [code]
 * @param minute - Elapsed minute. [min]
 * @returns Local day number; before the first or after the last day those are continued. [d]
 */
export function localDayOfMinute(calendar: LocalDays, minute: number): number {
  const { firstDay, days, midnights } = calendar;
  let [low, high] = [0, days - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (valueAt(midnights, middle) <= minute) low = middle;
    else high = middle - 1;
  }
  const begin = midnights[low] ?? 0;
  return firstDay + low + (minute - begin) / ((midnights[low + 1] ?? begin + MINUTES_PER_DAY) - begin);
}

/**
 * Date of the local day in which an elapsed minute lies.
 *
 * @param calendar - The local days. [code]
 * @param minute - Elapsed minute. [min]
 * @returns Date, YYYY-MM-DD. [code]
 */
export function dateOfMinute(calendar: LocalDays, minute: number): string {
  return dateOfDayNumber(localDayOfMinute(calendar, minute));
}
