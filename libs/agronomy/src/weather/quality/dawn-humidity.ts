import { celsius } from '@rillbook/units/temperature.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { vapourPressureFromMaximumHumidity } from '../../evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import type { WeatherDay } from '../weather-day.js';
import { type CheckedDay, type SuspectValue, surroundings } from './checked-day.js';

/** The day's mean dew point may lie this far above its lowest temperature, when other air came in. An assumption. [°C] */
const ABOVE_LOWEST = 5;

/** Mean of Tmin - Tdew over a month: beyond the first the surroundings are dry (RHmax near 70 %), beyond the second (near 50 %) the sensor is doubted. [°C] */
const DRY = 5;
const VERY_DRY = 10;

/** Days before and after that make a month of surroundings, of which this many must be known. An assumption. */
const REACH = 15;
const LEAST_DAYS = 20;

/**
 * Humidity at dawn: in well-watered surroundings the air comes near saturation, and the dew point near the lowest temperature.
 *
 * Tdew - Tmin > 5; mean(Tmin - Tdew) of 31 days > 5 and > 10. Without a dew point, that of RHmax at Tmin.
 *
 * @param days - The days, oldest first. [any]
 * @returns What was found, on the dew point, else on the highest humidity. [code]
 * @source FAO Irrigation and Drainage Paper 56, Annex 5 and 6, and ASCE-EWRI (2005), Appendix D, from memory: RHmax of 90 to 100 % and Tdew within
 * some degrees of Tmin where the ground is watered; chronically less says dry surroundings or a sensor that reads low. Limits are common practice.
 */
export function dawnHumidity(days: readonly CheckedDay[]): readonly SuspectValue[] {
  const below = days.map(({ day }) => belowLowest(day));
  const around = surroundings(days, REACH);
  const [sums, counts] = [runningSums(below.map((depth) => depth ?? 0)), runningSums(below.map((depth) => (depth === null ? 0 : 1)))];
  return below.flatMap((depth, at): SuspectValue[] => {
    if (depth === null) return [];
    const value = days[at]!.day.dewPoint === null ? 'rhmax' : 'dewPoint';
    if (depth < -ABOVE_LOWEST) return [{ at, value, reason: 'dew-point-above-lowest' }];
    const [first, last] = around[at]!;
    const known = counts[last + 1]! - counts[first]!;
    const mean = (sums[last + 1]! - sums[first]!) / known;
    if (known < LEAST_DAYS || mean <= DRY) return [];
    return [{ at, value, reason: mean > VERY_DRY ? 'very-dry-at-dawn' : 'dry-at-dawn' }];
  });
}

// The sum of all before each place, and of all at the end.
function runningSums(values: readonly number[]): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((value, at) => {
    sums[at + 1] = sums[at]! + value;
  });
  return sums;
}

// How far the dew point lies below the lowest temperature, Tmin - Tdew. [°C]
function belowLowest({ tmin, dewPoint, rhmax }: WeatherDay): number | null {
  if (tmin === null) return null;
  if (dewPoint !== null) return tmin - dewPoint;
  return rhmax === null ? null : tmin - dewPointAtDawn(tmin, rhmax);
}

// Dew point of the air at dawn, which is FAO-56, Eq. 11, turned round. [°C]
function dewPointAtDawn(tmin: Quantity<'°C'>, rhmax: number): Quantity<'°C'> {
  const logarithm = Math.log(vapourPressureFromMaximumHumidity({ maximumTemperature: tmin, minimumTemperature: tmin }, rhmax) / 0.6108);
  return celsius((237.3 * logarithm) / (17.27 - logarithm));
}
