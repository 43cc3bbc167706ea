import type { ObservedMeter } from '../steps/observed-meter.js';
import { valueAt } from '../steps/value-at.js';

const MINUTES_PER_HOUR = 60;

/** How steps make whole hours, and the first step that was not visited yet. */
export interface QuietHours {
  readonly stepsPerHour: number;
  readonly hourMinutes: number;
  next: number;
}

/** An hour that no run touched: elapsed minute of its begin, its flow and that of indoor use as it is known, L/min. */
export interface QuietHour {
  readonly begin: number;
  readonly flow: number;
  readonly indoor: number;
  readonly indoorSd: number;
}

/**
 * Hours before the first.
 *
 * @param stepMinutes - Length of a step. [min]
 * @returns How steps make hours: the whole steps that fit into one. [–]
 */
export function quietHours(stepMinutes: number): QuietHours {
  const stepsPerHour = Math.max(1, Math.floor(MINUTES_PER_HOUR / stepMinutes));
  return { stepsPerHour, hourMinutes: stepsPerHour * stepMinutes, next: 0 };
}

/**
 * Visits the hours that ended with a day, each once.
 *
 * @param meter - The meter. [code]
 * @param hours - Where the last visit ended; it is moved. [–]
 * @param day - The day, from 0. [–]
 * @param visit - Called with each hour that no run touched and of which all steps are known. [code]
 */
export function visitQuietHours(meter: ObservedMeter, hours: QuietHours, day: number, visit: (hour: QuietHour) => void): void {
  const { usage, days, touched } = meter;
  const end = days.firstStep[day + 1] ?? 0;
  for (; hours.next + hours.stepsPerHour <= end; hours.next += hours.stepsPerHour) {
    let [litres, indoor, variance] = [0, 0, 0];
    for (let step = hours.next; step < hours.next + hours.stepsPerHour; step++) {
      litres += touched[step] ? Number.NaN : (usage.litres[step] ?? Number.NaN);
      indoor += meter.indoor[step] ?? 0;
      variance += valueAt(meter.indoorSd, step) ** 2;
    }
    const { hourMinutes } = hours;
    const begin = usage.firstMinute + hours.next * usage.stepMinutes;
    if (!Number.isNaN(litres))
      visit({ begin, flow: litres / hourMinutes, indoor: indoor / hourMinutes, indoorSd: Math.sqrt(variance) / hourMinutes });
  }
}
