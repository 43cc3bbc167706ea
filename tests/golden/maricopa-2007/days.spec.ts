import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Source: kthorp/pyfao56 at 1d242ee, tests/test02 (Maricopa, Arizona, Ref-ET's FAO-56 Penman-Monteith column).
const days: readonly [dayOfYear: number, solar: number, tmax: number, tmin: number, dewPoint: number, wind: number, eto: number][] = [
  [15, 15.53, 12.3, -8.1, -14, 1.9, 2.18],
  [46, 18.84, 19.1, 0.3, -0.2, 1.2, 2.49],
  [105, 28.62, 24.5, 11.2, -4.6, 4.2, 7.42],
  [166, 28.35, 43.1, 22.7, 1, 2.4, 9.27],
  [196, 21.69, 41.8, 29.2, 12.8, 2.1, 7.66],
  [288, 20.78, 31.5, 8.9, 2.3, 1.2, 4.02],
  [349, 12.79, 13.9, -0.8, -1, 1.2, 1.34],
];

describe('FAO-56 Penman-Monteith at Maricopa in 2007', () => {
  it.each(days)('day %d', (...row) => {
    const [dayOfYear, solar, tmax, tmin, dewPoint, wind, eto] = row;
    const day = {
      dayOfYear,
      maximumTemperature: celsius(tmax),
      minimumTemperature: celsius(tmin),
      vapourPressure: vapourPressureFromDewPoint(celsius(dewPoint)),
      windSpeedAt2M: windSpeedAt2M(metresPerSecond(wind), metres(3)),
      solarRadiation: megajoulesPerSquareMetreDay(solar),
    };
    const site = { latitude: degrees(33.069), elevation: metres(361) };
    expectWithin(shortReferenceEvapotranspiration(fao56Terms(day, site)), eto, 0.02);
  });
});
