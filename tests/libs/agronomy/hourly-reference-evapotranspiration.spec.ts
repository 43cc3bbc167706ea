import { hourlyReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-reference-evapotranspiration.js';
import { hourlyReferenceEvapotranspirationSeries } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-reference-evapotranspiration-series.js';
import type { ClockedStation, WeatherHour } from '@rillbook/agronomy/evapotranspiration/hourly/weather-hour.js';
import { hourlySoilHeatFlux } from '@rillbook/agronomy/evapotranspiration/radiation/hourly-soil-heat-flux.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const station: ClockedStation = {
  latitude: degrees(36),
  longitude: degrees(-119),
  zoneLongitude: degrees(-120),
  elevation: metres(100),
};
const noon: WeatherHour = {
  dayOfYear: 200,
  middleHour: 12.5,
  temperature: celsius(31),
  dewPoint: celsius(13),
  humidity: null,
  wind: metresPerSecond(2.5),
  windHeight: metres(2),
  solar: megajoulesPerSquareMetreHour(3),
};
const midnight: WeatherHour = { ...noon, middleHour: 0.5, temperature: celsius(17), wind: metresPerSecond(1), solar: null };
const etoOf = (hour: WeatherHour, before: number | null = null) =>
  hourlyReferenceEvapotranspiration(hour, station, before).etoMm ?? Number.NaN;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('hourlyReferenceEvapotranspiration: what is there and what lacks', () => {
  it('assumes nothing where all was measured and the sun is high', () => {
    expect(hourlyReferenceEvapotranspiration(noon, station)).toMatchObject({ sunHigh: true, assumed: [], refused: [] });
  });

  it.each([
    ['temperature', ['no-temperature']],
    ['dewPoint', ['no-humidity']],
    ['wind', ['no-wind']],
    ['solar', ['no-solar-radiation']],
  ] as const)('without %s there is no value, and the reason', (name, reasons) => {
    expect(hourlyReferenceEvapotranspiration({ ...noon, [name]: null }, station)).toEqual({
      etoMm: null,
      etrMm: null,
      reasons,
      refused: [],
    });
  });

  it('names all reasons of an hour that was not measured', () => {
    const nothing = { ...noon, temperature: null, dewPoint: null, wind: null, solar: null };
    expect(hourlyReferenceEvapotranspiration(nothing, station)).toMatchObject({
      reasons: ['no-temperature', 'no-humidity', 'no-wind', 'no-solar-radiation'],
    });
  });

  it('takes relative humidity where no dew point was measured', () => {
    // 33.32 % at 31 °C is air of a dew point of 13 °C.
    expect(etoOf({ ...noon, dewPoint: null, humidity: 33.32 })).toBeCloseTo(etoOf(noon), 3);
  });

  it('knows without a measurement that no sun shines by night', () => {
    expect(etoOf(midnight, 0.8)).toBe(etoOf({ ...midnight, solar: megajoulesPerSquareMetreHour(0) }, 0.8));
  });

  it.each([
    ['temperature', celsius(75), 'no-temperature'],
    ['dewPoint', celsius(34), 'no-humidity'],
    ['wind', metresPerSecond(-1), 'no-wind'],
    ['solar', megajoulesPerSquareMetreHour(6), 'no-solar-radiation'],
  ] as const)('refuses a %s of %d, by name', (name, value, reason) => {
    expect(hourlyReferenceEvapotranspiration({ ...noon, [name]: value }, station)).toMatchObject({ refused: [name], reasons: [reason] });
  });

  it('says what it assumed of height and elevation', () => {
    expect(hourlyReferenceEvapotranspiration({ ...noon, windHeight: null }, { ...station, elevation: null })).toMatchObject({
      assumed: ['wind-height', 'elevation'],
    });
  });

  it('refuses a longitude, a latitude, a day and an hour that are none, by code', () => {
    const refusal = (code: string) => expect.objectContaining({ code });
    const at = (hour: WeatherHour, where: ClockedStation) => () => hourlyReferenceEvapotranspiration(hour, where);
    expect(at(noon, { ...station, longitude: degrees(181) })).toThrowError(refusal('LONGITUDE_OUT_OF_DOMAIN'));
    expect(at(noon, { ...station, latitude: degrees(-91) })).toThrowError(refusal('LATITUDE_OUT_OF_DOMAIN'));
    expect(at({ ...noon, dayOfYear: 0 }, station)).toThrowError(refusal('DAY_OF_YEAR_OUT_OF_DOMAIN'));
    expect(at({ ...noon, middleHour: Number.NaN }, station)).toThrowError(refusal('CLOCK_HOUR_OUT_OF_DOMAIN'));
  });

  it('is the same hour by whichever clock', () => {
    const onUtc = { ...station, zoneLongitude: degrees(0) };
    const later = hourlyReferenceEvapotranspiration({ ...noon, middleHour: 20.5 }, onUtc);
    expect(later.etoMm).toBeCloseTo(etoOf(noon), 12);
  });
});

describe('hourlyReferenceEvapotranspiration: cloudiness under a low sun', () => {
  const cloudinessOf = (hour: WeatherHour, before: number | null) => {
    const answer = hourlyReferenceEvapotranspiration(hour, station, before);
    return answer.etoMm === null ? null : answer.cloudiness;
  };

  it('is the one before; where there is none, an assumption that is named', () => {
    expect(cloudinessOf(midnight, 0.31)).toBe(0.31);
    expect(hourlyReferenceEvapotranspiration(midnight, station, null)).toMatchObject({ assumed: ['cloudiness'] });
    expect(cloudinessOf(midnight, null)).toBeCloseTo(1.35 * 0.7 - 0.35, 12);
  });

  it('is the hour its own under a high sun, whatever was before', () => {
    expect(cloudinessOf(noon, 0.31)).toBe(cloudinessOf(noon, null));
  });

  it('is carried by the series over the night, and no longer than a day', () => {
    const night = Array.from({ length: 26 }, () => midnight);
    const answers = hourlyReferenceEvapotranspirationSeries([midnight, noon, ...night, noon, midnight], station);
    const assumed = answers.map((answer) => answer.etoMm !== null && answer.assumed.includes('cloudiness'));
    expect(assumed).toEqual([true, false, ...night.map((_, at) => at >= 24), false, false]);
  });

  it('is not taken from an hour that lacks a value', () => {
    const [, after] = hourlyReferenceEvapotranspirationSeries([{ ...noon, wind: null }, midnight], station);
    expect(after).toMatchObject({ assumed: ['cloudiness'] });
  });
});

describe('hourlyReferenceEvapotranspiration: physics', () => {
  it('soil takes and gives more under grass than under alfalfa, and by night than by day', () => {
    const share = (radiation: number, surface: 'short' | 'tall') =>
      hourlySoilHeatFlux(megajoulesPerSquareMetreHour(radiation), surface) / radiation;
    const published: readonly (readonly [number, 'short' | 'tall', number])[] = [
      [2, 'short', 0.1],
      [2, 'tall', 0.04],
      [-0.2, 'short', 0.5],
      [-0.2, 'tall', 0.2],
    ];
    for (const [radiation, surface, flux] of published) expect(share(radiation, surface)).toBeCloseTo(flux, 12);
  });

  it('rises with solar radiation under a high sun', () => {
    fc.assert(
      fc.property(within(0.5, 3), within(0.05, 0.5), (solar, more) => {
        const eto = (value: number) => etoOf({ ...noon, solar: megajoulesPerSquareMetreHour(value) });
        expect(eto(solar + more)).toBeGreaterThan(eto(solar));
      }),
    );
  });

  it('is more from alfalfa than from grass in dry wind', () => {
    fc.assert(
      fc.property(within(1, 10), within(-10, 12), (wind, dewPoint) => {
        const hour = { ...noon, wind: metresPerSecond(wind), dewPoint: celsius(dewPoint) };
        const { etoMm, etrMm } = hourlyReferenceEvapotranspiration(hour, station);
        expect(etrMm ?? Number.NaN).toBeGreaterThan(etoMm ?? Number.NaN);
      }),
    );
  });

  it('is finite in any plausible hour from pole to pole, and forms at most a little dew', () => {
    const anyHour = fc.record({
      dayOfYear: fc.integer({ min: 1, max: 366 }),
      middleHour: within(-12, 36),
      temperature: within(-40, 50).map(celsius),
      dewPoint: fc.constant(null),
      humidity: within(0, 105),
      wind: within(0, 40).map(metresPerSecond),
      windHeight: fc.constantFrom(metres(2), metres(10)),
      solar: within(0, 5).map(megajoulesPerSquareMetreHour),
    });
    const anywhere = fc.record({
      latitude: within(-90, 90).map(degrees),
      longitude: within(-180, 180).map(degrees),
      zoneLongitude: within(-180, 180).map(degrees),
      elevation: within(-430, 5000).map(metres),
    });
    fc.assert(
      fc.property(anyHour, anywhere, (hour, where) => {
        const { etoMm, etrMm } = hourlyReferenceEvapotranspiration(hour, where);
        for (const value of [etoMm, etrMm]) expect(value !== null && Number.isFinite(value) && value > -0.5).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
