import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import type { CompleteDay, Site } from '@rillbook/agronomy/evapotranspiration/methods/complete-day.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { hargreavesSamani } from '@rillbook/agronomy/evapotranspiration/methods/hargreaves-samani.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { clearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation.js';
import { solarRadiationFromSunshine } from '@rillbook/agronomy/evapotranspiration/radiation/solar-radiation-from-sunshine.js';
import { solarRadiationFromTemperature } from '@rillbook/agronomy/evapotranspiration/radiation/solar-radiation-from-temperature.js';
import { daylightHours } from '@rillbook/agronomy/evapotranspiration/sun/daylight-hours.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { saturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/saturation-vapour-pressure.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { vapourPressureFromHumidityExtremes } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay as megajoules } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Every number: Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 4, example named in the title.

const hours = (value: number): Quantity<'h'> => finiteQuantity(value, 'HOURS_OUT_OF_DOMAIN');

describe('FAO-56 Example 17, Bangkok in April', () => {
  const site: Site = { latitude: degrees(13 + 44 / 60), elevation: metres(2) };
  const ra = extraterrestrialRadiation(site.latitude, 105);
  const day: CompleteDay = {
    dayOfYear: 105,
    maximumTemperature: celsius(34.8),
    minimumTemperature: celsius(25.6),
    vapourPressure: kilopascals(2.85),
    windSpeedAt2M: metresPerSecond(2),
    solarRadiation: solarRadiationFromSunshine(hours(8.5), daylightHours(site.latitude, 105), ra),
  };
  const terms = { ...fao56Terms(day, site), soilHeatFlux: megajoules(0.14) };

  it('terms', () => {
    expectWithin(terms.meanTemperature, 30.2, 0.005);
    expectWithin(terms.vapourPressureSlope, 0.246, 0.0005);
    expectWithin(atmosphericPressure(site.elevation), 101.3, 0.05);
    // Printed 0.0674, which is 0.665e-3 x 101.3 = 0.06736 rounded from a rounded pressure.
    expectWithin(terms.psychrometricConstant, 0.0674, 0.0001);
    expectWithin(saturationVapourPressure(celsius(34.8)), 5.56, 0.005);
    expectWithin(saturationVapourPressure(celsius(25.6)), 3.28, 0.005);
    expectWithin(terms.saturationVapourPressure, 4.42, 0.005);
    expectWithin(terms.saturationVapourPressure - terms.vapourPressure, 1.57, 0.005);
    expectWithin(terms.netRadiation, 14.33, 0.01);
  });

  it('ETo 5.72 mm/d, whole chain and from the printed terms', () => {
    expectWithin(shortReferenceEvapotranspiration(terms), 5.72, 0.01);
    const printed = {
      meanTemperature: celsius(30.2),
      netRadiation: megajoules(14.33),
      soilHeatFlux: megajoules(0.14),
      windSpeedAt2M: metresPerSecond(2),
      saturationVapourPressure: kilopascals(4.42),
      vapourPressure: kilopascals(2.85),
      vapourPressureSlope: finiteQuantity<'kPa/°C'>(0.246, 'SLOPE_OUT_OF_DOMAIN'),
      psychrometricConstant: finiteQuantity<'kPa/°C'>(0.0674, 'PSYCHROMETRIC_CONSTANT_OUT_OF_DOMAIN'),
    };
    // The paper adds its two rounded terms, 3.97 and 1.75.
    expectWithin(shortReferenceEvapotranspiration(printed), 5.72, 0.01);
  });
});

describe('FAO-56 Example 18, Uccle on 6 July', () => {
  const site: Site = { latitude: degrees(50.8), elevation: metres(100) };
  const temperatures = { maximumTemperature: celsius(21.5), minimumTemperature: celsius(12.3) };
  const wind = windSpeedAt2M(metresPerSecond(10 / 3.6), metres(10));
  const vapourPressure = vapourPressureFromHumidityExtremes(temperatures, 84, 63);
  const ra = extraterrestrialRadiation(site.latitude, 187);
  const rs = solarRadiationFromSunshine(hours(9.25), daylightHours(site.latitude, 187), ra);
  const day: CompleteDay = { dayOfYear: 187, ...temperatures, vapourPressure, windSpeedAt2M: wind, solarRadiation: rs };
  const terms = fao56Terms(day, site);

  it('humidity and wind', () => {
    expectWithin(wind, 2.078, 0.0005);
    expectWithin(saturationVapourPressure(celsius(21.5)), 2.564, 0.0005);
    expectWithin(saturationVapourPressure(celsius(12.3)), 1.431, 0.0005);
    expectWithin(terms.saturationVapourPressure, 1.997, 0.0005);
    expectWithin(vapourPressure, 1.409, 0.0005);
  });

  it('air and radiation', () => {
    expectWithin(atmosphericPressure(site.elevation), 100.1, 0.05);
    expectWithin(terms.psychrometricConstant, 0.0666, 0.00005);
    expectWithin(terms.vapourPressureSlope, 0.122, 0.0005);
    expectWithin(ra, 41.09, 0.005);
    expectWithin(daylightHours(site.latitude, 187), 16.1, 0.05);
    expectWithin(rs, 22.07, 0.01);
    expectWithin(clearSkyRadiation(site.elevation, ra), 30.9, 0.005);
    expectWithin(terms.netRadiation, 13.28, 0.01);
  });

  it('ETo 3.88 mm/d', () => expectWithin(shortReferenceEvapotranspiration(terms), 3.88, 0.005));
});

describe('FAO-56 Example 20, Lyon in July from temperatures only', () => {
  const site: Site = { latitude: degrees(45 + 43 / 60), elevation: metres(200) };
  const temperatures = { maximumTemperature: celsius(26.6), minimumTemperature: celsius(14.8) };
  const ra = extraterrestrialRadiation(site.latitude, 196);
  const limits = { extraterrestrialRadiation: ra, clearSkyRadiation: clearSkyRadiation(site.elevation, ra) };
  const rs = solarRadiationFromTemperature(temperatures, limits, 'interior');
  const vapourPressure = vapourPressureFromDewPoint(celsius(14.8));
  const withWind = (wind: number) =>
    fao56Terms({ dayOfYear: 196, ...temperatures, vapourPressure, windSpeedAt2M: metresPerSecond(wind), solarRadiation: rs }, site);

  it('ea 1.68, Rs 22.29, Rn 13.48', () => {
    expectWithin(vapourPressure, 1.68, 0.005);
    expectWithin(rs, 22.29, 0.03);
    expectWithin(withWind(2).netRadiation, 13.48, 0.02);
  });

  it('ETo 4.56 mm/d with 2 m/s; 4.2 with 1 and 4.8 with 3 m/s', () => {
    const eto = (wind: number) => shortReferenceEvapotranspiration(withWind(wind));
    expectWithin(eto(2), 4.56, 0.01);
    expectWithin(eto(1), 4.2, 0.06);
    expectWithin(eto(3), 4.8, 0.05);
  });

  it('Hargreaves-Samani 5.0 mm/d', () => expectWithin(hargreavesSamani(celsius(20.7), temperatures, ra), 5.0, 0.05));
});

describe('Hargreaves-Samani, Mehta (2006)', () => {
  it('6.1 mm/d with the stated mean of 35 °C', () => {
    const temperatures = { maximumTemperature: celsius(38), minimumTemperature: celsius(28) };
    expectWithin(hargreavesSamani(celsius(35), temperatures, megajoules(38.93715)), 6.1, 0.05);
  });
});
