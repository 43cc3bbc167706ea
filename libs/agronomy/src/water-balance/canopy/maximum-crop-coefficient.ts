import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Weather under which the coefficients of the tables hold: wind of 2 m/s, lowest humidity of 45 % (FAO-56, chapter 6). */
const TABLE_WIND = 2;
const TABLE_HUMIDITY = 45;

/** Range of wind [m/s] and lowest humidity [%] for which the correction was made (FAO-56, Eq. 62 and 72). */
const WIND_RANGE = [1, 6] as const;
const HUMIDITY_RANGE = [20, 80] as const;

/** Height that leaves the correction as it is. [m] */
const REFERENCE_HEIGHT = 3;

const within = (value: number, [low, high]: readonly [number, number]) => Math.min(high, Math.max(low, value));

/**
 * How much wind and dry air raise a crop coefficient, for plants of 3 m (FAO-56, Eq. 62, 70 and 72).
 *
 * 0.04·(u2 - 2) - 0.004·(RHmin - 45), with u2 within 1 … 6 m/s and RHmin within 20 … 80 %
 *
 * @param windSpeedAt2M - Mean wind of the day at 2 m. [m/s]
 * @param minimumHumidity - Lowest relative humidity of the day. [%]
 * @returns What is added to a coefficient at a height of 3 m. [–]
 * @throws {DomainError} `WEATHER_OUT_OF_DOMAIN` when a value is negative or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 62, 70 and 72.
 */
export function climateTerm(windSpeedAt2M: Quantity<'m/s'>, minimumHumidity: number): number {
  if (!(windSpeedAt2M >= 0 && minimumHumidity >= 0 && Number.isFinite(windSpeedAt2M + minimumHumidity))) {
    throw new DomainError('WEATHER_OUT_OF_DOMAIN', { windSpeedAt2M, minimumHumidity });
  }
  return 0.04 * (within(windSpeedAt2M, WIND_RANGE) - TABLE_WIND) - 0.004 * (within(minimumHumidity, HUMIDITY_RANGE) - TABLE_HUMIDITY);
}

/**
 * How much of the climate's term plants of a height take up (FAO-56, Eq. 62, 70 and 72).
 *
 * (h/3)^0.3
 *
 * @param plantHeight - Height of the plants, h. [m]
 * @returns Factor of the climate's term; 1 at 3 m. [–]
 * @throws {DomainError} `PLANT_HEIGHT_OUT_OF_DOMAIN` when negative or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 62, 70 and 72.
 */
export function heightFactor(plantHeight: Quantity<'m'>): number {
  if (!(plantHeight >= 0 && Number.isFinite(plantHeight))) throw new DomainError('PLANT_HEIGHT_OUT_OF_DOMAIN', { plantHeight });
  return (plantHeight / REFERENCE_HEIGHT) ** 0.3;
}

/**
 * Highest crop coefficient that the air allows when plants or soil are wet, Kcmax (FAO-56, Eq. 72).
 *
 * Kcmax = max(1.2 + [0.04·(u2 - 2) - 0.004·(RHmin - 45)]·(h/3)^0.3, Kcb + 0.05)
 *
 * @param climateTerm - What wind and dry air add at 3 m. [–]
 * @param heightFactor - How much of it these plants take up. [–]
 * @param basalCoefficient - Basal crop coefficient, Kcb. [–]
 * @returns Upper limit of evapotranspiration over reference evapotranspiration. [–]
 * @throws {DomainError} `CROP_COEFFICIENT_OUT_OF_DOMAIN` when a value is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 72.
 * @example maximumCropCoefficient(climateTerm(2.16, 20), heightFactor(0.05), 0.15) // 1.23
 */
export function maximumCropCoefficient(climateTerm: number, heightFactor: number, basalCoefficient: number): number {
  if (!Number.isFinite(climateTerm + heightFactor + basalCoefficient)) {
    throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { climateTerm, heightFactor, basalCoefficient });
  }
  return Math.max(1.2 + climateTerm * heightFactor, basalCoefficient + 0.05);
}
