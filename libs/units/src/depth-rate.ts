import { finiteQuantity, type Quantity } from './quantity.js';

/** Millimetres in an inch: exact by definition (international inch, 1959). */
const MILLIMETRES_PER_INCH = 25.4;

/**
 * Precipitation or intake rate given in mm/h.
 *
 * @param value - The number as measured or read. [mm/h]
 * @returns The same as a quantity. [mm/h]
 * @throws {DomainError} `DEPTH_RATE_OUT_OF_DOMAIN` when not finite.
 */
export function millimetresPerHour(value: number): Quantity<'mm/h'> {
  return finiteQuantity(value, 'DEPTH_RATE_OUT_OF_DOMAIN');
}

/**
 * Precipitation rate: in/h to mm/h.
 *
 * @param inchesPerHour - The value to convert. [in/h]
 * @returns The same precipitation rate. [mm/h]
 * @throws {DomainError} `DEPTH_RATE_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 * @example millimetresPerHourFromInchesPerHour(1.5) // 38.1
 */
export function millimetresPerHourFromInchesPerHour(inchesPerHour: number): Quantity<'mm/h'> {
  return finiteQuantity(inchesPerHour * MILLIMETRES_PER_INCH, 'DEPTH_RATE_OUT_OF_DOMAIN');
}

/**
 * Precipitation rate: mm/h to in/h.
 *
 * @param millimetresPerHour - The value to convert. [mm/h]
 * @returns The same precipitation rate. [in/h]
 * @throws {DomainError} `DEPTH_RATE_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 */
export function inchesPerHourFromMillimetresPerHour(millimetresPerHour: Quantity<'mm/h'>): Quantity<'in/h'> {
  return finiteQuantity(millimetresPerHour / MILLIMETRES_PER_INCH, 'DEPTH_RATE_OUT_OF_DOMAIN');
}
