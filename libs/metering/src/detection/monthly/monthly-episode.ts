import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { EvidenceZone } from '../evidence/meter-evidence.js';
import type { Thresholds } from '../thresholds.js';

/** Days of a mean month of the Gregorian calendar. */
const DAYS_OF_MONTH = 365.2425 / 12;

/**
 * A meter, its zones, the price of its water and what the organization wants to be told. `isIndexed` where flows are not on record: what is programmed
 * is then an index, whose ratio to metered says nothing by itself.
 */
export interface JudgedMeter {
  readonly meterId: string;
  readonly zones: readonly EvidenceZone[];
  readonly price: number | null;
  readonly thresholds: Thresholds;
  readonly isIndexed: boolean;
}

/**
 * Water of a mean month.
 *
 * @param litresPerDay - Water of a day. [L/d]
 * @returns Water of a month. [L]
 */
export function monthOf(litresPerDay: number): number {
  return litresPerDay * DAYS_OF_MONTH;
}

/**
 * The parts that all episodes of a meter share.
 *
 * @param judged - The meter. [code]
 * @param fromLocalDay - When the cause began as far as can be told. [d]
 * @param untilLocalDay - The end of the newest interval that shows it. [d]
 * @returns Meter, zones and dates. [code]
 */
export function aboutMeter(judged: JudgedMeter, fromLocalDay: number, untilLocalDay: number) {
  return {
    meterId: judged.meterId,
    controllerId: null,
    zoneIds: judged.zones.map(({ zoneId }) => zoneId),
    fromDate: dateOfDayNumber(fromLocalDay),
    // An interval that ends at midnight ends with the day before.
    untilDate: dateOfDayNumber(Math.ceil(untilLocalDay) - 1),
  } as const;
}
