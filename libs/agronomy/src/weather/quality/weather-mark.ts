import type { WeatherValue } from '../plausible-weather-day.js';

/**
 * What a mark does to its value. `kept`: it is shown and changes nothing. `doubted`: the value is used, and the day's reference
 * evapotranspiration, or its rain, is less sure. `refused`: the value is not used, and the procedure for missing data takes over (FAO-56, chapter 3).
 */
export type MarkEffect = 'kept' | 'doubted' | 'refused';

/** The checks. */
export type WeatherCheck = 'range' | 'step' | 'persistence' | 'clear-sky' | 'dawn-humidity';

/**
 * The table of what each mark does to the day, by its reason. Doubted rain makes the account's rain less sure.
 *
 * Refused is only what no weather makes; what weather makes seldom is doubted; what says more of the place than of the sensor is kept.
 */
const MARKS = {
  /** Outside what nature makes, or contradicting another value of the day. */
  impossible: { check: 'range', effect: 'refused' },
  /** Relative humidity above 100 %: a sensor a little out of calibration (ASCE-EWRI 2005, Appendix D, from memory). */
  'above-saturation': { check: 'range', effect: 'kept' },
  /** Reference evapotranspiration as stated, far from what the day's other values give. */
  'far-from-computed': { check: 'range', effect: 'refused' },
  /** Far from what this station measures in that month of the year. */
  'unusual-for-station': { check: 'range', effect: 'doubted' },
  /** Far from the days around, or from the day before where it stays there. */
  jump: { check: 'step', effect: 'doubted' },
  /** Far from the day before, and back on the day after. */
  spike: { check: 'step', effect: 'refused' },
  /** The same value on several days. */
  'same-for-days': { check: 'persistence', effect: 'doubted' },
  /** The same value on more days than chance explains: the sensor is stuck. */
  stuck: { check: 'persistence', effect: 'refused' },
  /** More radiation than above the atmosphere. */
  'above-atmosphere': { check: 'clear-sky', effect: 'refused' },
  /** More radiation than on a day without clouds. */
  'above-clear-sky': { check: 'clear-sky', effect: 'doubted' },
  /** Less radiation than the thickest cloud lets through. */
  'below-overcast': { check: 'clear-sky', effect: 'refused' },
  /** No day of a month comes near a day without clouds: a dirty or slanted sensor. */
  'never-clear': { check: 'clear-sky', effect: 'doubted' },
  /** The dew point lies well above the lowest temperature of the day. */
  'dew-point-above-lowest': { check: 'dawn-humidity', effect: 'doubted' },
  /** For a month the air at dawn stays far from saturation: dry surroundings, or a sensor that reads low. */
  'dry-at-dawn': { check: 'dawn-humidity', effect: 'kept' },
  /** The same, further than dry surroundings alone explain. */
  'very-dry-at-dawn': { check: 'dawn-humidity', effect: 'doubted' },
} as const satisfies Readonly<Record<string, { readonly check: WeatherCheck; readonly effect: MarkEffect }>>;

/** Why a value is marked. */
export type MarkReason = keyof typeof MARKS;

/** A mark on one value of a day. */
export type WeatherMark = {
  readonly value: WeatherValue;
  readonly check: WeatherCheck;
  readonly reason: MarkReason;
  readonly effect: MarkEffect;
};

/**
 * The mark that a reason makes: what was checked, and what it does to the value.
 *
 * @param value - Name of the marked value. [code]
 * @param reason - Why it is marked. [code]
 * @returns The mark. [code]
 * @source Common practice, no source, for the effects; the checks name theirs.
 */
export function weatherMark(value: WeatherValue, reason: MarkReason): WeatherMark {
  return { value, reason, ...MARKS[reason] };
}
