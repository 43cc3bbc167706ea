import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { combinationEquation } from '@rillbook/agronomy/evapotranspiration/methods/combination-equation.js';
import type { Site } from '@rillbook/agronomy/evapotranspiration/methods/complete-day.js';
import { fao56Terms } from '@rillbook/agronomy/evapotranspiration/methods/fao56-terms.js';
import { hargreavesSamani } from '@rillbook/agronomy/evapotranspiration/methods/hargreaves-samani.js';
import { fao56HourlyReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/hourly-penman-monteith.js';
import { shortReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { clearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation.js';
import { hourlySoilHeatFlux } from '@rillbook/agronomy/evapotranspiration/radiation/hourly-soil-heat-flux.js';
import { solarRadiationFromSunshine } from '@rillbook/agronomy/evapotranspiration/radiation/solar-radiation-from-sunshine.js';
import { solarRadiationFromTemperature } from '@rillbook/agronomy/evapotranspiration/radiation/solar-radiation-from-temperature.js';
import { daylightHours } from '@rillbook/agronomy/evapotranspiration/sun/daylight-hours.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { saturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/saturation-vapour-pressure.js';
import { slopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { vapourPressureFromHourlyHumidity } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-hourly-humidity.js';
import { vapourPressureFromHumidityExtremes } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay as megajoules, megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, type GoldenCheck, type GoldenValue, given } from '../golden-check.js';
import { checks } from './evapotranspiration.values.js';

const hours = (value: number): Quantity<'h'> => finiteQuantity(value, 'HOURS_OUT_OF_DOMAIN');
const perCelsius = (value: number): Quantity<'kPa/°C'> => finiteQuantity(value, 'SLOPE_OUT_OF_DOMAIN');
const siteOf = (check: GoldenCheck): Site => ({
  latitude: degrees(given(check, 'latitude')),
  elevation: metres(given(check, 'elevation')),
});
const temperaturesOf = (check: GoldenCheck) => ({
  maximumTemperature: celsius(given(check, 'Tmax')),
  minimumTemperature: celsius(given(check, 'Tmin')),
});

/** A day of which only the temperatures were measured, completed by chapter 3, with a wind of one's choice. */
function fromTemperatures(check: GoldenCheck) {
  const [site, temperatures, dayOfYear] = [siteOf(check), temperaturesOf(check), given(check, 'day_of_year')];
  const ra = extraterrestrialRadiation(site.latitude, dayOfYear);
  const limits = { extraterrestrialRadiation: ra, clearSkyRadiation: clearSkyRadiation(site.elevation, ra) };
  const solarRadiation = solarRadiationFromTemperature(temperatures, limits, 'interior');
  const vapourPressure = vapourPressureFromDewPoint(temperatures.minimumTemperature);
  const withWind = (wind: number) =>
    fao56Terms({ dayOfYear, ...temperatures, vapourPressure, windSpeedAt2M: metresPerSecond(wind), solarRadiation }, site);
  return { ra, solarRadiation, vapourPressure, withWind, eto: (wind: number) => shortReferenceEvapotranspiration(withWind(wind)) };
}

/** MJ/m2/h in a W/m2: exact, 3600 s. */
const MJ_PER_HOUR_PER_WATT = 0.0036;

/** The open library that computed Example 19 to six digits (hydpy) takes 900/24 for the 37 that FAO-56 prints in Eq. 53. */
const LIBRARY_HOURLY = { numerator: 900 / 24, denominator: 0.34 };

/** What each example asks for, computed. */
const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Readonly<Record<string, GoldenValue>>>> = {
  'et-024': (check) => ({
    ETo: shortReferenceEvapotranspiration({
      meanTemperature: celsius(given(check, 'T')),
      netRadiation: megajoules(given(check, 'Rn')),
      soilHeatFlux: megajoules(given(check, 'G')),
      windSpeedAt2M: metresPerSecond(given(check, 'u2')),
      saturationVapourPressure: kilopascals(given(check, 'es')),
      vapourPressure: kilopascals(given(check, 'ea')),
      vapourPressureSlope: perCelsius(given(check, 'slope')),
      psychrometricConstant: perCelsius(given(check, 'gamma')),
    }),
  }),
  'et-027': (check) => ({ ETo: shortReferenceEvapotranspiration(uccle(check)) }),
  'et-028': (check) => ({ ETo: combinationEquation(ndiaye(check), LIBRARY_HOURLY) }),
  'et-030': (check) => {
    const { vapourPressure, solarRadiation, withWind, eto } = fromTemperatures(check);
    const wind = given(check, 'u2_assumed');
    return { ea_from_Tmin: vapourPressure, Rs_from_temp: solarRadiation, Rn: withWind(wind).netRadiation, ETo: eto(wind) };
  },
  'et-031': (check) => {
    const { eto } = fromTemperatures(check);
    return { ETo_u2_1: eto(1), ETo_u2_3: eto(3), reduction_at_1: 1 - eto(1) / eto(2), increase_at_3: eto(3) / eto(2) - 1 };
  },
  'et-033': (check) => ({
    ETo: hargreavesSamani(celsius(given(check, 'Tmean')), temperaturesOf(check), megajoules(given(check, 'Ra'))),
  }),
};

/** The terms of an hour whose net radiation was measured; G = 0.1 Rn by day and 0.5 Rn by night. */
function hourOf(hour: { temperature: number; humidity: number; wind: number; pressure: number; netRadiation: number }) {
  const airTemperature = celsius(hour.temperature);
  const netRadiation = megajoulesPerSquareMetreHour(hour.netRadiation);
  return {
    meanTemperature: airTemperature,
    netRadiation,
    soilHeatFlux: hourlySoilHeatFlux(netRadiation, 'short'),
    windSpeedAt2M: metresPerSecond(hour.wind),
    saturationVapourPressure: saturationVapourPressure(airTemperature),
    vapourPressure: vapourPressureFromHourlyHumidity(airTemperature, hour.humidity),
    vapourPressureSlope: slopeOfSaturationVapourPressure(airTemperature),
    psychrometricConstant: psychrometricConstant(kilopascals(hour.pressure)),
  };
}

function ndiaye(check: GoldenCheck) {
  const [temperature, humidity, wind] = [given(check, 'T'), given(check, 'RH'), given(check, 'u2')];
  return hourOf({ temperature, humidity, wind, pressure: given(check, 'P'), netRadiation: given(check, 'Rn') });
}

function uccle(check: GoldenCheck) {
  const [site, temperatures, dayOfYear] = [siteOf(check), temperaturesOf(check), given(check, 'day_of_year')];
  const ra = extraterrestrialRadiation(site.latitude, dayOfYear);
  const solarRadiation = solarRadiationFromSunshine(hours(given(check, 'n')), daylightHours(site.latitude, dayOfYear), ra);
  const vapourPressure = vapourPressureFromHumidityExtremes(temperatures, given(check, 'RHmax'), given(check, 'RHmin'));
  const windSpeedAt2M = metresPerSecond(given(check, 'u2'));
  return fao56Terms({ dayOfYear, ...temperatures, vapourPressure, windSpeedAt2M, solarRadiation }, site);
}

describe('FAO-56 chapter 4: reference evapotranspiration', () => {
  it.each(Object.entries(checks))('%s', (id, check) => {
    expectGolden(check, computed[id as keyof typeof checks](check));
  });

  it('Example 17, Bangkok in April: ETo 5.72 mm/d by the whole chain', () => {
    const site: Site = { latitude: degrees(13 + 44 / 60), elevation: metres(2) };
    const ra = extraterrestrialRadiation(site.latitude, 105);
    const day = {
      dayOfYear: 105,
      maximumTemperature: celsius(34.8),
      minimumTemperature: celsius(25.6),
      vapourPressure: kilopascals(2.85),
      windSpeedAt2M: metresPerSecond(2),
      solarRadiation: solarRadiationFromSunshine(hours(8.5), daylightHours(site.latitude, 105), ra),
    };
    expectWithin(shortReferenceEvapotranspiration({ ...fao56Terms(day, site), soilHeatFlux: megajoules(0.14) }), 5.72, 0.01);
  });

  it('Example 18, Uccle on 6 July: air and radiation as printed', () => {
    const terms = uccle(checks['et-027']);
    const ra = extraterrestrialRadiation(degrees(50.8), 187);
    expectWithin(atmosphericPressure(metres(100)), 100.1, 0.05);
    expectWithin(terms.psychrometricConstant, 0.0666, 0.00005);
    expectWithin(terms.vapourPressureSlope, 0.122, 0.0005);
    expectWithin(ra, 41.09, 0.005);
    expectWithin(daylightHours(degrees(50.8), 187), 16.1, 0.05);
    expectWithin(clearSkyRadiation(metres(100), ra), 30.9, 0.005);
    expectWithin(terms.netRadiation, 13.28, 0.01);
  });

  it("Example 19, N'Diaye: 0.63 mm from 14 to 15 h and 0.00 from 2 to 3 h with the 37 of Eq. 53", () => {
    const day = ndiaye(checks['et-028']);
    expectWithin(hourlySoilHeatFlux(day.netRadiation, 'short'), given(checks['et-028'], 'G'), 1e-6);
    expectWithin(fao56HourlyReferenceEvapotranspiration(day), 0.63, 0.005);
    const night = hourOf({ temperature: 28, humidity: 90, wind: 1.9, pressure: 100.1, netRadiation: -38.18 * MJ_PER_HOUR_PER_WATT });
    expectWithin(night.soilHeatFlux, night.netRadiation / 2, 1e-12);
    expectWithin(fao56HourlyReferenceEvapotranspiration(night), 0, 0.005);
    expectWithin(combinationEquation(night, LIBRARY_HOURLY), -0.000649, 0.00001);
  });

  it('Example 20, Lyon in July: Hargreaves-Samani 5.0 mm/d', () => {
    const check = checks['et-030'];
    expectWithin(hargreavesSamani(celsius(20.7), temperaturesOf(check), fromTemperatures(check).ra), 5.0, 0.05);
  });
});
