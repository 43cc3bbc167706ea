import { finiteQuantity, type Quantity } from './quantity.js';

/** Square metres in a square foot: exact, from 1 ft = 0.3048 m. */
const SQUARE_METRES_PER_SQUARE_FOOT = 0.3048 * 0.3048;

/** Square metres in a square inch: exact, from 1 in = 0.0254 m. */
const SQUARE_METRES_PER_SQUARE_INCH = 0.0254 * 0.0254;

/**
 * Area given in m2.
 *
 * @param value - The number as measured or read. [m2]
 * @returns The same as a quantity. [m2]
 * @throws {DomainError} `AREA_OUT_OF_DOMAIN` when not finite.
 */
export function squareMetres(value: number): Quantity<'m2'> {
  return finiteQuantity(value, 'AREA_OUT_OF_DOMAIN');
}

/**
 * Area: ft2 to m2.
 *
 * @param squareFeet - The value to convert. [ft2]
 * @returns The same area. [m2]
 * @throws {DomainError} `AREA_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 * @example squareMetresFromSquareFeet(1000) // 92.90304
 */
export function squareMetresFromSquareFeet(squareFeet: number): Quantity<'m2'> {
  return finiteQuantity(squareFeet * SQUARE_METRES_PER_SQUARE_FOOT, 'AREA_OUT_OF_DOMAIN');
}

/**
 * Area: m2 to ft2.
 *
 * @param squareMetres - The value to convert. [m2]
 * @returns The same area. [ft2]
 * @throws {DomainError} `AREA_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function squareFeetFromSquareMetres(squareMetres: Quantity<'m2'>): Quantity<'ft2'> {
  return finiteQuantity(squareMetres / SQUARE_METRES_PER_SQUARE_FOOT, 'AREA_OUT_OF_DOMAIN');
}

/**
 * Area, as that of a catch can's mouth: in2 to m2.
 *
 * @param squareInches - The value to convert. [in2]
 * @returns The same area. [m2]
 * @throws {DomainError} `AREA_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function squareMetresFromSquareInches(squareInches: number): Quantity<'m2'> {
  return finiteQuantity(squareInches * SQUARE_METRES_PER_SQUARE_INCH, 'AREA_OUT_OF_DOMAIN');
}

/**
 * Area, as that of a catch can's mouth: m2 to in2.
 *
 * @param squareMetres - The value to convert. [m2]
 * @returns The same area. [in2]
 * @throws {DomainError} `AREA_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function squareInchesFromSquareMetres(squareMetres: Quantity<'m2'>): Quantity<'in2'> {
  return finiteQuantity(squareMetres / SQUARE_METRES_PER_SQUARE_INCH, 'AREA_OUT_OF_DOMAIN');
}
