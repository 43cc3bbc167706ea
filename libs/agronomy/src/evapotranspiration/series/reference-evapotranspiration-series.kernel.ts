import { PLAUSIBLE_RANGES } from '../../weather/plausible-weather-day.js';
import { EVAPORATION_PER_RADIATION } from '../methods/combination-equation.js';
import { LOWEST_RATIO, RATIO_WITHOUT_SUN } from '../radiation/cloudiness-factor.js';
import type { SunOfLatitude } from './sun-of-latitude.js';
import { tabulatedExponential, twoFifthsPower } from './tabulated-powers.js';

/** Days of a station as columns of one length; what was not measured is NaN, never zero. */
export type WeatherDaySeries = {
  /** Day of the year, 1 for 1 January. [–], one per day */
  readonly dayOfYear: Uint16Array;
  /** Highest air temperature. [°C], one per day */
  readonly tmax: Float64Array;
  /** Lowest air temperature. [°C], one per day */
  readonly tmin: Float64Array;
  /** Highest relative humidity. [%], one per day */
  readonly rhmax: Float64Array;
  /** Lowest relative humidity. [%], one per day */
  readonly rhmin: Float64Array;
  /** Mean dew point. [°C], one per day */
  readonly dewPoint: Float64Array;
  /** Mean wind speed at `windHeight`. [m/s], one per day */
  readonly wind: Float64Array;
  /** Height of the anemometer above the ground. [m], one per day */
  readonly windHeight: Float64Array;
  /** Solar radiation. [MJ/m2/d], one per day */
  readonly solar: Float64Array;
  /** Reference evapotranspiration as the source itself states it. [mm], one per day */
  readonly givenEto: Float64Array;
};

const [COLDEST_HIGH, HOTTEST_HIGH] = PLAUSIBLE_RANGES.tmax;
const [COLDEST_LOW, HOTTEST_LOW] = PLAUSIBLE_RANGES.tmin;
const [LEAST_RHMAX, MOST_RHMAX] = PLAUSIBLE_RANGES.rhmax;
const [LEAST_RHMIN, MOST_RHMIN] = PLAUSIBLE_RANGES.rhmin;
const [LOWEST_DEW, HIGHEST_DEW] = PLAUSIBLE_RANGES.dewPoint;
const [CALMEST, STORMIEST] = PLAUSIBLE_RANGES.wind;
const [LOWEST_HEIGHT, HIGHEST_HEIGHT] = PLAUSIBLE_RANGES.windHeight;
const [DARKEST, BRIGHTEST] = PLAUSIBLE_RANGES.solar;

/**
 * Inner loop of the reference evapotranspiration of complete days: the chain of `standardizedTerms` and `shortReferenceEvapotranspiration`
 * in one piece, without an object a day. A test holds both together.
 *
 * A day is complete with both temperatures, dew point or both humidities, wind with its height, and solar radiation, all plausible. Of any
 * other day NaN is written: it is for the procedures for missing data.
 *
 * @param days - The days as columns. [any]
 * @param sunTable - The sun over the station's latitude. [any]
 * @param pressure - Atmospheric pressure at the station. [kPa]
 * @param eto - Written to: reference evapotranspiration, at least 0. [mm], one per day
 * @returns How many days were complete. [–]
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 to 33 with Appendix D.
 */
export function runReferenceEvapotranspiration(
  days: WeatherDaySeries,
  sunTable: SunOfLatitude,
  pressure: number,
  eto: Float64Array,
): number {
  const { dayOfYear, tmax, tmin, rhmax, rhmin, dewPoint, wind, windHeight, solar } = days;
  const { extraterrestrialRadiation, inverseSine, inverseSinePower } = sunTable;
  const gamma = 0.665e-3 * pressure;
  let complete = 0;
  let height = Number.NaN;
  let windFactor = Number.NaN;
  for (let day = 0; day < eto.length; day += 1) {
    const high = tmax[day] as number;
    const low = tmin[day] as number;
    const speed = wind[day] as number;
    const light = solar[day] as number;
    eto[day] = Number.NaN;
    // Each is written so that NaN, which is not measured, ends the day.
    if (!(high >= COLDEST_HIGH && high <= HOTTEST_HIGH && low >= COLDEST_LOW && low <= HOTTEST_LOW && low <= high)) continue;
    if (!(speed >= CALMEST && speed <= STORMIEST && light >= DARKEST && light <= BRIGHTEST)) continue;
    if (windHeight[day] !== height) {
      height = windHeight[day] as number;
      windFactor = windFactorAt(height);
    }
    const saturatedHigh = 0.6108 * tabulatedExponential((17.27 * high) / (high + 237.3));
    const saturatedLow = 0.6108 * tabulatedExponential((17.27 * low) / (low + 237.3));
    const dew = dewPoint[day] as number;
    let vapour = Number.NaN;
    if (dew >= LOWEST_DEW && dew <= HIGHEST_DEW && dew <= high) {
      vapour = 0.6108 * tabulatedExponential((17.27 * dew) / (dew + 237.3));
    } else if (dew !== dew) {
      const moist = rhmax[day] as number;
      const dry = rhmin[day] as number;
      vapour = areHumidities(moist, dry)
        ? ((saturatedLow * (moist > 100 ? 100 : moist)) / 100 + (saturatedHigh * (dry > 100 ? 100 : dry)) / 100) / 2
        : Number.NaN;
    }
    const nth = dayOfYear[day] as number;
    const water = twoFifthsPower(0.14 * vapour * pressure + 2.1) * (inverseSinePower[nth] as number);
    const direct = 0.98 * tabulatedExponential(-0.00146 * pressure * (inverseSine[nth] as number) - 0.075 * water);
    const diffuse = direct >= 0.15 ? 0.35 - 0.36 * direct : 0.18 + 0.82 * direct;
    const clear = (direct + diffuse) * (extraterrestrialRadiation[nth] as number);
    // Only in polar night is there no light; a day of the year that is none has NaN here, and keeps it.
    const ratio = clear === 0 ? RATIO_WITHOUT_SUN : light / clear;
    const cloudiness = 1.35 * (ratio > 1 ? 1 : ratio < LOWEST_RATIO ? LOWEST_RATIO : ratio) - 0.35;
    const highSquared = (high + 273.16) * (high + 273.16);
    const lowSquared = (low + 273.16) * (low + 273.16);
    const emitted = ((highSquared * highSquared + lowSquared * lowSquared) / 2) * (0.34 - 0.14 * Math.sqrt(vapour));
    const netRadiation = 0.77 * light - 4.901e-9 * emitted * cloudiness;
    const mean = (high + low) / 2;
    const inverse = 1 / (mean + 237.3);
    const slope = 2503 * tabulatedExponential(17.27 * mean * inverse) * (inverse * inverse);
    const windAt2M = speed * windFactor;
    const dryness = (saturatedHigh + saturatedLow) / 2 - vapour;
    const aerodynamic = ((gamma * 900) / (mean + 273)) * windAt2M * dryness;
    const value = (EVAPORATION_PER_RADIATION * slope * netRadiation + aerodynamic) / (slope + gamma * (1 + 0.34 * windAt2M));
    // What is not a number stays so: it lacked a value that was asked for above.
    if (value === value) complete += 1;
    eto[day] = value < 0 ? 0 : value;
  }
  return complete;
}

function windFactorAt(height: number): number {
  return height >= LOWEST_HEIGHT && height <= HIGHEST_HEIGHT ? 4.87 / Math.log(67.8 * height - 5.42) : Number.NaN;
}

function areHumidities(moist: number, dry: number): boolean {
  return moist >= LEAST_RHMAX && moist <= MOST_RHMAX && dry >= LEAST_RHMIN && dry <= MOST_RHMIN && dry <= moist;
}
