import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { vapourPressureFromHumidityExtremes } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Source: pyet-org/pyet at 2e857fe, tests/test_rpackage.py: ten days from 2001-03-01, wind at 10 m.
const days: readonly [
  dayOfYear: number,
  tmax: number,
  tmin: number,
  rhmax: number,
  rhmin: number,
  solar: number,
  wind: number,
  eto: number,
][] = [
  [60, 28.8, 15.1, 68, 30, 20.44477761, 2.65625, 5.1],
  [61, 27.4, 14.0, 77, 25, 20.34991941, 2.78472222, 5.0],
  [62, 29.0, 16.3, 69, 30, 20.25373437, 2.49305556, 5.0],
  [63, 26.3, 16.2, 70, 34, 20.1562439, 3.73611111, 5.2],
  [64, 32.7, 17.8, 73, 29, 20.05747057, 3.30902778, 5.9],
  [65, 35.7, 26.7, 36, 20, 19.95743816, 4.93402778, 8.8],
  [66, 33.8, 20.6, 51, 18, 19.85617161, 2.90972222, 6.3],
  [67, 33.8, 22.3, 46, 18, 19.75369701, 4.48958333, 7.8],
  [68, 35.6, 22.7, 34, 10, 19.65004162, 3.99305556, 8.0],
  [69, 27.5, 17.1, 67, 30, 19.54523386, 4.31597222, 5.7],
];

describe('FAO-56 Penman-Monteith, ten days of March 2001 in the south', () => {
  it.each(days)('day %d', (...row) => {
    const [dayOfYear, tmax, tmin, rhmax, rhmin, solar, wind, eto] = row;
    const temperatures = { maximumTemperature: celsius(tmax), minimumTemperature: celsius(tmin) };
    const day = {
      dayOfYear,
      ...temperatures,
      vapourPressure: vapourPressureFromHumidityExtremes(temperatures, rhmax, rhmin),
      windSpeedAt2M: windSpeedAt2M(metresPerSecond(wind), metres(10)),
      solarRadiation: megajoulesPerSquareMetreDay(solar),
    };
    const site = { latitude: degrees((-0.6095 * 180) / Math.PI), elevation: metres(48) };
    expectWithin(shortReferenceEvapotranspiration(fao56Terms(day, site)), eto, 0.06);
  });
});
