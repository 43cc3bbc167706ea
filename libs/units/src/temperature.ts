import { DomainError } from './domain-error.js';
import { finiteQuantity, type Quantity } from './quantity.js';

/** The lowest temperature there is, and the zero of the kelvin scale, in degrees Celsius. Exact by definition. */
const ABSOLUTE_ZERO_CELSIUS = -273.15;

/**
 * Temperature given in °C.
 *
 * @param value - The number as measured or read. [°C]
 * @returns The same as a quantity. [°C]
 * @throws {DomainError} `TEMPERATURE_OUT_OF_DOMAIN` when not finite or below absolute zero.
 * @domain -273.15 °C and above
 */
export function celsius(value: number): Quantity<'°C'> {
  const temperature = finiteQuantity<'°C'>(value, 'TEMPERATURE_OUT_OF_DOMAIN');
  if (temperature < ABSOLUTE_ZERO_CELSIUS) throw new DomainError('TEMPERATURE_OUT_OF_DOMAIN', { value });
  return temperature;
}

/**
 * Temperature: °F to °C.
 *
 * T = (F - 32) · 5/9
 *
 * @param fahrenheit - The value to convert. [°F]
 * @returns The same temperature. [°C]
 * @throws {DomainError} `TEMPERATURE_OUT_OF_DOMAIN` when not finite or below absolute zero.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 * @example celsiusFromFahrenheit(212) // 100
 */
export function celsiusFromFahrenheit(fahrenheit: number): Quantity<'°C'> {
  return celsius(((fahrenheit - 32) * 5) / 9);
}

/**
 * Temperature: °C to °F.
 *
 * @param celsius - The value to convert. [°C]
 * @returns The same temperature. [°F]
 * @throws {DomainError} `TEMPERATURE_OUT_OF_DOMAIN` when not finite.
 * @source NIST Special Publication 811 (2008), Appendix B.8.
 */
export function fahrenheitFromCelsius(celsius: Quantity<'°C'>): Quantity<'°F'> {
  return finiteQuantity((celsius * 9) / 5 + 32, 'TEMPERATURE_OUT_OF_DOMAIN');
}

/**
 * Temperature: °C to K.
 *
 * @param celsius - The value to convert. [°C]
 * @returns The same temperature, on the thermodynamic scale. [K]
 * @throws {DomainError} `TEMPERATURE_OUT_OF_DOMAIN` when not finite.
 * @source International System of Units: T/K = t/°C + 273.15.
 */
export function kelvinFromCelsius(celsius: Quantity<'°C'>): Quantity<'K'> {
  return finiteQuantity(celsius - ABSOLUTE_ZERO_CELSIUS, 'TEMPERATURE_OUT_OF_DOMAIN');
}
