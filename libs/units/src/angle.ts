import { finiteQuantity, type Quantity } from './quantity.js';

/**
 * Angle, as latitude given in °.
 *
 * @param value - The number as measured or read. [°]
 * @returns The same as a quantity. [°]
 * @throws {DomainError} `ANGLE_OUT_OF_DOMAIN` when not finite.
 */
export function degrees(value: number): Quantity<'°'> {
  return finiteQuantity(value, 'ANGLE_OUT_OF_DOMAIN');
}

/**
 * Angle within formulas, given in rad.
 *
 * @param value - The number as computed or read. [rad]
 * @returns The same as a quantity. [rad]
 * @throws {DomainError} `ANGLE_OUT_OF_DOMAIN` when not finite.
 */
export function radians(value: number): Quantity<'rad'> {
  return finiteQuantity(value, 'ANGLE_OUT_OF_DOMAIN');
}

/**
 * Angle: ° to rad.
 *
 * @param degrees - The value to convert. [°]
 * @returns The same angle. [rad]
 * @throws {DomainError} `ANGLE_OUT_OF_DOMAIN` when not finite.
 * @source FAO Irrigation and Drainage Paper 56 (1998), Eq. 22.
 * @example radiansFromDegrees(degrees(-22.9)) // -0.400, FAO-56 Example 7
 */
export function radiansFromDegrees(degrees: Quantity<'°'>): Quantity<'rad'> {
  return finiteQuantity((degrees * Math.PI) / 180, 'ANGLE_OUT_OF_DOMAIN');
}

/**
 * Angle: rad to °.
 *
 * @param radians - The value to convert. [rad]
 * @returns The same angle. [°]
 * @throws {DomainError} `ANGLE_OUT_OF_DOMAIN` when not finite.
 * @source FAO Irrigation and Drainage Paper 56 (1998), Eq. 22, the other way round.
 */
export function degreesFromRadians(radians: Quantity<'rad'>): Quantity<'°'> {
  return degrees((radians * 180) / Math.PI);
}
