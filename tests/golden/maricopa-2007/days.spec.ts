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
import { expectGolden, given } from '../golden-check.js';
import { checks } from './values.js';

/** Two more days of the same source. */
const more: readonly [dayOfYear: number, solar: number, tmax: number, tmin: number, dewPoint: number, wind: number, eto: number][] = [
  [105, 28.62, 24.5, 11.2, -4.6, 4.2, 7.42],
  [288, 20.78, 31.5, 8.9, 2.3, 1.2, 4.02],
];

/** What a day of the source has, as there. */
interface Day {
  readonly dayOfYear: number;
  readonly solar: number;
  readonly tmax: number;
  readonly tmin: number;
  readonly dewPoint: number;
  readonly wind: number;
}

function etoOf({ dayOfYear, solar, tmax, tmin, dewPoint, wind }: Day): number {
  const day = {
    dayOfYear,
    maximumTemperature: celsius(tmax),
    minimumTemperature: celsius(tmin),
    vapourPressure: vapourPressureFromDewPoint(celsius(dewPoint)),
    windSpeedAt2M: windSpeedAt2M(metresPerSecond(wind), metres(3)),
    solarRadiation: megajoulesPerSquareMetreDay(solar),
  };
  return shortReferenceEvapotranspiration(fao56Terms(day, { latitude: degrees(33.069), elevation: metres(361) }));
}

describe('FAO-56 Penman-Monteith at Maricopa in 2007', () => {
  it.each(Object.entries(checks))('%s', (_, check) => {
    const [dayOfYear, solar, wind] = [given(check, 'day_of_year'), given(check, 'Rs'), given(check, 'uz')];
    const [tmax, tmin, dewPoint] = [given(check, 'Tmax'), given(check, 'Tmin'), given(check, 'Tdew')];
    expectGolden(check, { ETo_FAO56: etoOf({ dayOfYear, solar, tmax, tmin, dewPoint, wind }) });
  });

  it.each(more)('day %d', (...row) => {
    const [dayOfYear, solar, tmax, tmin, dewPoint, wind, eto] = row;
    expectWithin(etoOf({ dayOfYear, solar, tmax, tmin, dewPoint, wind }), eto, 0.02);
  });
});
