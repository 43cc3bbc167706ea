import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import type { WeatherStation } from '@rillbook/agronomy/weather/weather-station.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
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
  dewPoint: celsius(13),
  wind: metresPerSecond(2),
  windHeight: metres(2),
  solar: megajoulesPerSquareMetreDay(26),
  rain: millimetres(0),
  givenEto: null,
};
const nothing = { rhmax: null, rhmin: null, dewPoint: null, wind: null, windHeight: null, solar: null } as const;
const etoOf = (day: WeatherDay, at: WeatherStation = station): number => referenceEvapotranspiration(day, at).etoMm ?? Number.NaN;

describe('referenceEvapotranspiration: the method follows what is there', () => {
  it('assumes nothing where all was measured', () => {
    expect(referenceEvapotranspiration(summer, station)).toMatchObject({
      method: 'penman-monteith',
      assumed: [],
      refused: [],
      relativeSd: 0.08,
    });
  });

  it('names each input that had to be assumed, and is less sure with each', () => {
    const unknown = { ...summer, dewPoint: null, rhmax: null, rhmin: null, wind: null };
    const answer = referenceEvapotranspiration(unknown, { ...station, elevation: null });
    expect(answer).toMatchObject({ method: 'penman-monteith', assumed: ['humidity', 'wind', 'elevation'] });
    expect('relativeSd' in answer && answer.relativeSd).toBeCloseTo(Math.hypot(0.08, 0.06, 0.07, 0.03), 12);
    expect(referenceEvapotranspiration({ ...summer, solar: null }, station)).toMatchObject({ assumed: ['solar-radiation'] });
    expect(referenceEvapotranspiration({ ...summer, windHeight: null }, station)).toMatchObject({ assumed: ['wind-height'] });
  });

  it('takes either humidity alone as measured', () => {
    for (const blank of [{ rhmin: null }, { rhmax: null }, {}]) {
      expect(referenceEvapotranspiration({ ...summer, dewPoint: null, ...blank }, station)).toMatchObject({
        method: 'penman-monteith',
        assumed: [],
      });
    }
  });

  it('computes by Hargreaves-Samani from temperatures alone', () => {
    const answer = referenceEvapotranspiration({ ...summer, ...nothing }, station);
    expect(answer).toMatchObject({ method: 'hargreaves-samani', relativeSd: 0.2 });
    expect(answer.etoMm).toBeGreaterThan(4);
  });

  it('takes the surer one of what is given and what can be computed', () => {
    const givenEto = millimetres(6.1);
    const methodOf = (blank: Partial<WeatherDay>) => {
      const answer = referenceEvapotranspiration({ ...summer, givenEto, ...blank }, station);
      return 'method' in answer ? [answer.method, answer.relativeSd] : null;
    };
    // A source's own value is taken to be off by 10 %, the combination equation by 8 % and by what each assumption adds.
    expect(methodOf({})).toEqual(['penman-monteith', 0.08]);
    expect(methodOf({ windHeight: null })).toEqual(['penman-monteith', Math.hypot(0.08, 0.03)]);
    expect(methodOf({ dewPoint: null, rhmax: null, rhmin: null })).toEqual(['penman-monteith', 0.1]);
    expect(methodOf({ wind: null })).toEqual(['given', 0.1]);
    expect(methodOf({ ...nothing, wind: summer.wind, windHeight: summer.windHeight })).toEqual(['given', 0.1]);
    expect(methodOf(nothing)).toEqual(['given', 0.1]);
    expect(referenceEvapotranspiration({ ...summer, tmax: null, givenEto }, station)).toMatchObject({ method: 'given', etoMm: 6.1 });
  });

  it('gives null and the reason where nothing suffices', () => {
    expect(referenceEvapotranspiration({ ...summer, tmin: null }, station)).toEqual({
      etoMm: null,
      reason: 'no-temperatures',
      refused: [],
    });
    const swapped = { ...summer, tmax: summer.tmin, tmin: summer.tmax };
    const [hot, cold] = [
      { ...summer, tmax: celsius(75) },
      { ...summer, tmin: celsius(-75) },
    ];
    for (const day of [swapped, hot, cold])
      expect(referenceEvapotranspiration(day, station)).toMatchObject({ etoMm: null, reason: 'temperatures-refused' });
  });

  it('sets impossible values aside, names them, and goes on with the rest', () => {
    const broken = { ...summer, solar: megajoulesPerSquareMetreDay(260), wind: metresPerSecond(-1) };
    expect(referenceEvapotranspiration(broken, station)).toMatchObject({
      refused: ['wind', 'solar'],
      assumed: ['wind', 'solar-radiation'],
    });
  });

  it('refuses a latitude that is none, by code', () => {
    expect(() => referenceEvapotranspiration(summer, { ...station, latitude: degrees(95) })).toThrowError(
      expect.objectContaining({ code: 'LATITUDE_OUT_OF_DOMAIN' }),
    );
  });
});

describe('referenceEvapotranspiration: physics', () => {
  const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it('grows with solar radiation', () => {
    fc.assert(
      fc.property(within(8, 30), within(0.1, 5), (solar, more) => {
        const eto = (value: number) => etoOf({ ...summer, solar: megajoulesPerSquareMetreDay(value) });
        expect(eto(solar + more)).toBeGreaterThan(eto(solar));
      }),
    );
  });

  it("grows with the day's highest temperature in dry summer air", () => {
    fc.assert(
      fc.property(within(22, 40), within(0.1, 5), (tmax, more) => {
        expect(etoOf({ ...summer, tmax: celsius(tmax + more) })).toBeGreaterThan(etoOf({ ...summer, tmax: celsius(tmax) }));
      }),
    );
  });

  it('shrinks as the air gets moister by the same sun, wind and warmth, clear-sky radiation aside', () => {
    fc.assert(
      fc.property(within(-5, 14), within(0.5, 3), (dewPoint, more) => {
        expect(etoOf({ ...summer, dewPoint: celsius(dewPoint + more) })).toBeLessThan(
          etoOf({ ...summer, dewPoint: celsius(dewPoint) }) + 0.1,
        );
      }),
    );
  });

  it('is finite and never negative, whatever plausible weather comes, from pole to pole', () => {
    const value = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: null });
    const anyDay = fc.record({
      dayOfYear: fc.integer({ min: 1, max: 366 }),
      tmax: value(within(-40, 50).map(celsius)),
      tmin: value(within(-50, 40).map(celsius)),
      rhmax: value(within(0, 120)),
      rhmin: value(within(-5, 105)),
      dewPoint: value(within(-50, 40).map(celsius)),
      wind: value(within(-1, 40).map(metresPerSecond)),
      windHeight: value(within(0.1, 20).map(metres)),
      solar: value(within(-1, 45).map(megajoulesPerSquareMetreDay)),
      rain: value(within(0, 200).map(millimetres)),
      givenEto: value(within(0, 15).map(millimetres)),
    });
    const anywhere = fc.record({ latitude: within(-90, 90).map(degrees), elevation: value(within(-100, 5000).map(metres)) });
    fc.assert(
      fc.property(anyDay, anywhere, (day, place) => {
        const answer = referenceEvapotranspiration(day, place);
        if (answer.etoMm === null) expect(answer.reason).toMatch(/^(no-temperatures|temperatures-refused)$/);
        else {
          expect(Number.isFinite(answer.etoMm) && answer.etoMm >= 0).toBe(true);
          expect(answer.relativeSd).toBeGreaterThan(0);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
