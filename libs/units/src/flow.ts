import { finiteQuantity, type Quantity } from './quantity.js';

/** Litres in a US liquid gallon: exact, 231 cubic inches. */
const LITRES_PER_GALLON = 3.785411784;

/**
 * Flow given in L/min.
 *
 * @param value - The number as measured or read. [L/min]
 * @returns The same as a quantity. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 */
export function litresPerMinute(value: number): Quantity<'L/min'> {
  return finiteQuantity(value, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: gpm to L/min.
 *
 * @param gallonsPerMinute - The value to convert. [gpm]
 * @returns The same flow. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 * @example litresPerMinuteFromGallonsPerMinute(10) // 37.85411784
 */
export function litresPerMinuteFromGallonsPerMinute(gallonsPerMinute: number): Quantity<'L/min'> {
  return finiteQuantity(gallonsPerMinute * LITRES_PER_GALLON, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: L/min to gpm.
 *
 * @param litresPerMinute - The value to convert. [L/min]
 * @returns The same flow. [gpm]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function gallonsPerMinuteFromLitresPerMinute(litresPerMinute: Quantity<'L/min'>): Quantity<'gpm'> {
  return finiteQuantity(litresPerMinute / LITRES_PER_GALLON, 'FLOW_OUT_OF_DOMAIN');
}
