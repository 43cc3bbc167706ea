import { metres } from '@rillbook/units/length.js';
import { clearSkyRadiation } from '../../evapotranspiration/radiation/clear-sky-radiation.js';
import { extraterrestrialRadiation } from '../../evapotranspiration/sun/extraterrestrial-radiation.js';
import type { WeatherStation } from '../weather-station.js';
import { type CheckedDay, type SuspectValue, surroundings } from './checked-day.js';

/** Above Rso by more than this share is doubted; below it lie the errors of sensors and of Rso itself. FAO-56, Annex 5, names 3 to 5 %, from memory. */
const ABOVE = 1.1;

/** The thickest cloud still lets this share of Rso through. Common practice, no source. */
const OVERCAST = 0.05;

/** Days before and after that make a month of surroundings, of which this many must be known. An assumption. */
const REACH = 15;
const LEAST_DAYS = 20;

/** In a month at least one day comes nearer to Rso than this. Common practice; cloudy winters stay above it. */
const CLEAREST = 0.7;

/** Where nobody stated the elevation, too much is judged as on a high plateau and too little as at the sea. An assumption. [m] */
const HIGH = metres(2500);
const LOW = metres(0);

/** Below this the sun tells nothing of a sensor but that it reads far too much: polar winter. An assumption. [MJ/m2/d] */
const LEAST_SUN = 1;

/** In the dark more than this above Ra is refused; below it lies a sensor's zero. Common practice, no source. [MJ/m2/d] */
const ZERO_ERROR = 1;

/** Shares of the measured radiation in what could be: above the atmosphere, without clouds at most and at least. */
type Shares = { readonly ofAtmosphere: number; readonly ofHighest: number; readonly ofLowest: number };

/**
 * Solar radiation against that of a clear sky: above it, above the atmosphere's, below the thickest cloud's; for a month never near it.
 *
 * Rs > 1.1·Rso; Rs > Ra; Rs < 0.05·Rso; max(Rs/Rso) of 31 days < 0.7; where Ra < 1, only Rs > Ra + 1
 *
 * @param days - The days, oldest first. [any]
 * @param station - Where it was measured. [any]
 * @returns What was found. [code]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source FAO Irrigation and Drainage Paper 56, Annex 5, and ASCE-EWRI (2005), Appendix D, from memory: measured radiation is plotted against
 * Rso, which clear days touch and none exceeds; Rso by FAO-56, Eq. 37. Limits are common practice.
 */
export function clearSky(days: readonly CheckedDay[], station: WeatherStation): readonly SuspectValue[] {
  const shares = days.map((day) => sharesOf(day, station));
  const around = surroundings(days, REACH);
  return shares.flatMap((share, at): SuspectValue[] => {
    if (share === null) return isLightInTheDark(days[at]!, station) ? [{ at, value: 'solar', reason: 'above-atmosphere' }] : [];
    const found = (reason: SuspectValue['reason']): SuspectValue[] => [{ at, value: 'solar', reason }];
    if (share.ofAtmosphere > 1) return found('above-atmosphere');
    if (share.ofHighest > ABOVE) return found('above-clear-sky');
    if (share.ofLowest < OVERCAST) return found('below-overcast');
    // This day is one of its surroundings.
    if (share.ofLowest >= CLEAREST) return [];
    const [first, last] = around[at]!;
    const known = shares.slice(first, last + 1).flatMap((one) => (one === null ? [] : [one.ofLowest]));
    return known.length >= LEAST_DAYS && Math.max(...known) < CLEAREST ? found('never-clear') : [];
  });
}

function isLightInTheDark({ day }: CheckedDay, station: WeatherStation): boolean {
  if (day.solar === null) return false;
  const above = extraterrestrialRadiation(station.latitude, day.dayOfYear);
  return above < LEAST_SUN && day.solar > above + ZERO_ERROR;
}

function sharesOf({ day }: CheckedDay, station: WeatherStation): Shares | null {
  if (day.solar === null) return null;
  const above = extraterrestrialRadiation(station.latitude, day.dayOfYear);
  if (above < LEAST_SUN) return null;
  return {
    ofAtmosphere: day.solar / above,
    ofHighest: day.solar / clearSkyRadiation(station.elevation ?? HIGH, above),
    ofLowest: day.solar / clearSkyRadiation(station.elevation ?? LOW, above),
  };
}
