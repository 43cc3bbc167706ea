import { finiteQuantity, type Quantity } from './quantity.js';

/** Litres in a US liquid gallon: exact, 231 cubic inches. */
const LITRES_PER_GALLON = 3.785411784;

/** Minutes in an hour. */
const MINUTES_PER_HOUR = 60;

/** Seconds in a minute. */
const SECONDS_PER_MINUTE = 60;

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

/**
 * Flow of an emitter: gph to L/min.
 *
 * @param gallonsPerHour - The value to convert. [gph]
 * @returns The same flow. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function litresPerMinuteFromGallonsPerHour(gallonsPerHour: number): Quantity<'L/min'> {
  return finiteQuantity((gallonsPerHour * LITRES_PER_GALLON) / MINUTES_PER_HOUR, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow of an emitter: L/min to gph.
 *
 * @param litresPerMinute - The value to convert. [L/min]
 * @returns The same flow. [gph]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function gallonsPerHourFromLitresPerMinute(litresPerMinute: Quantity<'L/min'>): Quantity<'gph'> {
  return finiteQuantity((litresPerMinute * MINUTES_PER_HOUR) / LITRES_PER_GALLON, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: L/h to L/min.
 *
 * @param litresPerHour - The value to convert. [L/h]
 * @returns The same flow. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 */
export function litresPerMinuteFromLitresPerHour(litresPerHour: number): Quantity<'L/min'> {
  return finiteQuantity(litresPerHour / MINUTES_PER_HOUR, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: L/min to L/h.
 *
 * @param litresPerMinute - The value to convert. [L/min]
 * @returns The same flow. [L/h]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 */
export function litresPerHourFromLitresPerMinute(litresPerMinute: Quantity<'L/min'>): Quantity<'L/h'> {
  return finiteQuantity(litresPerMinute * MINUTES_PER_HOUR, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: L/s to L/min.
 *
 * @param litresPerSecond - The value to convert. [L/s]
 * @returns The same flow. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 */
export function litresPerMinuteFromLitresPerSecond(litresPerSecond: number): Quantity<'L/min'> {
  return finiteQuantity(litresPerSecond * SECONDS_PER_MINUTE, 'FLOW_OUT_OF_DOMAIN');
}

/**
 * Flow: L/min to L/s.
 *
 * @param litresPerMinute - The value to convert. [L/min]
 * @returns The same flow. [L/s]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when not finite.
 * @example litresPerSecondFromLitresPerMinute(litresPerMinuteFromGallonsPerMinute(1)) // 0.06309
 */
export function litresPerSecondFromLitresPerMinute(litresPerMinute: Quantity<'L/min'>): Quantity<'L/s'> {
  return finiteQuantity(litresPerMinute / SECONDS_PER_MINUTE, 'FLOW_OUT_OF_DOMAIN');
}
