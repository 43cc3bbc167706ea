import { daysUntilNeed } from '@rillbook/agronomy/water-balance/root-zone/days-until-need.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const dry = (days: number, eto: number) => ({ eto: new Array<number>(days).fill(eto), rain: new Array<number>(days).fill(0) });
const root = (raw: number, depletion: number, plantCoefficient = 1) => ({
  plantCoefficient,
  readilyAvailableWater: millimetres(raw),
  depletion: millimetres(depletion),
});

describe('days until a root zone needs irrigation', () => {
  it('reproduces the interval of FAO-56: readily available water over crop evapotranspiration', () => {
    // FAO-56, chapter 8, Eq. 85 without rain: RAW 25 mm at 5 mm/d lasts 5 days; the sixth would go below it.
    expect(daysUntilNeed(root(25, 0), dry(14, 5))).toBe(5);
    expect(daysUntilNeed(root(25, 25), dry(14, 5))).toBe(0);
    expect(daysUntilNeed(root(25, 0, 0.5), dry(14, 5))).toBe(10);
  });

  it('counts rain that is told, and leaves a trace out as FAO-56 does below 0.2 ETo', () => {
    const days = dry(14, 5);
    expect(daysUntilNeed(root(25, 20), { ...days, rain: days.rain.map((_, day) => (day === 0 ? 10 : 0)) })).toBe(3);
    expect(daysUntilNeed(root(25, 20), { ...days, rain: days.rain.map(() => 1) })).toBe(1);
  });

  it('says all days where none needs water, and never fewer for a deeper root zone', () => {
    expect(daysUntilNeed(root(100, 0), dry(7, 1))).toBe(7);
    fc.assert(
      fc.property(
        fc.array(fc.record({ eto: fc.double({ min: 0, max: 12, noNaN: true }), rain: fc.double({ min: 0, max: 30, noNaN: true }) })),
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (days, raw, more) => {
          const ahead = { eto: days.map(({ eto }) => eto), rain: days.map(({ rain }) => rain) };
          expect(daysUntilNeed(root(raw + more, raw), ahead)).toBeGreaterThanOrEqual(daysUntilNeed(root(raw, raw), ahead));
        },
      ),
    );
  });

  it('refuses what is no root zone and no weather', () => {
    const code = (act: () => unknown) => {
      try {
        act();
      } catch (error) {
        return (error as { code: string }).code;
      }
      return null;
    };
    expect(code(() => daysUntilNeed(root(-1, 0), dry(1, 5)))).toBe('ROOT_ZONE_OUT_OF_DOMAIN');
    expect(code(() => daysUntilNeed(root(10, 0), { eto: [5], rain: [] }))).toBe('WEATHER_SERIES_OUT_OF_DOMAIN');
    expect(code(() => daysUntilNeed(root(10, 0), { eto: [Number.NaN], rain: [0] }))).toBe('WEATHER_SERIES_OUT_OF_DOMAIN');
  });
});
