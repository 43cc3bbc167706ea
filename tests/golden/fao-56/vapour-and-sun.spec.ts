import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { EVAPORATION_PER_RADIATION } from '@rillbook/agronomy/evapotranspiration/methods/combination-equation.js';
import { daylightHours } from '@rillbook/agronomy/evapotranspiration/sun/daylight-hours.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { inverseRelativeDistance } from '@rillbook/agronomy/evapotranspiration/sun/inverse-relative-distance.js';
import { solarDeclination } from '@rillbook/agronomy/evapotranspiration/sun/solar-declination.js';
import { sunsetHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/sunset-hour-angle.js';
import { meanSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/mean-saturation-vapour-pressure.js';
import { saturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/saturation-vapour-pressure.js';
import { slopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import {
  vapourPressureFromHumidityExtremes,
  vapourPressureFromMaximumHumidity,
  vapourPressureFromMeanHumidity,
} from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { vapourPressureFromPsychrometer } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-psychrometer.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { degrees, radiansFromDegrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Every number: Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 3, example named in the title.

describe('FAO-56 chapter 3: air and vapour', () => {
  it('Example 1: 80 % of 15 MJ/m2/d evaporates 4.9 mm/d (from memory)', () => {
    expectWithin(EVAPORATION_PER_RADIATION * 0.8 * 15, 4.9, 0.05);
  });

  it('Example 2: at 1800 m P is 81.8 kPa and the psychrometric constant 0.054', () => {
    const pressure = atmosphericPressure(metres(1800));
    expectWithin(pressure, 81.8, 0.05);
    expectWithin(psychrometricConstant(pressure), 0.054, 0.0005);
  });

  it('Example 3: saturation vapour pressure at 24.5 and 15.0 °C', () => {
    expectWithin(saturationVapourPressure(celsius(24.5)), 3.075, 0.0005);
    expectWithin(saturationVapourPressure(celsius(15)), 1.705, 0.0005);
    expectWithin(meanSaturationVapourPressure(celsius(24.5), celsius(15)), 2.39, 0.005);
  });

  it('Example 4: psychrometer at 1200 m, P 87.9 kPa, ea 1.91 kPa', () => {
    const pressure = atmosphericPressure(metres(1200));
    expectWithin(pressure, 87.9, 0.05);
    expectWithin(saturationVapourPressure(celsius(19.5)), 2.267, 0.0005);
    expectWithin(vapourPressureFromPsychrometer(celsius(25.6), celsius(19.5), pressure, 'ventilated'), 1.91, 0.005);
  });

  it('Example 5: ea from humidities 1.70, 1.69 and 1.78 kPa by Eq. 17, 18 and 19', () => {
    const temperatures = { maximumTemperature: celsius(25), minimumTemperature: celsius(18) };
    expectWithin(vapourPressureFromHumidityExtremes(temperatures, 82, 54), 1.7, 0.005);
    expectWithin(vapourPressureFromMaximumHumidity(temperatures, 82), 1.69, 0.005);
    expectWithin(vapourPressureFromMeanHumidity(temperatures, 68), 1.78, 0.005);
  });

  it('Annex 2, Table 2.4: slope 0.243 kPa/°C at 30 °C and 0.145 at 20 °C', () => {
    expectWithin(slopeOfSaturationVapourPressure(celsius(30)), 0.243, 0.0005);
    expectWithin(slopeOfSaturationVapourPressure(celsius(20)), 0.145, 0.0005);
  });

  it('Example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m', () => {
    expectWithin(windSpeedAt2M(metresPerSecond(3.2), metres(10)), 2.4, 0.05);
  });
});

describe('FAO-56 chapter 3: the sun', () => {
  it('Example 7: 13° 44′ N is 0.240 rad, 22° 54′ S is -0.400 rad', () => {
    expectWithin(radiansFromDegrees(degrees(13 + 44 / 60)), 0.24, 0.0005);
    expectWithin(radiansFromDegrees(degrees(-(22 + 54 / 60))), -0.4, 0.0005);
  });

  it('Example 8: 3 September at 20° S', () => {
    const day = dayOfYear('1998-09-03');
    const declination = solarDeclination(day);
    expectWithin(day, 246, 0);
    expectWithin(inverseRelativeDistance(day), 0.985, 0.0005);
    expectWithin(declination, 0.12, 0.0005);
    expectWithin(sunsetHourAngle(degrees(-20), declination), 1.527, 0.0005);
    expectWithin(extraterrestrialRadiation(degrees(-20), day), 32.2, 0.05);
  });

  it('Example 9: 11.7 daylight hours; 11.66559 in the documentation of an open library (NCL daylight_fao56)', () => {
    expectWithin(daylightHours(degrees(-20), 246), 11.7, 0.05);
    expectWithin(daylightHours(degrees(-20), 246), 11.66559, 0.000005);
  });
});
