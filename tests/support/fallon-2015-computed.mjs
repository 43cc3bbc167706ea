// Reference ET of the days and hours of Fallon, Nevada, 2015, by the library, from the measured values in its units.
import { alfalfaReferenceEvapotranspiration } from '../../libs/agronomy/dist/evapotranspiration/alfalfa-reference-evapotranspiration.js';
import { hourlyClearSkyRadiation } from '../../libs/agronomy/dist/evapotranspiration/hourly/hourly-clear-sky-radiation.js';
import { hourlyReferenceEvapotranspirationSeries } from '../../libs/agronomy/dist/evapotranspiration/hourly/hourly-reference-evapotranspiration-series.js';
import { sunOfHour } from '../../libs/agronomy/dist/evapotranspiration/hourly/sun-of-hour.js';
import { hourlyTerms } from '../../libs/agronomy/dist/evapotranspiration/methods/hourly-terms.js';
import { cloudinessFactor } from '../../libs/agronomy/dist/evapotranspiration/radiation/cloudiness-factor.js';
import { referenceEvapotranspiration } from '../../libs/agronomy/dist/evapotranspiration/reference-evapotranspiration.js';
import { referenceEvapotranspirationSeries } from '../../libs/agronomy/dist/evapotranspiration/series/reference-evapotranspiration-series.js';
import { sineOfSunAngle } from '../../libs/agronomy/dist/evapotranspiration/sun/sine-of-sun-angle.js';
import { solarDeclination } from '../../libs/agronomy/dist/evapotranspiration/sun/solar-declination.js';
import { solarHourAngle } from '../../libs/agronomy/dist/evapotranspiration/sun/solar-hour-angle.js';
import { vapourPressureFromDewPoint } from '../../libs/agronomy/dist/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { dayOfYear } from '../../libs/agronomy/dist/weather/day-of-year.js';
import { megajoulesPerSquareMetreDayFromLangleys, megajoulesPerSquareMetreHourFromLangleys } from '../../libs/units/dist/radiation.js';
import { metresPerSecondFromMilesPerHour } from '../../libs/units/dist/speed.js';
import { celsiusFromFahrenheit } from '../../libs/units/dist/temperature.js';
import { fallon } from './fallon-2015.mjs';

const as = (convert, value) => (value === null ? null : convert(value));

const weatherDay = (day) => ({
  dayOfYear: dayOfYear(day.date),
  tmax: as(celsiusFromFahrenheit, day.tmax),
  tmin: as(celsiusFromFahrenheit, day.tmin),
  rhmax: null,
  rhmin: null,
  dewPoint: as(celsiusFromFahrenheit, day.dewPoint),
  wind: as(metresPerSecondFromMilesPerHour, day.wind),
  windHeight: fallon.windHeight,
  solar: as(megajoulesPerSquareMetreDayFromLangleys, day.solar),
  rain: null,
  givenEto: null,
});

/** By date: ETo in one loop over columns, and ETr; and ETo of the day without wind in calm air. [mm] */
export function libraryDays(measured) {
  const days = measured.map(weatherDay);
  const names = Object.keys(days[0]).filter((name) => name !== 'dayOfYear');
  const columns = Object.fromEntries(names.map((name) => [name, Float64Array.from(days, (day) => day[name] ?? Number.NaN)]));
  const { etoMm } = referenceEvapotranspirationSeries({ dayOfYear: Uint16Array.from(days, (day) => day.dayOfYear), ...columns }, fallon);
  const withoutWind = days.find((day) => day.wind === null);
  return {
    loop: new Map(measured.map(({ date }, at) => [date, etoMm[at]])),
    etr: new Map(measured.map(({ date }, at) => [date, alfalfaReferenceEvapotranspiration(days[at], fallon).etrMm])),
    calm: referenceEvapotranspiration({ ...withoutWind, wind: 0 }, fallon).etoMm,
  };
}

const weatherHour = (hour) => ({
  dayOfYear: dayOfYear(hour.date),
  middleHour: hour.label - 0.5,
  temperature: as(celsiusFromFahrenheit, hour.temperature),
  dewPoint: as(celsiusFromFahrenheit, hour.dewPoint),
  humidity: null,
  wind: as(metresPerSecondFromMilesPerHour, hour.wind),
  windHeight: fallon.windHeight,
  solar: as(megajoulesPerSquareMetreHourFromLangleys, hour.solar),
});

/** One answer per measured hour. */
export const libraryHours = (measured) => hourlyReferenceEvapotranspirationSeries(measured.map(weatherHour), fallon);

const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The day as the import makes it of its hours: their extremes, their mean dew point and wind, their sum of the sun. */
const dayOfHours = (hours) => ({
  date: hours[0].date,
  tmax: Math.max(...hours.map(({ temperature }) => temperature)),
  tmin: Math.min(...hours.map(({ temperature }) => temperature)),
  dewPoint: mean(hours.map(({ dewPoint }) => dewPoint)),
  wind: mean(hours.map(({ wind }) => wind)),
  solar: hours.length * mean(hours.map(({ solar }) => solar)),
});

/** Days of which all hours are there: ETo of the day as the import makes it, beside the sum of its hours' ETo. [mm] */
export function libraryDaysOfHours(measured) {
  const hoursOf = measured.reduce((of, hour) => of.set(hour.date, [...(of.get(hour.date) ?? []), hour]), new Map());
  const etoOf = new Map(libraryHours(measured).map(({ etoMm }, at) => [measured[at], etoMm]));
  return [...hoursOf.values()]
    .filter((hours) => hours.length === 24)
    .map((hours) => ({
      date: hours[0].date,
      daily: referenceEvapotranspiration(weatherDay(dayOfHours(hours)), fallon).etoMm,
      hourly: hours.reduce((sum, hour) => sum + etoOf.get(hour), 0),
    }));
}

/** On what an hour's constants hang: sun angle at its start [rad], net radiation by a cloudiness [MJ/m2/h]; and its own cloudiness. */
export function thresholdsOf(measured, cloudiness) {
  const hour = weatherHour(measured);
  const start = solarHourAngle(measured.label - 1, hour.dayOfYear, fallon);
  const complete = {
    airTemperature: hour.temperature,
    vapourPressure: vapourPressureFromDewPoint(hour.dewPoint),
    windSpeedAt2M: hour.wind,
    solarRadiation: hour.solar,
  };
  return {
    sunAngle: Math.asin(sineOfSunAngle(fallon.latitude, solarDeclination(hour.dayOfYear), start)),
    netRadiation: hourlyTerms(complete, fallon.elevation, cloudiness).netRadiation,
    own: cloudinessFactor(hour.solar, hourlyClearSkyRadiation(sunOfHour(hour, fallon), complete.vapourPressure, fallon.elevation)),
  };
}
