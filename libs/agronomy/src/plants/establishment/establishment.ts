import { dayOfYear } from '../../weather/day-of-year.js';
import type { Plants } from '../plant-words.js';

/** How far plants have come from the day they were planted to the day they count as established. */
export type Establishment = {
  /** 0 on the day of planting, 1 once established; it grows evenly with time. [–] */
  readonly share: number;
  /** Length of the whole period. [d] */
  readonly days: number;
};

/**
 * Days from planting to established, by kind of plant: turf six weeks, annuals and vegetables four, groundcover and perennials half a year,
 * shrubs one year, trees two; a mixed zone as shrubs. Common practice, no source.
 */
const DAYS: Readonly<Record<Plants, number>> = {
  'turf cool-season': 42,
  'turf warm-season': 42,
  trees: 730,
  shrubs: 365,
  groundcover: 180,
  perennials: 180,
  annuals: 28,
  vegetables: 28,
  mixed: 365,
};

const MILLISECONDS_PER_DAY = 86_400_000;

/**
 * Establishment of new plants: how far they have come on a day.
 *
 * share = (date − plantedOn) / period, within 0 … 1
 *
 * Young plants draw on little more than the soil they came with and need water more often; that they do is in the guide cited, how long it
 * lasts is common practice.
 *
 * @param plants - What was planted, or null when not known; then as mixed. [code]
 * @param plantedOn - Day of planting, YYYY-MM-DD, or null when not known. [code]
 * @param date - The day asked for, YYYY-MM-DD. [code]
 * @returns Share of the period that has passed and its length; null where no day is known or the plants are not there yet. [–] and [d]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN` when a date is no calendar day so written.
 * @source Common practice, no source, for the periods; Costello et al. (2000) for the more frequent water of new plantings, from memory.
 * @example establishment('shrubs', '2026-01-01', '2026-07-02') // share 182/365
 */
export function establishment(plants: Plants | null, plantedOn: string | null, date: string): Establishment | null {
  if (plantedOn === null) return null;
  const age = dayNumber(date) - dayNumber(plantedOn);
  if (age < 0) return null;
  const days = DAYS[plants ?? 'mixed'];
  return { share: Math.min(1, age / days), days };
}

function dayNumber(date: string): number {
  return Date.UTC(Number(date.slice(0, 4)), 0, dayOfYear(date)) / MILLISECONDS_PER_DAY;
}
