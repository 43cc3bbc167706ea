import { meanTemperature } from '@rillbook/agronomy/evapotranspiration/air/mean-temperature.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { hargreavesSamani } from '@rillbook/agronomy/evapotranspiration/methods/hargreaves-samani.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Source: open library ETo at cea08e7, eto/tests/example_daily*.csv (New Zealand, no wind measured: 2 m/s).
const days: readonly [dayOfYear: number, solar: number, tmax: number, tmin: number, ea: number, eto: number, hargreaves: number][] = [
  [1, 13.4, 17.7, 13.7, 1.6, 2.31, 2.79],
  [3, 12.2, 21.7, 9.2, 1.09, 3.2, 4.89],
  [5, 14.1, 11.7, 8.9, 1.12, 2.0, 1.95],
];

describe('FAO-56 Penman-Monteith and Hargreaves-Samani, January 2000 in the south', () => {
  it.each(days)('day %d', (...row) => {
    const [dayOfYear, solar, tmax, tmin, ea, eto, hargreaves] = row;
    const site = { latitude: degrees(-43.6), elevation: metres(500) };
    const temperatures = { maximumTemperature: celsius(tmax), minimumTemperature: celsius(tmin) };
    const measured = {
      vapourPressure: kilopascals(ea),
      windSpeedAt2M: metresPerSecond(2),
      solarRadiation: megajoulesPerSquareMetreDay(solar),
    };
    expectWithin(shortReferenceEvapotranspiration(fao56Terms({ dayOfYear, ...temperatures, ...measured }, site)), eto, 0.02);
    const mean = meanTemperature(temperatures.maximumTemperature, temperatures.minimumTemperature);
    expectWithin(hargreavesSamani(mean, temperatures, extraterrestrialRadiation(site.latitude, dayOfYear)), hargreaves, 0.02);
  });
});
