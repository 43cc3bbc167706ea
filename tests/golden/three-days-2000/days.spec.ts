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
import { expectGolden, given } from '../golden-check.js';
import { checks } from './values.js';

describe('FAO-56 Penman-Monteith and Hargreaves-Samani, January 2000 in the south', () => {
  it.each(Object.entries(checks))('%s', (_, check) => {
    const dayOfYear = given(check, 'day_of_year');
    const site = { latitude: degrees(given(check, 'latitude')), elevation: metres(given(check, 'elevation')) };
    const [maximumTemperature, minimumTemperature] = [celsius(given(check, 'Tmax')), celsius(given(check, 'Tmin'))];
    const day = {
      dayOfYear,
      maximumTemperature,
      minimumTemperature,
      vapourPressure: kilopascals(given(check, 'ea')),
      windSpeedAt2M: metresPerSecond(given(check, 'u2')),
      solarRadiation: megajoulesPerSquareMetreDay(given(check, 'Rs')),
    };
    const mean = meanTemperature(maximumTemperature, minimumTemperature);
    expectGolden(check, {
      ETo_FAO: shortReferenceEvapotranspiration(fao56Terms(day, site)),
      ETo_Hargreaves: hargreavesSamani(mean, day, extraterrestrialRadiation(site.latitude, dayOfYear)),
    });
  });
});
