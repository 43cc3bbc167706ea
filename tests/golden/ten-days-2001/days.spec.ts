import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { vapourPressureFromHumidityExtremes } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { degreesFromRadians, radians } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectGolden, given, givenRow } from '../golden-check.js';
import { checks } from './values.js';

const check = checks['et-100'];
const dayBefore = dayOfYear('2001-03-01') - 1;

function etoOf(nth: number): number {
  const value = (name: string) => givenRow(check, name)[nth]!;
  const temperatures = { maximumTemperature: celsius(value('Tmax')), minimumTemperature: celsius(value('Tmin')) };
  const day = {
    dayOfYear: dayBefore + nth + 1,
    ...temperatures,
    vapourPressure: vapourPressureFromHumidityExtremes(temperatures, value('RHmax'), value('RHmin')),
    windSpeedAt2M: windSpeedAt2M(metresPerSecond(value('u10')), metres(10)),
    solarRadiation: megajoulesPerSquareMetreDay(value('Rs')),
  };
  const site = { latitude: degreesFromRadians(radians(given(check, 'latitude'))), elevation: metres(given(check, 'elevation')) };
  return shortReferenceEvapotranspiration(fao56Terms(day, site));
}

describe('FAO-56 Penman-Monteith, ten days of March 2001 in the south', () => {
  it('et-100', () => expectGolden(check, { ETo: givenRow(check, 'Tmax').map((_, nth) => etoOf(nth)) }));
});
