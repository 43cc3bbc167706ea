import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import type { CompleteDay, Site } from '@rillbook/agronomy/evapotranspiration/methods/complete-day.js';
import {
  shortReferenceEvapotranspiration,
  tallReferenceEvapotranspiration,
} from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { standardizedTerms } from '@rillbook/agronomy/evapotranspiration/methods/standardized-terms.js';
import { clearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation.js';
import {
  clearSkyRadiationOfHumidAir,
  precipitableWater,
} from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation-of-humid-air.js';
import { cloudinessFactor } from '@rillbook/agronomy/evapotranspiration/radiation/cloudiness-factor.js';
import { standardizedNetLongwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-longwave-radiation.js';
import { netRadiation, netShortwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-radiation.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { inverseRelativeDistance } from '@rillbook/agronomy/evapotranspiration/sun/inverse-relative-distance.js';
import { sineOfMeanSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-mean-sun-angle.js';
import { solarDeclination } from '@rillbook/agronomy/evapotranspiration/sun/solar-declination.js';
import { standardizedSlopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { megajoulesPerSquareMetreDay as megajoules, megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsius, celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Every number of the first block: open library RefET (WSWUP/RefET at 2c3e2e0), tests of calculations and of daily values,
// for Fallon, Nevada, 2015-07-01. The library's 'asce' variant is the standard; its 'refet' variant carries other constants.

const site: Site = { latitude: degrees(39.4575), elevation: metres(1208.5) };
const wind = windSpeedAt2M(metresPerSecondFromMilesPerHour(4.8), metres(3));
const day: CompleteDay = {
  dayOfYear: 182,
  maximumTemperature: celsiusFromFahrenheit(102.8),
  minimumTemperature: celsiusFromFahrenheit(66.65),
  vapourPressure: vapourPressureFromDewPoint(celsiusFromFahrenheit(49.84)),
  windSpeedAt2M: wind,
  solarRadiation: megajoulesPerSquareMetreDayFromLangleys(674.07),
};
const terms = standardizedTerms(day, site);

describe('ASCE-EWRI (2005) through RefET: intermediates of one day', () => {
  it.each([
    ['P', atmosphericPressure(site.elevation), 87.80710537, 1e-8],
    ['ea', day.vapourPressure, 1.2206674169951346, 1e-12],
    ['es', terms.saturationVapourPressure, 4.6747236227258835, 1e-12],
    ['slope', terms.vapourPressureSlope, 0.23488581814172638, 1e-12],
    ['declination', solarDeclination(182), 0.4029517, 5e-8],
    ['dr', inverseRelativeDistance(182), 0.9670012, 5e-8],
    ['Ra', extraterrestrialRadiation(site.latitude, 182), 41.6482457, 5e-8],
    ['u2', wind, 1.976111757722194, 1e-12],
    ['Rs', day.solarRadiation, 28.22196276, 1e-8],
  ])('%s', (_, actual, published, tolerance) => expectWithin(actual, published, tolerance));

  it("precipitable water and full clear-sky radiation from the library's own Ra and P", () => {
    const air = {
      pressure: kilopascals(87.81876435813037),
      vapourPressure: day.vapourPressure,
      sineOfSunAngle: sineOfMeanSunAngle(site.latitude, 182),
    };
    expectWithin(precipitableWater(air.vapourPressure, air.pressure), 17.107650595384076, 1e-10);
    expectWithin(clearSkyRadiationOfHumidAir(megajoules(41.67610845067083), air), 31.565939444861765, 1e-8);
  });

  it("cloudiness, long-wave and net radiation from the library's own Rso", () => {
    const cloudiness = cloudinessFactor(day.solarRadiation, megajoules(31.565939444861765));
    const longwave = standardizedNetLongwaveRadiation(day, day.vapourPressure, cloudiness);
    expectWithin(cloudiness, 0.8569860867772078, 1e-12);
    expectWithin(longwave, 6.556533974825727, 1e-8);
    expectWithin(netRadiation(netShortwaveRadiation(day.solarRadiation), longwave), 15.174377350374275, 1e-8);
  });

  it("ETo 7.942 and ETr 10.571 mm/d with the full clear-sky radiation (the library's variant of constants moves it by 0.002)", () => {
    expectWithin(shortReferenceEvapotranspiration(terms), 7.9422320475712835, 0.006);
    expectWithin(tallReferenceEvapotranspiration(terms), 10.571314344056955, 0.006);
  });

  it('ETr 10.6260877 mm/d with the simple clear-sky radiation, to the last digit', () => {
    const simple = clearSkyRadiation(site.elevation, extraterrestrialRadiation(site.latitude, 182));
    const longwave = standardizedNetLongwaveRadiation(day, day.vapourPressure, cloudinessFactor(day.solarRadiation, simple));
    const rn = netRadiation(netShortwaveRadiation(day.solarRadiation), longwave);
    expectWithin(tallReferenceEvapotranspiration({ ...terms, netRadiation: rn }), 10.6260877, 5e-8);
  });
});

describe('ASCE-EWRI (2005), Appendix C, Greeley, Colorado (through pyet, tests/testfao56.py at 2e857fe)', () => {
  it('pressure 85.17 kPa and psychrometric constant 0.0566', () => {
    const pressure = atmosphericPressure(metres(1462.4));
    expectWithin(pressure, 85.17, 0.01);
    expectWithin(psychrometricConstant(pressure), 0.0566, 0.00005);
  });

  it.each([
    [21.65, 0.1585],
    [22.9, 0.1692],
    [23.7, 0.1762],
    [22.8, 0.1684],
    [24.3, 0.182],
    [26.0, 0.199],
    [26.1, 0.1996],
    [26.4, 0.2027],
    [23.9, 0.1781],
    [24.2, 0.1809],
  ])('slope at %d °C (temperatures printed to 0.1, so that 0.006 is allowed)', (temperature, slope) => {
    expectWithin(standardizedSlopeOfSaturationVapourPressure(celsius(temperature)), slope, 0.006);
  });
});
