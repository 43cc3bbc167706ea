import type { ObservedMeter } from './observed-meter.js';
import { valueAt } from './value-at.js';

/** Less beside the runs of a day is rounding. */
const LEAST_BY_HAND = 0.001;
const DAYS_PER_WEEK = 7;

/**
 * Litres that a hand waters in a week: what people say of it, or programmed water that no run of a valve puts out, by what the zones on record say.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Litres; zero where nobody said so and there are no zones, or no more than rounding. [L]
 */
export function handLitresAWeek(meter: ObservedMeter, day: number): number {
  const { evidence, runs, flows } = meter;
  if (evidence.handLitresPerDay) return DAYS_PER_WEEK * evidence.handLitresPerDay;
  const recorded = evidence.zones.map(({ flowLPerMin }) => flowLPerMin ?? Number.NaN);
  const ran = (runs[day] ?? []).reduce((sum, { zone, begin, end }) => sum + (end - begin) * valueAt(recorded, zone), 0);
  const byHand = (evidence.programmedLitres[day] ?? Number.NaN) - ran;
  return flows.length > 0 && byHand > LEAST_BY_HAND * ran ? DAYS_PER_WEEK * byHand : 0;
}
