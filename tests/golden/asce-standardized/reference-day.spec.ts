import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { meanTemperature } from '@rillbook/agronomy/evapotranspiration/air/mean-temperature.js';
import { hourlyClearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-clear-sky-radiation.js';
import { sunOfHour } from '@rillbook/agronomy/evapotranspiration/hourly/sun-of-hour.js';
import {
  shortHourlyReferenceEvapotranspiration,
  tallHourlyReferenceEvapotranspiration,
} from '@rillbook/agronomy/evapotranspiration/methods/hourly-penman-monteith.js';
import { hourlyTerms } from '@rillbook/agronomy/evapotranspiration/methods/hourly-terms.js';
import {
  shortReferenceEvapotranspiration,
  tallReferenceEvapotranspiration,
} from '@rillbook/agronomy/evapotranspiration/methods/penman-monteith.js';
import { standardizedTerms } from '@rillbook/agronomy/evapotranspiration/methods/standardized-terms.js';
import { clearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation.js';
import {
  clearSkyRadiationOfHumidAir,
  directBeamClearness,
  diffuseClearness,
  precipitableWater,
} from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation-of-humid-air.js';
import { cloudinessFactor } from '@rillbook/agronomy/evapotranspiration/radiation/cloudiness-factor.js';
import {
  hourlyNetLongwaveRadiation,
  standardizedNetLongwaveRadiation,
} from '@rillbook/agronomy/evapotranspiration/radiation/net-longwave-radiation.js';
import { netRadiation, netShortwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-radiation.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { inverseRelativeDistance } from '@rillbook/agronomy/evapotranspiration/sun/inverse-relative-distance.js';
import { seasonalCorrection } from '@rillbook/agronomy/evapotranspiration/sun/seasonal-correction.js';
import { sineOfMeanSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-mean-sun-angle.js';
import { solarDeclination } from '@rillbook/agronomy/evapotranspiration/sun/solar-declination.js';
import { solarHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/solar-hour-angle.js';
import { meanSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/mean-saturation-vapour-pressure.js';
import { standardizedSlopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import {
  megajoulesPerSquareMetreDay as megajoules,
  megajoulesPerSquareMetreDayFromLangleys,
  megajoulesPerSquareMetreHour,
  megajoulesPerSquareMetreHourFromLangleys,
} from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsius, celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import { describe, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, type GoldenCheck, type GoldenValue, given, givenRow } from '../golden-check.js';
import { fallon } from './fallon.js';
import { checks } from './reference-day.values.js';

const elevation = metres(1208.5);
const onUtc = { ...fallon, zoneLongitude: degrees(0) };
const temperaturesOf = (check: GoldenCheck) => ({
  maximumTemperature: celsiusFromFahrenheit(given(check, 'Tmax')),
  minimumTemperature: celsiusFromFahrenheit(given(check, 'Tmin')),
});
const windOf = (check: GoldenCheck) => windSpeedAt2M(metresPerSecondFromMilesPerHour(given(check, 'uz')), metres(given(check, 'zw')));
const vapourPressureOf = (check: GoldenCheck) => kilopascals(given(check, 'ea'));

function dayTerms(check: GoldenCheck) {
  const day = {
    dayOfYear: given(check, 'day_of_year'),
    ...temperaturesOf(check),
    vapourPressure: vapourPressureOf(check),
    windSpeedAt2M: windOf(check),
    solarRadiation: megajoulesPerSquareMetreDayFromLangleys(given(check, 'Rs')),
  };
  return { day, terms: standardizedTerms(day, { latitude: degrees(given(check, 'latitude')), elevation }) };
}

function hourOf(check: GoldenCheck, middleHour: number) {
  const station = { ...onUtc, latitude: degrees(given(check, 'latitude')), longitude: degrees(given(check, 'longitude')) };
  const sun = sunOfHour({ dayOfYear: given(check, 'day_of_year'), middleHour }, station);
  return { sun, clearSky: hourlyClearSkyRadiation(sun, vapourPressureOf(check), elevation) };
}

/** What each check asks for, computed. */
const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Readonly<Record<string, GoldenValue>>>> = {
  'et-036': (check) => ({ slope: givenRow(check, 'T').map((mean) => standardizedSlopeOfSaturationVapourPressure(celsius(mean))) }),
  'et-037': (check) => {
    const pressure = atmosphericPressure(metres(given(check, 'elevation')));
    return { P: pressure, gamma: psychrometricConstant(pressure) };
  },
  'et-042': (check) => ({ ea: vapourPressureFromDewPoint(celsiusFromFahrenheit(given(check, 'Tdew'))) }),
  'et-043': (check) => {
    const { maximumTemperature, minimumTemperature } = temperaturesOf(check);
    return {
      slope_asce: standardizedSlopeOfSaturationVapourPressure(meanTemperature(maximumTemperature, minimumTemperature)),
      es: meanSaturationVapourPressure(maximumTemperature, minimumTemperature),
    };
  },
  'et-045': (check) => {
    const place = { longitude: degrees(given(check, 'longitude')), zoneLongitude: degrees(0) };
    const dayOfYear = given(check, 'day_of_year');
    return { Sc: seasonalCorrection(dayOfYear), omega: solarHourAngle(given(check, 'utc_hour'), dayOfYear, place) };
  },
  'et-046': (check) => {
    const air = {
      pressure: kilopascals(given(check, 'P')),
      vapourPressure: vapourPressureOf(check),
      sineOfSunAngle: sineOfMeanSunAngle(degrees(given(check, 'latitude')), given(check, 'day_of_year')),
    };
    return {
      precipitable_water: precipitableWater(air.vapourPressure, air.pressure),
      Rso_full: clearSkyRadiationOfHumidAir(megajoules(given(check, 'Ra')), air),
    };
  },
  'et-048': (check) => {
    const solar = megajoules(given(check, 'Rs'));
    const cloudiness = cloudinessFactor(solar, megajoules(given(check, 'Rso')));
    const longwave = standardizedNetLongwaveRadiation(temperaturesOf(check), vapourPressureOf(check), cloudiness);
    return { fcd: cloudiness, Rnl: longwave, Rn: netRadiation(netShortwaveRadiation(solar), longwave) };
  },
  'et-049': (check) => ({ u2: windOf(check) }),
  'et-051': (check) => {
    const { terms } = dayTerms(check);
    return { ETo_short: shortReferenceEvapotranspiration(terms), ETr_tall: tallReferenceEvapotranspiration(terms) };
  },
  'et-052': (check) => {
    const { clearSky } = hourOf(check, given(check, 'utc_start_hour') + 0.5);
    const solarRadiation = megajoulesPerSquareMetreHourFromLangleys(given(check, 'Rs'));
    const hour = {
      airTemperature: celsiusFromFahrenheit(given(check, 'Tmean')),
      vapourPressure: vapourPressureOf(check),
      windSpeedAt2M: windOf(check),
      solarRadiation,
    };
    const terms = hourlyTerms(hour, metres(given(check, 'elevation')), cloudinessFactor(solarRadiation, clearSky));
    return { ETo_short: shortHourlyReferenceEvapotranspiration(terms), ETr_tall: tallHourlyReferenceEvapotranspiration(terms) };
  },
  'et-054': (check) => {
    const { sun, clearSky } = hourOf(check, given(check, 'utc_mid_hour'));
    const solar = megajoulesPerSquareMetreHour(given(check, 'Rs'));
    const cloudiness = cloudinessFactor(solar, clearSky);
    const longwave = hourlyNetLongwaveRadiation(celsius(given(check, 'T')), vapourPressureOf(check), cloudiness);
    return {
      Ra: sun.extraterrestrialRadiation,
      Rso: clearSky,
      fcd: cloudiness,
      Rnl: longwave,
      Rn: netRadiation(netShortwaveRadiation(solar), longwave),
    };
  },
};

describe('ASCE-EWRI (2005) through open libraries: a day and an hour with their intermediates', () => {
  it.each(Object.entries(checks))('%s', (id, check) => {
    expectGolden(check, computed[id as keyof typeof checks](check));
  });

  // The same library's constants of the standard, to the digits that it states.
  it.each([
    ['P', atmosphericPressure(elevation), 87.80710537, 1e-8],
    ['declination', solarDeclination(182), 0.4029517, 5e-8],
    ['dr', inverseRelativeDistance(182), 0.9670012, 5e-8],
    ['Ra', extraterrestrialRadiation(fallon.latitude, 182), 41.6482457, 5e-8],
    ['Rs', megajoulesPerSquareMetreDayFromLangleys(674.07), 28.22196276, 1e-8],
  ])('%s', (_, actual, published, tolerance) => expectWithin(actual, published, tolerance));

  it('ETr 10.6260877 mm/d with the simple clear-sky radiation, to the last digit', () => {
    const { day, terms } = dayTerms(checks['et-051']);
    const simple = clearSkyRadiation(elevation, extraterrestrialRadiation(fallon.latitude, 182));
    const longwave = standardizedNetLongwaveRadiation(day, day.vapourPressure, cloudinessFactor(day.solarRadiation, simple));
    const rn = netRadiation(netShortwaveRadiation(day.solarRadiation), longwave);
    expectWithin(tallReferenceEvapotranspiration({ ...terms, netRadiation: rn }), 10.6260877, 5e-8);
  });

  it('the clearness indices add up to the published clear-sky radiation over Ra', () => {
    const { inputs, expected } = checks['et-046'];
    const sineOfSunAngle = sineOfMeanSunAngle(degrees(inputs.latitude[0]), inputs.day_of_year[0]);
    const air = { pressure: kilopascals(inputs.P[0]), vapourPressure: kilopascals(inputs.ea[0]), sineOfSunAngle };
    const direct = directBeamClearness(air);
    expectWithin(direct + diffuseClearness(direct), expected.Rso_full[0] / inputs.Ra[0], 1e-9);
    // The two lines of KD meet near 0.15, and scattered light alone is left where no beam comes through.
    expectWithin(diffuseClearness(0.15), 0.35 - 0.36 * 0.15, 1e-12);
    expectWithin(diffuseClearness(0.14), 0.18 + 0.82 * 0.14, 1e-12);
    expectWithin(diffuseClearness(0), 0.18, 1e-12);
  });
});
