import { finiteQuantity, type Quantity } from './quantity.js';

/** Millimetres in an inch: exact by definition (international inch, 1959). */
const MILLIMETRES_PER_INCH = 25.4;

/** Metres in a foot: exact by definition (international foot, 1959). */
const METRES_PER_FOOT = 0.3048;

/** Millimetres in a metre. */
const MILLIMETRES_PER_METRE = 1000;

/**
 * Length or depth of water given in mm.
 *
 * @param value - The number as measured or read. [mm]
 * @returns The same as a quantity. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 */
export function millimetres(value: number): Quantity<'mm'> {
  return finiteQuantity(value, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length or height given in m.
 *
 * @param value - The number as measured or read. [m]
 * @returns The same as a quantity. [m]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 */
export function metres(value: number): Quantity<'m'> {
  return finiteQuantity(value, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length: in to mm.
 *
 * @param inches - The value to convert. [in]
 * @returns The same length. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 * @example millimetresFromInches(1) // 25.4
 */
export function millimetresFromInches(inches: number): Quantity<'mm'> {
  return finiteQuantity(inches * MILLIMETRES_PER_INCH, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length: mm to in.
 *
 * @param millimetres - The value to convert. [mm]
 * @returns The same length. [in]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 */
export function inchesFromMillimetres(millimetres: Quantity<'mm'>): Quantity<'in'> {
  return finiteQuantity(millimetres / MILLIMETRES_PER_INCH, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length: ft to m.
 *
 * @param feet - The value to convert. [ft]
 * @returns The same length. [m]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 * @example metresFromFeet(1) // 0.3048
 */
export function metresFromFeet(feet: number): Quantity<'m'> {
  return finiteQuantity(feet * METRES_PER_FOOT, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length: m to ft.
 *
 * @param metres - The value to convert. [m]
 * @returns The same length. [ft]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source International yard and pound agreement (1959): 1 in = 25.4 mm exactly.
 */
export function feetFromMetres(metres: Quantity<'m'>): Quantity<'ft'> {
  return finiteQuantity(metres / METRES_PER_FOOT, 'LENGTH_OUT_OF_DOMAIN');
}

/**
 * Length: m to mm.
 *
 * @param metres - The value to convert. [m]
 * @returns The same length. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source International System of Units, prefix milli.
 */
export function millimetresFromMetres(metres: Quantity<'m'>): Quantity<'mm'> {
  return finiteQuantity(metres * MILLIMETRES_PER_METRE, 'LENGTH_OUT_OF_DOMAIN');
}
