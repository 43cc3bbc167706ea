import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { DayTemperatures } from '../vapour/vapour-pressure-from-humidity.js';
import { EVAPORATION_PER_RADIATION } from './combination-equation.js';

/**
 * Reference evapotranspiration from temperatures alone, Hargreaves-Samani (FAO-56, Eq. 52).
 *
 * ETo = 0.0023 · (T + 17.8) · √(Tmax - Tmin) · Ra, with Ra in mm/d = 0.408·Ra
 *
 * @param meanTemperature - Mean air temperature. [°C]
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d]
 * @returns Water that the reference grass uses in the day; 0 where the mean is below -17.8 °C. [mm]
 * @throws {DomainError} `TEMPERATURES_CONTRADICT` when the lowest exceeds the highest; `RADIATION_OUT_OF_DOMAIN` when the radiation is below 0.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 52.
 * @example 5.0 for Lyon in July, FAO-56 Example 20
 */
export function hargreavesSamani(
  meanTemperature: Quantity<'°C'>,
  temperatures: DayTemperatures,
  extraterrestrialRadiation: Quantity<'MJ/m2/d'>,
): Quantity<'mm'> {
  const range = temperatures.maximumTemperature - temperatures.minimumTemperature;
  if (range < 0) throw new DomainError('TEMPERATURES_CONTRADICT', { temperatures });
  if (!(extraterrestrialRadiation >= 0)) throw new DomainError('RADIATION_OUT_OF_DOMAIN', { extraterrestrialRadiation });
  const radiation = EVAPORATION_PER_RADIATION * extraterrestrialRadiation;
  return millimetres(0.0023 * Math.max(0, meanTemperature + 17.8) * Math.sqrt(range) * radiation);
}
