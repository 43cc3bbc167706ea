import type { Quantity } from '@rillbook/units/quantity.js';
import { extraterrestrialRadiation } from '../sun/extraterrestrial-radiation.js';
import { sineOfMeanSunAngle } from '../sun/sine-of-mean-sun-angle.js';

/** The sun over one latitude by the day of the year, at the index of the day; the entry 0 is none. */
export type SunOfLatitude = {
  /** Extraterrestrial radiation, Ra. [MJ/m2/d] */
  readonly extraterrestrialRadiation: Float64Array;
  /** Inverse of the sine of the day's mean sun angle, 1/sin β24. [–] */
  readonly inverseSine: Float64Array;
  /** The same to the power 0.4. [–] */
  readonly inverseSinePower: Float64Array;
};

/** Days of a leap year. */
const DAYS = 366;

/**
 * The sun over a latitude, tabulated once for all days of the year and for every year of a series.
 *
 * @param latitude - Latitude, north positive. [°]
 * @returns Extraterrestrial radiation and sun angle of the days. [MJ/m2/d], one per day of the year
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN` when not within -90 … 90 °.
 * @source As `extraterrestrialRadiation` and `sineOfMeanSunAngle`.
 */
export function sunOfLatitude(latitude: Quantity<'°'>): SunOfLatitude {
  const sun = {
    extraterrestrialRadiation: new Float64Array(DAYS + 1).fill(Number.NaN),
    inverseSine: new Float64Array(DAYS + 1).fill(Number.NaN),
    inverseSinePower: new Float64Array(DAYS + 1).fill(Number.NaN),
  };
  for (let dayOfYear = 1; dayOfYear <= DAYS; dayOfYear += 1) {
    const sine = sineOfMeanSunAngle(latitude, dayOfYear);
    sun.extraterrestrialRadiation[dayOfYear] = extraterrestrialRadiation(latitude, dayOfYear);
    sun.inverseSine[dayOfYear] = 1 / sine;
    sun.inverseSinePower[dayOfYear] = sine ** -0.4;
  }
  return sun;
}
