import { finiteQuantity, type Quantity } from './quantity.js';

/** Kilopascals in a pound-force per square inch (NIST SP 811, B.8: 6.894 757 kPa). */
const KILOPASCALS_PER_PSI = 6.894757;

/**
 * Pressure given in kPa.
 *
 * @param value - The number as measured or read. [kPa]
 * @returns The same as a quantity. [kPa]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` when not finite.
 */
export function kilopascals(value: number): Quantity<'kPa'> {
  return finiteQuantity(value, 'PRESSURE_OUT_OF_DOMAIN');
}

/**
 * Pressure: psi to kPa.
 *
 * @param psi - The value to convert. [psi]
 * @returns The same pressure. [kPa]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 * @example kilopascalsFromPsi(1) // 6.894757
 */
export function kilopascalsFromPsi(psi: number): Quantity<'kPa'> {
  return finiteQuantity(psi * KILOPASCALS_PER_PSI, 'PRESSURE_OUT_OF_DOMAIN');
}

/**
 * Pressure: kPa to psi.
 *
 * @param kilopascals - The value to convert. [kPa]
 * @returns The same pressure. [psi]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function psiFromKilopascals(kilopascals: Quantity<'kPa'>): Quantity<'psi'> {
  return finiteQuantity(kilopascals / KILOPASCALS_PER_PSI, 'PRESSURE_OUT_OF_DOMAIN');
}
