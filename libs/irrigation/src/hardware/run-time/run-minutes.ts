import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_HOUR = 60;
const DAYS_PER_WEEK = 7;

/**
 * Base minutes: how long a zone runs to put out a net depth, were it perfectly even.
 *
 * t = 60 · depth / PR
 *
 * @param netDepth - Depth that the plants need. [mm]
 * @param precipitationRate - Precipitation rate of the zone. [mm/h]
 * @returns Base minutes. [min]
 * @throws {DomainError} `RUN_TIME_OUT_OF_DOMAIN` when the rate is not above zero, or the depth is below zero or not finite.
 * @source Extension texts on scheduling; Utah state landscape guide: 0.5 in take 20 min of spray, 40 min of impact rotor.
 * @example 0.5 in at 1.5 in/h // 20 min
 */
export function baseMinutes(netDepth: Quantity<'mm'>, precipitationRate: Quantity<'mm/h'>): Quantity<'min'> {
  if (!(netDepth >= 0 && precipitationRate > 0)) throw new DomainError('RUN_TIME_OUT_OF_DOMAIN', { netDepth, precipitationRate });
  return finiteQuantity((MINUTES_PER_HOUR * netDepth) / precipitationRate, 'RUN_TIME_OUT_OF_DOMAIN');
}

/**
 * Minutes with unevenness counted in: base minutes times a run-time multiplier or scheduling coefficient.
 *
 * @param base - Base minutes. [min]
 * @param multiplier - Run-time multiplier (`runTimeMultiplier`) or scheduling coefficient (`schedulingCoefficient`), at least 1. [–]
 * @returns Minutes to run. [min]
 * @throws {DomainError} `RUN_TIME_OUT_OF_DOMAIN` when the multiplier is below 1, or the minutes are below zero or not finite.
 * @source Irrigation trade's scheduling practice.
 */
export function multipliedMinutes(base: Quantity<'min'>, multiplier: number): Quantity<'min'> {
  if (!(base >= 0 && multiplier >= 1)) throw new DomainError('RUN_TIME_OUT_OF_DOMAIN', { base, multiplier });
  return finiteQuantity(base * multiplier, 'RUN_TIME_OUT_OF_DOMAIN');
}

/**
 * Minutes on each allowed day, so that a week's need is met on fewer days.
 *
 * t(allowed) = t(day) · 7 / allowed days
 *
 * @param minutesPerDay - Minutes if every day were allowed. [min]
 * @param allowedDays - Days of the week on which watering is allowed, 1 to 7. [d]
 * @returns Minutes on each of them. [min]
 * @throws {DomainError} `RUN_TIME_OUT_OF_DOMAIN` when the days are not whole and 1 to 7, or the minutes are below zero or not finite.
 * @source A regional water programme of Texas: 24 min a day are 168 a week, or 56 on each of three days.
 * @example minutesPerAllowedDay(24, 3) // 56
 */
export function minutesPerAllowedDay(minutesPerDay: Quantity<'min'>, allowedDays: number): Quantity<'min'> {
  if (!(minutesPerDay >= 0 && Number.isInteger(allowedDays) && allowedDays >= 1 && allowedDays <= DAYS_PER_WEEK)) {
    throw new DomainError('RUN_TIME_OUT_OF_DOMAIN', { minutesPerDay, allowedDays });
  }
  return finiteQuantity((minutesPerDay * DAYS_PER_WEEK) / allowedDays, 'RUN_TIME_OUT_OF_DOMAIN');
}
