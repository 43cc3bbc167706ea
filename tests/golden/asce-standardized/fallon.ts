import type { ClockedStation, WeatherHour } from '@rillbook/agronomy/evapotranspiration/hourly/weather-hour.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDayFromLangleys, megajoulesPerSquareMetreHourFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';

/** Values as the station's files have them: °F, mph at 3 m and langley. */
export interface Measured {
  readonly dewPoint: number;
  readonly wind: number;
  readonly solar: number;
}

/** Fallon, Nevada, with a clock on Pacific Standard Time. */
export const fallon: ClockedStation = {
  latitude: degrees(39.4575),
  longitude: degrees(-118.77388),
  zoneLongitude: degrees(-120),
  elevation: metres(1208.5),
};

/** A day of its daily file. */
export function fallonDay(dayOfYear: number, measured: Measured & { readonly tmax: number; readonly tmin: number }): WeatherDay {
  return {
    dayOfYear,
    tmax: celsiusFromFahrenheit(measured.tmax),
    tmin: celsiusFromFahrenheit(measured.tmin),
    rhmax: null,
    rhmin: null,
    dewPoint: celsiusFromFahrenheit(measured.dewPoint),
    wind: metresPerSecondFromMilesPerHour(measured.wind),
    windHeight: metres(3),
    solar: megajoulesPerSquareMetreDayFromLangleys(measured.solar),
    rain: null,
    givenEto: null,
  };
}

/** An hour of its hourly file, by the middle of the hour. */
export function fallonHour(dayOfYear: number, middleHour: number, measured: Measured & { readonly temperature: number }): WeatherHour {
  return {
    dayOfYear,
    middleHour,
    temperature: celsiusFromFahrenheit(measured.temperature),
    dewPoint: celsiusFromFahrenheit(measured.dewPoint),
    humidity: null,
    wind: metresPerSecondFromMilesPerHour(measured.wind),
    windHeight: metres(3),
    solar: megajoulesPerSquareMetreHourFromLangleys(measured.solar),
  };
}
