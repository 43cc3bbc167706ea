import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { referenceEvapotranspirationSeries } from '@rillbook/agronomy/evapotranspiration/series/reference-evapotranspiration-series.js';
import type { WeatherDaySeries } from '@rillbook/agronomy/evapotranspiration/series/reference-evapotranspiration-series.kernel.js';
import { sunOfLatitude } from '@rillbook/agronomy/evapotranspiration/series/sun-of-latitude.js';
import { tabulatedExponential, twoFifthsPower } from '@rillbook/agronomy/evapotranspiration/series/tabulated-powers.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** How far the kernel may stray from the chain of functions. [mm] */
const SAME = 1e-10;

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: null, freq: 8 });

const place = fc.record({ latitude: within(-90, 90).map(degrees), elevation: maybe(within(-430, 5000).map(metres)) });

/** Days of any weather, the lowest temperature below the highest; with `complete` nothing is missing, and the air is no moister than the tables hold (128 mm of water). */
const dayOf = (complete: boolean) => {
  const measured = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> => (complete ? value : maybe(value));
  return fc
    .record({
      dayOfYear: fc.integer({ min: 1, max: 366 }),
      tmax: within(-40, complete ? 40 : 50),
      range: within(0, 30),
      dewBelow: within(0, 30),
      rhmax: measured(within(40, 105)),
      rhmin: measured(within(0, 40)),
      byDewPoint: fc.boolean(),
      wind: measured(within(0, 50).map(metresPerSecond)),
      windHeight: measured(fc.constantFrom(2, 3, 10).map(metres)),
      solar: measured(within(0, 46).map(megajoulesPerSquareMetreDay)),
      givenEto: maybe(within(0, 15).map(millimetres)),
      lacksTemperatures: complete ? fc.constant(false) : fc.boolean(),
    })
    .map(
      ({ dayOfYear, tmax, range, dewBelow, byDewPoint, lacksTemperatures, ...rest }): WeatherDay => ({
        ...rest,
        dayOfYear,
        tmax: lacksTemperatures ? null : celsius(tmax),
        tmin: celsius(tmax - range),
        dewPoint: byDewPoint ? celsius(Math.max(-60, Math.min(35, tmax - dewBelow))) : null,
        rain: null,
      }),
    );
};

const column = (days: readonly WeatherDay[], name: Exclude<keyof WeatherDay, 'dayOfYear'>) =>
  Float64Array.from(days, (day) => day[name] ?? Number.NaN);

const columns = (days: readonly WeatherDay[]): WeatherDaySeries => ({
  dayOfYear: Uint16Array.from(days, (day) => day.dayOfYear),
  tmax: column(days, 'tmax'),
  tmin: column(days, 'tmin'),
  rhmax: column(days, 'rhmax'),
  rhmin: column(days, 'rhmin'),
  dewPoint: column(days, 'dewPoint'),
  wind: column(days, 'wind'),
  windHeight: column(days, 'windHeight'),
  solar: column(days, 'solar'),
  givenEto: column(days, 'givenEto'),
});

describe('referenceEvapotranspirationSeries', () => {
  it('gives complete days in one loop, within 1e-10 mm of the chain of functions', () => {
    fc.assert(
      fc.property(fc.array(dayOf(true), { minLength: 1, maxLength: 20 }), place, (days, station) => {
        const series = referenceEvapotranspirationSeries(columns(days), station);
        expect(series.completeDays).toBe(days.length);
        days.forEach((day, at) => {
          const chain = referenceEvapotranspiration(day, station);
          expect(chain).toMatchObject({ method: 'penman-monteith', refused: [] });
          expect(Math.abs(series.etoMm[at]! - (chain.etoMm ?? Number.NaN))).toBeLessThanOrEqual(SAME);
          expect(series.relativeSd[at]).toBe('relativeSd' in chain ? chain.relativeSd : Number.NaN);
        });
      }),
      { numRuns: 500 },
    );
  });

  it('gives days with holes what the procedures for missing data give, and NaN where they give nothing', () => {
    let [holes, unknown] = [0, 0];
    fc.assert(
      fc.property(fc.array(dayOf(false), { minLength: 1, maxLength: 20 }), place, (days, station) => {
        const series = referenceEvapotranspirationSeries(columns(days), station);
        holes += days.length - series.completeDays;
        days.forEach((day, at) => {
          const chain = referenceEvapotranspiration(day, station);
          if (chain.etoMm === null) {
            unknown += 1;
            expect([series.etoMm[at], series.relativeSd[at]]).toEqual([Number.NaN, Number.NaN]);
            return;
          }
          expect(Math.abs(series.etoMm[at]! - chain.etoMm)).toBeLessThanOrEqual(SAME);
          expect(series.relativeSd[at]).toBe(chain.relativeSd);
        });
      }),
      { numRuns: 300 },
    );
    expect(holes).toBeGreaterThan(100);
    expect(unknown).toBeGreaterThan(10);
  });

  it.each([
    ['tmax', 61],
    ['tmin', 55],
    ['dewPoint', 40],
    ['dewPoint', 34],
    ['wind', -0.1],
    ['windHeight', 0.2],
    ['solar', 47],
  ] as const)('leaves a day whose %s is %d to the slow way, which refuses it', (name, value) => {
    const station = { latitude: degrees(36), elevation: metres(100) };
    const days = columns([
      {
        dayOfYear: 200,
        tmax: celsius(33),
        tmin: celsius(17),
        rhmax: 80,
        rhmin: 30,
        dewPoint: celsius(13),
        wind: metresPerSecond(2),
        windHeight: metres(2),
        solar: megajoulesPerSquareMetreDay(26),
        rain: null,
        givenEto: millimetres(6),
      },
    ]);
    expect(referenceEvapotranspirationSeries(days, station).completeDays).toBe(1);
    const broken = { ...days, [name]: Float64Array.of(value) };
    const series = referenceEvapotranspirationSeries(broken, station);
    expect(series.completeDays).toBe(0);
    expect(series.etoMm[0]).toBeGreaterThan(4);
  });

  it('refuses a latitude and a day of the year that are none, as the single day does', () => {
    const days = columns(fc.sample(dayOf(true), { numRuns: 2, seed: 7 }));
    const refusal = (code: string) => expect.objectContaining({ code });
    expect(() => referenceEvapotranspirationSeries(days, { latitude: degrees(91), elevation: null })).toThrowError(
      refusal('LATITUDE_OUT_OF_DOMAIN'),
    );
    const [none, tooLate] = [Uint16Array.of(0, 1), Uint16Array.of(1, 367)];
    for (const dayOfYear of [none, tooLate]) {
      expect(() => referenceEvapotranspirationSeries({ ...days, dayOfYear }, { latitude: degrees(40), elevation: null })).toThrowError(
        refusal('DAY_OF_YEAR_OUT_OF_DOMAIN'),
      );
    }
  });

  it('takes the sun of a latitude that several series share', () => {
    const days = columns(fc.sample(dayOf(true), { numRuns: 50, seed: 11 }));
    const station = { latitude: degrees(-33), elevation: metres(20) };
    const shared = sunOfLatitude(station.latitude);
    expect(referenceEvapotranspirationSeries(days, station, shared)).toEqual(referenceEvapotranspirationSeries(days, station));
  });
});

describe('the tables of the kernel', () => {
  it('have the exponential to the last digits', () => {
    fc.assert(
      fc.property(within(-9.9, 3.9), (exponent) => {
        const exact = Math.exp(exponent);
        expect(Math.abs(tabulatedExponential(exponent) - exact)).toBeLessThanOrEqual(1e-15 * Math.max(1, exact));
      }),
      { numRuns: 2000 },
    );
    expect([tabulatedExponential(-11), tabulatedExponential(5)]).toEqual([Number.NaN, Number.NaN]);
  });

  it('have the power 2/5 of water from the least that the formula gives', () => {
    fc.assert(
      fc.property(within(2.1, 127), (water) => {
        expect(Math.abs(twoFifthsPower(water) - water ** 0.4)).toBeLessThanOrEqual(1e-13 * water ** 0.4);
      }),
      { numRuns: 2000 },
    );
    expect(twoFifthsPower(129)).toBeNaN();
  });
});
