import { type HourlyReferenceEvapotranspiration, hourlyReferenceEvapotranspiration } from './hourly-reference-evapotranspiration.js';
import type { ClockedStation, WeatherHour } from './weather-hour.js';

/** How long the cloudiness of a high sun stands in: past a day it tells nothing of tonight. An assumption. [h] */
const CARRIED_HOURS = 24;

/**
 * Reference evapotranspiration of the hours of a station in their order, the cloudiness of a high sun carried into the low sun and the night.
 *
 * @param hours - The hours as measured, one after the other; an hour that was not measured is there with nulls. [any]
 * @param station - Where they were measured, and by which clock. [any]
 * @returns One answer per hour, in the same order. [mm]
 * @throws {DomainError} Codes of the single hour.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, hourly calculation.
 */
export function hourlyReferenceEvapotranspirationSeries(
  hours: readonly WeatherHour[],
  station: ClockedStation,
): readonly HourlyReferenceEvapotranspiration[] {
  let cloudiness: number | null = null;
  let age = 0;
  return hours.map((hour) => {
    age += 1;
    const answer = hourlyReferenceEvapotranspiration(hour, station, age <= CARRIED_HOURS ? cloudiness : null);
    if (answer.etoMm !== null && answer.sunHigh) {
      cloudiness = answer.cloudiness;
      age = 0;
    }
    return answer;
  });
}
