import type { ObservedMeter } from './observed-meter.js';
import { valueAt } from './value-at.js';

/** Settings are looked at so many days before and after. [d] */
const NEAR_DAYS = 8;
/** Minutes of a zone on two days are the same within half a minute: timers count minutes. */
const SAME_MINUTES = 0.5;

/**
 * Whether settings changed about a day: whoever writes them down may have set them a run earlier or later.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns True when a zone that ran has other minutes on the nearest day on which it ran before or after. [–]
 */
export function isAboutSettings(meter: ObservedMeter, day: number): boolean {
  const own = minutesOf(meter, day);
  return [-1, 1].some((way) => [...own].some(([zone, minutes]) => differs(meter, { zone, minutes }, day, way)));
}

function differs(meter: ObservedMeter, { zone, minutes }: { zone: number; minutes: number }, day: number, way: number): boolean {
  const other = nearestMinutes(meter, zone, day, way);
  return other !== null && Math.abs(other - minutes) > SAME_MINUTES;
}

function nearestMinutes(meter: ObservedMeter, zone: number, day: number, way: number): number | null {
  for (let near = 1; near <= NEAR_DAYS; near++) {
    const other = minutesOf(meter, day + way * near).get(zone);
    if (other !== undefined) return other;
  }
  return null;
}

function minutesOf({ runs }: ObservedMeter, day: number): Map<number, number> {
  const minutes = new Map<number, number>();
  for (const { zone, begin, end } of runs[day] ?? []) minutes.set(zone, (minutes.get(zone) ?? 0) + end - begin);
  return minutes;
}

/**
 * Litres by which the runs of a day would have passed more with the minutes of the nearest day on which each zone ran, before or after.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Litres by the flows believed; zero where no settings changed, or less was set. [L]
 */
export function litresOfOtherSettings(meter: ObservedMeter, day: number): number {
  let litres = 0;
  for (const [zone, minutes] of minutesOf(meter, day)) {
    const others = [-1, 1].map((way) => nearestMinutes(meter, zone, day, way) ?? minutes);
    litres += Math.max(0, ...others.map((other) => other - minutes)) * valueAt(meter.flows, zone);
  }
  return litres;
}
