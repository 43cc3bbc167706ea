import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { tallReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { standardizedTerms } from '@rillbook/agronomy/evapotranspiration/methods/standardized-terms.js';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Fallon, Nevada, 2015 (USBR AgriMet): measured values in °F, langley and mph at 3 m; ETo and ETr in mm/d as published by Ref-ET 4.1
// (University of Idaho), in the test data of WSWUP/RefET at 2c3e2e0.
const days: readonly [date: string, tmin: number, tmax: number, solar: number, dewPoint: number, wind: number, eto: number, etr: number][] =
  [
    ['2015-01-15', 14.34, 49.13, 224.76, 21.35, 1.62, 0.66, 0.94],
    ['2015-03-20', 27.79, 72.37, 414.98, 14.44, 2.09, 2.91, 3.9],
    ['2015-04-15', 19.03, 54.99, 652.59, 7.67, 4.35, 3.57, 4.7],
    ['2015-06-21', 52.22, 93.8, 721.52, 22.52, 6.78, 8.83, 12.6],
    ['2015-07-15', 56.88, 92.7, 745.95, 42.71, 3.34, 6.75, 8.43],
    ['2015-09-09', 44.64, 92.7, 579.43, 25.23, 1.81, 4.25, 5.45],
    ['2015-10-18', 47.13, 61.66, 184.03, 49.5, 3.34, 1.27, 1.55],
  ];

describe('Fallon 2015 through the whole of referenceEvapotranspiration', () => {
  it.each(days)('%s', (...row) => {
    const [date, tmin, tmax, solar, dewPoint, wind, eto, etr] = row;
    const station = { latitude: degrees(39.4575), elevation: metres(1208.5) };
    const measured = {
      dayOfYear: dayOfYear(date),
      tmax: celsiusFromFahrenheit(tmax),
      tmin: celsiusFromFahrenheit(tmin),
      rhmax: null,
      rhmin: null,
      dewPoint: celsiusFromFahrenheit(dewPoint),
      wind: metresPerSecondFromMilesPerHour(wind),
      windHeight: metres(3),
      solar: megajoulesPerSquareMetreDayFromLangleys(solar),
      rain: null,
      givenEto: null,
    };
    const answer = referenceEvapotranspiration(measured, station);
    expect(answer).toMatchObject({ method: 'penman-monteith', assumed: [], refused: [] });
    expectWithin(answer.etoMm ?? Number.NaN, eto, 0.012);
    const tall = tallReferenceEvapotranspiration(
      standardizedTerms(
        {
          dayOfYear: measured.dayOfYear,
          maximumTemperature: measured.tmax,
          minimumTemperature: measured.tmin,
          vapourPressure: vapourPressureFromDewPoint(measured.dewPoint),
          windSpeedAt2M: windSpeedAt2M(measured.wind, measured.windHeight),
          solarRadiation: measured.solar,
        },
        station,
      ),
    );
    expectWithin(tall, etr, etr > 10 ? 0.06 : 0.03);
  });
});
