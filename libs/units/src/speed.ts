import { finiteQuantity, type Quantity } from './quantity.js';

/** Metres per second in a mile per hour: exact, 1609.344 m in 3600 s. */
const METRES_PER_SECOND_PER_MILE_PER_HOUR = 0.44704;

/** Kilometres per hour in a metre per second: exact. */
const KILOMETRES_PER_HOUR_PER_METRE_PER_SECOND = 3.6;

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

/**
 * Speed: km/h to m/s.
 *
 * @param kilometresPerHour - The value to convert. [km/h]
 * @returns The same speed. [m/s]
 * @throws {DomainError} `SPEED_OUT_OF_DOMAIN` when not finite.
 * @example metresPerSecondFromKilometresPerHour(10) // 2.78, FAO-56 Example 18
 */
export function metresPerSecondFromKilometresPerHour(kilometresPerHour: number): Quantity<'m/s'> {
  return finiteQuantity(kilometresPerHour / KILOMETRES_PER_HOUR_PER_METRE_PER_SECOND, 'SPEED_OUT_OF_DOMAIN');
}

/**
 * Speed: m/s to km/h.
 *
 * @param metresPerSecond - The value to convert. [m/s]
 * @returns The same speed. [km/h]
 * @throws {DomainError} `SPEED_OUT_OF_DOMAIN` when not finite.
 */
export function kilometresPerHourFromMetresPerSecond(metresPerSecond: Quantity<'m/s'>): Quantity<'km/h'> {
  return finiteQuantity(metresPerSecond * KILOMETRES_PER_HOUR_PER_METRE_PER_SECOND, 'SPEED_OUT_OF_DOMAIN');
}
