import { finiteQuantity, type Quantity } from './quantity.js';

/** Megajoules per square metre in a langley (1 cal/cm², International Table calorie of 4.1868 J). */
const MEGAJOULES_PER_SQUARE_METRE_PER_LANGLEY = 0.041868;

/**
 * Daily radiation given in MJ/m2/d.
 *
 * @param value - The number as measured or read. [MJ/m2/d]
 * @returns The same as a quantity. [MJ/m2/d]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 */
export function megajoulesPerSquareMetreDay(value: number): Quantity<'MJ/m2/d'> {
  return finiteQuantity(value, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Daily radiation: ly/d to MJ/m2/d.
 *
 * @param langleys - The value to convert. [ly/d]
 * @returns The same daily radiation. [MJ/m2/d]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 * @source International Table calorie, 4.1868 J exactly.
 * @example megajoulesPerSquareMetreDayFromLangleys(500) // 20.934
 */
export function megajoulesPerSquareMetreDayFromLangleys(langleys: number): Quantity<'MJ/m2/d'> {
  return finiteQuantity(langleys * MEGAJOULES_PER_SQUARE_METRE_PER_LANGLEY, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Daily radiation: MJ/m2/d to ly/d.
 *
 * @param radiation - The value to convert. [MJ/m2/d]
 * @returns The same daily radiation. [ly/d]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 * @source International Table calorie, 4.1868 J exactly.
 */
export function langleysFromMegajoulesPerSquareMetreDay(radiation: Quantity<'MJ/m2/d'>): Quantity<'ly/d'> {
  return finiteQuantity(radiation / MEGAJOULES_PER_SQUARE_METRE_PER_LANGLEY, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Hourly radiation given in MJ/m2/h.
 *
 * @param value - The number as measured or read. [MJ/m2/h]
 * @returns The same as a quantity. [MJ/m2/h]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 */
export function megajoulesPerSquareMetreHour(value: number): Quantity<'MJ/m2/h'> {
  return finiteQuantity(value, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Hourly radiation: ly/h to MJ/m2/h.
 *
 * @param langleys - The value to convert. [ly/h]
 * @returns The same hourly radiation. [MJ/m2/h]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 * @source International Table calorie, 4.1868 J exactly.
 * @example megajoulesPerSquareMetreHourFromLangleys(61.16) // 2.56064688
 */
export function megajoulesPerSquareMetreHourFromLangleys(langleys: number): Quantity<'MJ/m2/h'> {
  return finiteQuantity(langleys * MEGAJOULES_PER_SQUARE_METRE_PER_LANGLEY, 'RADIATION_OUT_OF_DOMAIN');
}

/**
 * Hourly radiation: MJ/m2/h to ly/h.
 *
 * @param radiation - The value to convert. [MJ/m2/h]
 * @returns The same hourly radiation. [ly/h]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when not finite.
 * @source International Table calorie, 4.1868 J exactly.
 */
export function langleysFromMegajoulesPerSquareMetreHour(radiation: Quantity<'MJ/m2/h'>): Quantity<'ly/h'> {
  return finiteQuantity(radiation / MEGAJOULES_PER_SQUARE_METRE_PER_LANGLEY, 'RADIATION_OUT_OF_DOMAIN');
}
