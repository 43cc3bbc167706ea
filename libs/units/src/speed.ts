import { finiteQuantity, type Quantity } from './quantity.js';

/** Metres per second in a mile per hour: exact, 1609.344 m in 3600 s. */
const METRES_PER_SECOND_PER_MILE_PER_HOUR = 0.44704;

/**
 * Speed of the wind given in m/s.
 *
 * @param value - The number as measured or read. [m/s]
 * @returns The same as a quantity. [m/s]
 * @throws {DomainError} `SPEED_OUT_OF_DOMAIN` when not finite.
 */
export function metresPerSecond(value: number): Quantity<'m/s'> {
  return finiteQuantity(value, 'SPEED_OUT_OF_DOMAIN');
}

/**
 * Speed: mph to m/s.
 *
 * @param milesPerHour - The value to convert. [mph]
 * @returns The same speed. [m/s]
 * @throws {DomainError} `SPEED_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 * @example metresPerSecondFromMilesPerHour(1) // 0.44704
 */
export function metresPerSecondFromMilesPerHour(milesPerHour: number): Quantity<'m/s'> {
  return finiteQuantity(milesPerHour * METRES_PER_SECOND_PER_MILE_PER_HOUR, 'SPEED_OUT_OF_DOMAIN');
}

/**
 * Speed: m/s to mph.
 *
 * @param metresPerSecond - The value to convert. [m/s]
 * @returns The same speed. [mph]
 * @throws {DomainError} `SPEED_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function milesPerHourFromMetresPerSecond(metresPerSecond: Quantity<'m/s'>): Quantity<'mph'> {
  return finiteQuantity(metresPerSecond / METRES_PER_SECOND_PER_MILE_PER_HOUR, 'SPEED_OUT_OF_DOMAIN');
}
