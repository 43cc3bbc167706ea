import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { hourlyReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-reference-evapotranspiration.js';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { daylightHours } from '@rillbook/agronomy/evapotranspiration/sun/daylight-hours.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { hourlyExtraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/hourly-extraterrestrial-radiation.js';
import { solarHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/solar-hour-angle.js';
import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { saturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/saturation-vapour-pressure.js';
import { vapourPressureFromHumidityExtremes } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import type { WeatherStation } from '@rillbook/agronomy/weather/weather-station.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { megajoulesPerSquareMetreDay, megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const station: WeatherStation = { latitude: degrees(36), elevation: metres(100) };
const summer: WeatherDay = {
  dayOfYear: 200,
  tmax: celsius(33),
  tmin: celsius(17),
  rhmax: 80,
  rhmin: 30,
  dewPoint: null,
  wind: metresPerSecond(2),
  windHeight: metres(2),
  solar: megajoulesPerSquareMetreDay(26),
  rain: null,
  givenEto: null,
};
const etoOf = (day: WeatherDay, at: WeatherStation = station): number => referenceEvapotranspiration(day, at).etoMm ?? Number.NaN;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('dew point given against humidity given', () => {
  const temperatures = { maximumTemperature: celsius(33), minimumTemperature: celsius(17) };
  const dewPoint = dewPointFromVapourPressure(vapourPressureFromHumidityExtremes(temperatures, 80, 30));

  it('the same air gives the same reference ET, said as dew point or as humidities', () => {
    const byDewPoint = etoOf({ ...summer, rhmax: null, rhmin: null, dewPoint });
    expect(byDewPoint).toBeCloseTo(etoOf(summer), 9);
    // The mean of the humidities at the mean temperature is other air, 2 °C moister: FAO-56 takes each with its own temperature.
    const naive = kilopascals(0.55 * saturationVapourPressure(celsius(25)));
    expect(dewPointFromVapourPressure(naive) - dewPoint).toBeGreaterThan(1.5);
  });

  it('where both are given, the dew point is taken: a humidity sensor ages, and a wrong one moves nothing', () => {
    expect(etoOf({ ...summer, dewPoint, rhmax: 100, rhmin: 90 })).toBe(etoOf({ ...summer, dewPoint }));
  });

  it('a humidity of 80 is in per cent: 0.8 is taken as almost no water and not mended', () => {
    const answer = referenceEvapotranspiration({ ...summer, rhmax: 0.8, rhmin: 0.3 }, station);
    expect(answer.refused).toEqual(['rhmax']);
  });
});

describe('wind measured at another height', () => {
  it('3.2 m/s at 10 m is 2.4 m/s at 2 m (FAO-56 Example 14), and not 3.2', () => {
    const at10 = etoOf({ ...summer, wind: metresPerSecond(3.2), windHeight: metres(10) });
    expect(at10).toBeCloseTo(etoOf({ ...summer, wind: metresPerSecond(2.393) }), 2);
    expect(etoOf({ ...summer, wind: metresPerSecond(3.2) }) - at10).toBeGreaterThan(0.2);
  });

  it('a height that nobody stated is 2 m, and says so', () => {
    const answer = referenceEvapotranspiration({ ...summer, windHeight: null }, station);
    expect(answer).toMatchObject({ assumed: ['wind-height'] });
    expect(answer.etoMm).toBeCloseTo(etoOf(summer), 2);
  });
});

describe('day of the year in leap years', () => {
  it('29 February is 60, so that 1 March is 61 and 31 December 366', () => {
    expect(['2016-02-29', '2016-03-01', '2016-12-31', '2015-03-01'].map(dayOfYear)).toEqual([60, 61, 366, 60]);
  });

  it('day 366 has a sun and a reference ET, next to those of the days around it', () => {
    const [before, last, first] = [365, 366, 1].map((day) => extraterrestrialRadiation(station.latitude, day));
    expect(last).toBeGreaterThan(before!);
    expect(Math.abs(last! - first!)).toBeLessThan(0.02);
    expect(etoOf({ ...summer, dayOfYear: 366 })).toBeGreaterThan(0);
    expect(() => extraterrestrialRadiation(station.latitude, 367)).toThrowError(
      expect.objectContaining({ code: 'DAY_OF_YEAR_OUT_OF_DOMAIN' }),
    );
  });
});

describe('southern hemisphere', () => {
  const south = degrees(-36);

  it('has its long days when the north has its short ones: both add up to 24 hours', () => {
    for (const day of [1, 80, 172, 266, 355]) {
      expect(daylightHours(south, day) + daylightHours(station.latitude, day)).toBeCloseTo(24, 9);
    }
    expect(daylightHours(south, 355)).toBeGreaterThan(14);
  });

  it('gets more sun in January than the north in July: the earth is nearer then', () => {
    expect(extraterrestrialRadiation(south, 10)).toBeGreaterThan(extraterrestrialRadiation(station.latitude, 192));
    expect(extraterrestrialRadiation(south, 10)).toBeGreaterThan(2 * extraterrestrialRadiation(station.latitude, 10));
  });

  it('computes the same weather to more reference ET there in January than in July', () => {
    const of = (day: number) => etoOf({ ...summer, solar: null, dayOfYear: day }, { ...station, latitude: south });
    expect(of(10)).toBeGreaterThan(1.5 * of(192));
  });
});

describe('high latitude', () => {
  it.each([
    ['polar day', 172, 24],
    ['polar night', 355, 0],
  ])('%s at 80° N: %d hours of light, and a reference ET that is a number', (_, day, hours) => {
    const north = degrees(80);
    expect(daylightHours(north, day)).toBeCloseTo(hours, 12);
    const cold = { ...summer, dayOfYear: day, tmax: celsius(4), tmin: celsius(-3), rhmin: 60, solar: megajoulesPerSquareMetreDay(hours) };
    for (const solar of [cold.solar, null]) {
      const eto = etoOf({ ...cold, solar }, { ...station, latitude: north });
      expect(eto >= 0 && eto < 10).toBe(true);
    }
    expect(extraterrestrialRadiation(north, day) > 0).toBe(hours > 0);
  });

  it('the hours of a day add up to the day, from pole to pole', () => {
    fc.assert(
      fc.property(within(-90, 90), fc.integer({ min: 1, max: 366 }), within(-180, 180), (latitude, day, longitude) => {
        const place = { longitude: degrees(longitude), zoneLongitude: degrees(0) };
        const hours = Array.from({ length: 24 }, (_, hour) =>
          hourlyExtraterrestrialRadiation(degrees(latitude), day, solarHourAngle(hour + 0.5, day, place)),
        );
        const sum = hours.reduce<number>((total, hour) => total + hour, 0);
        expect(Math.abs(sum - extraterrestrialRadiation(degrees(latitude), day))).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('an hour about midnight has sun on a polar day and none on a polar night', () => {
    const place = { longitude: degrees(0), zoneLongitude: degrees(0) };
    const midnight = (day: number) => hourlyExtraterrestrialRadiation(degrees(80), day, solarHourAngle(0, day, place));
    expect(midnight(172)).toBeGreaterThan(1);
    expect(midnight(355)).toBe(0);
  });
});

describe('elevation below sea level', () => {
  const low: WeatherStation = { latitude: degrees(36), elevation: metres(-86) };

  it('has more air above it: 102.3 kPa at -86 m', () => {
    expect(atmosphericPressure(metres(-86))).toBeCloseTo(102.32, 2);
  });

  it('is computed as it is, by day and by hour, next to sea level and not as unknown', () => {
    const answer = referenceEvapotranspiration(summer, low);
    expect(answer).toMatchObject({ method: 'penman-monteith', assumed: [] });
    expect(Math.abs((answer.etoMm ?? Number.NaN) - etoOf(summer, { ...low, elevation: metres(0) }))).toBeLessThan(0.02);
    const hour = {
      dayOfYear: 200,
      middleHour: 12.5,
      temperature: celsius(40),
      dewPoint: celsius(5),
      humidity: null,
      wind: metresPerSecond(3),
      windHeight: metres(2),
      solar: megajoulesPerSquareMetreHour(3.2),
    };
    const place = { ...low, longitude: degrees(-117), zoneLongitude: degrees(-120) };
    expect(hourlyReferenceEvapotranspiration(hour, place)).toMatchObject({ assumed: [], refused: [], sunHigh: true });
    expect(hourlyReferenceEvapotranspiration(hour, { ...place, elevation: null })).toMatchObject({ assumed: ['elevation'] });
  });
});
