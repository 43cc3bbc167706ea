import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { meanTemperature } from '@rillbook/agronomy/evapotranspiration/air/mean-temperature.js';
import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { EVAPORATION_PER_RADIATION } from '@rillbook/agronomy/evapotranspiration/methods/combination-equation.js';
import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { meanSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/mean-saturation-vapour-pressure.js';
import { saturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/saturation-vapour-pressure.js';
import { slopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import {
  vapourPressureFromHumidityExtremes,
  vapourPressureFromMaximumHumidity,
  vapourPressureFromMeanHumidity,
} from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { vapourPressureFromPsychrometer } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-psychrometer.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { metresPerSecond, metresPerSecondFromKilometresPerHour } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, type GoldenCheck, type GoldenValue, given } from '../golden-check.js';
import { checks } from './air-and-vapour.values.js';

const temperaturesOf = (check: GoldenCheck) => ({
  maximumTemperature: celsius(given(check, 'Tmax')),
  minimumTemperature: celsius(given(check, 'Tmin')),
});

/** What each example asks for, computed. */
const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Readonly<Record<string, GoldenValue>>>> = {
  'et-001': airAtElevation,
  'et-003': saturationOf,
  'et-004': (check) => ({
    ea: vapourPressureFromPsychrometer(
      celsius(given(check, 'Tdry')),
      celsius(given(check, 'Twet')),
      kilopascals(given(check, 'P')),
      'ventilated',
    ),
  }),
  'et-006': (check) => ({ ea: vapourPressureFromMeanHumidity(temperaturesOf(check), given(check, 'RHmean')) }),
  'et-007': (check) => {
    // The example gives the saturation pressure of the lowest temperature in its place.
    const minimumTemperature = dewPointFromVapourPressure(kilopascals(given(check, 'e0_Tmin')));
    return { ea: vapourPressureFromMaximumHumidity({ maximumTemperature: minimumTemperature, minimumTemperature }, given(check, 'RHmax')) };
  },
  'et-015': (check) => ({ u2: windSpeedAt2M(metresPerSecond(given(check, 'u_z')), metres(given(check, 'z'))) }),
  'et-021': (check) => {
    const saturation = saturationOf(check);
    const { maximumTemperature, minimumTemperature } = temperaturesOf(check);
    const mean = meanTemperature(maximumTemperature, minimumTemperature);
    const slope = slopeOfSaturationVapourPressure(mean);
    return { ...airAtElevation(check), ...saturation, Tmean: mean, slope, vpd: saturation.es - given(check, 'ea') };
  },
  'et-025': (check) => {
    const wind = metresPerSecondFromKilometresPerHour(given(check, 'u10'));
    const ea = vapourPressureFromHumidityExtremes(temperaturesOf(check), given(check, 'RHmax'), given(check, 'RHmin'));
    return { ...saturationOf(check), u10_ms: wind, u2: windSpeedAt2M(wind, metres(10)), ea };
  },
  'et-034': (check) => ({ slope: slopeOfSaturationVapourPressure(celsius(given(check, 'T'))) }),
};

function airAtElevation(check: GoldenCheck) {
  const pressure = atmosphericPressure(metres(given(check, 'elevation')));
  return { P: pressure, gamma: psychrometricConstant(pressure) };
}

function saturationOf(check: GoldenCheck) {
  const { maximumTemperature, minimumTemperature } = temperaturesOf(check);
  return {
    e0_Tmax: saturationVapourPressure(maximumTemperature),
    e0_Tmin: saturationVapourPressure(minimumTemperature),
    es: meanSaturationVapourPressure(maximumTemperature, minimumTemperature),
  };
}

describe('FAO-56 chapter 3: air and vapour', () => {
  it.each(Object.entries(checks))('%s', (id, check) => {
    expectGolden(check, computed[id as keyof typeof checks](check));
  });

  it('Example 1: 80 % of 15 MJ/m2/d evaporates 4.9 mm/d (from memory)', () => {
    expectWithin(EVAPORATION_PER_RADIATION * 0.8 * 15, 4.9, 0.05);
  });

  it('Example 4: at 1200 m P is 87.9 kPa, and e0 of the wet bulb 2.267 kPa', () => {
    expectWithin(atmosphericPressure(metres(1200)), 87.9, 0.05);
    expectWithin(saturationVapourPressure(celsius(19.5)), 2.267, 0.0005);
  });

  it('Example 5: ea 1.70 kPa from both humidities, Eq. 17', () => {
    const temperatures = { maximumTemperature: celsius(25), minimumTemperature: celsius(18) };
    expectWithin(vapourPressureFromHumidityExtremes(temperatures, 82, 54), 1.7, 0.005);
  });

  it('Annex 2, Table 2.4: slope 0.145 kPa/°C at 20 °C', () => {
    expectWithin(slopeOfSaturationVapourPressure(celsius(20)), 0.145, 0.0005);
  });
});
