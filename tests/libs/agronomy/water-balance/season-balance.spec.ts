import { type Season, seasonBalance } from '@rillbook/agronomy/water-balance/season/season-balance.js';
import { closingDepletion } from '@rillbook/agronomy/water-balance/season/closing-depletion.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOf, depth, number, perMetre, quantities } from './random-season.js';

const CLOSE = 1e-9;
const zero = millimetres(0);
const code = (found: string) => expect.objectContaining({ code: found });

const zone = {
  availableWater: perMetre(150),
  rootDepth: millimetres(400),
  rootedFraction: 1,
  tableFraction: 0.5,
  adjustsFraction: false,
  curveNumber: null,
  capillaryRise: zero,
};
const dry = (days: number, eto: number) =>
  Array.from({ length: days }, (_, day) => ({ date: dateOf(day), eto: millimetres(eto), rain: zero, plantCoefficient: 0.8 }));

/** Any season with one coefficient; evapotranspiration of a day as high as given. */
const seasons = (highest: number): fc.Arbitrary<Season> =>
  fc
    .record({
      days: fc.array(fc.record({ eto: depth(highest), rain: fc.oneof(fc.constant(zero), depth(80)), plantCoefficient: number(0, 1) }), {
        minLength: 1,
        maxLength: 90,
      }),
      zone: fc.record({
        availableWater: number(40, 250).map(perMetre),
        rootDepth: number(100, 1500).map(millimetres),
        rootedFraction: number(0.1, 1),
        tableFraction: number(0.1, 0.8),
        adjustsFraction: fc.boolean(),
        curveNumber: fc.option(number(30, 100)),
        capillaryRise: fc.oneof(fc.constant(zero), depth(2)),
      }),
      events: fc.array(fc.record({ day: fc.integer({ min: 0, max: 89 }), irrigation: depth(40) }), { maxLength: 20 }),
      dry: number(0, 1),
    })
    .map(({ days, zone: soil, events, dry: share }) => ({
      days: days.map((day, at) => ({ ...day, date: dateOf(at) })),
      zone: soil,
      events: events
        .filter(({ day }) => day < days.length)
        .map(({ day, irrigation }) => ({ date: dateOf(day), irrigation, wettedFraction: soil.rootedFraction })),
      depletion: millimetres(share * soil.rootedFraction * ((soil.availableWater * soil.rootDepth) / 1000) * (1 - 1e-12)),
    }));

describe('seasonBalance', () => {
  it('loses no water, with runoff, drainage, what rises and what falls beside the roots', () => {
    fc.assert(
      fc.property(seasons(12), (season) => {
        const { days, total } = seasonBalance(season);
        const entered = { ...total, rain: total.rain - total.rainBesideRoots };
        const wanted = closingDepletion(season.depletion, quantities(entered)) - total.shortfall;
        expect(Math.abs((days.at(-1)?.depletion ?? Number.NaN) - wanted)).toBeLessThanOrEqual(CLOSE);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps depletion within 0 and TAW, stress within 0 and 1, and every term at least 0 (FAO-56, Eq. 84 and 86)', () => {
    fc.assert(
      fc.property(seasons(12), (season) => {
        for (const day of seasonBalance(season).days) {
          const least = Math.min(day.depletion, day.deepPercolation, day.shortfall, day.runoff, day.rainBesideRoots);
          expect(least).toBeGreaterThanOrEqual(-CLOSE);
          expect(day.depletion).toBeLessThanOrEqual(day.totalAvailableWater);
          expect(day.waterStressCoefficient >= 0 && day.waterStressCoefficient <= 1).toBe(true);
          expect(day.evapotranspiration).toBeLessThanOrEqual(day.etc);
        }
      }),
    );
  });

  it('has months that sum to the whole', () => {
    fc.assert(
      fc.property(seasons(12), (season) => {
        const { months, total } = seasonBalance(season);
        for (const [name, sum] of Object.entries(total)) {
          const ofMonths = months.reduce((all, month) => all + month[name as keyof typeof total], 0);
          expect(Math.abs(ofMonths - sum)).toBeLessThanOrEqual(CLOSE);
        }
      }),
    );
  });

  it('never leaves a drier root zone because more rain fell', () => {
    // With more evapotranspiration in a day than between RAW and TAW, the step of a day is too coarse for it to hold.
    const gentle = seasons(1.5).filter(({ zone: { availableWater, rootDepth, rootedFraction, tableFraction, adjustsFraction } }) => {
      const taw = (rootedFraction * availableWater * rootDepth) / 1000;
      return (adjustsFraction ? 0.2 : 1 - tableFraction) * taw > 1.5;
    });
    fc.assert(
      fc.property(gentle, fc.nat(), depth(60), (season, at, more) => {
        const rainy = season.days.map((day, index) =>
          index === at % season.days.length ? { ...day, rain: millimetres(day.rain + more) } : day,
        );
        const [before, after] = [seasonBalance(season), seasonBalance({ ...season, days: rainy })];
        after.days.forEach(({ depletion }, day) => {
          expect(depletion).toBeLessThanOrEqual((before.days[day]?.depletion ?? Number.NaN) + CLOSE);
        });
      }),
    );
  });

  it('takes irrigation on its day, several of a day together, and drains what is too much (FAO-56, Eq. 85 and 88)', () => {
    const events = [10, 25].map((irrigation) => ({ date: dateOf(1), irrigation: millimetres(irrigation), wettedFraction: 1 }));
    const { days, total } = seasonBalance({ days: dry(3, 5), events, zone, depletion: millimetres(20) });
    expect(days.map((day) => day.depletion)).toEqual([24, 0, 4]);
    expect(days.map((day) => day.irrigation)).toEqual([0, 35, 0]);
    expect(total.deepPercolation).toBeCloseTo(7, 9);
  });

  it('slows evapotranspiration below RAW (FAO-56, Eq. 84)', () => {
    const { days } = seasonBalance({ days: dry(2, 5), events: [], zone, depletion: millimetres(45) });
    expect(days[0]?.waterStressCoefficient).toBeCloseTo(0.5, 12);
    expect(days[0]?.evapotranspiration).toBeCloseTo(2, 12);
    expect(days[1]?.waterStressCoefficient).toBeCloseTo((60 - 47) / 30, 12);
  });

  it('holds in the wetted share of drip only that share of water, and of rain', () => {
    const drip = { ...zone, rootedFraction: 0.4 };
    const days = [{ date: dateOf(0), eto: millimetres(5), rain: millimetres(20), plantCoefficient: 0.5 }];
    const { total, days: done } = seasonBalance({ days, events: [], zone: drip, depletion: millimetres(10) });
    expect(done[0]?.totalAvailableWater).toBeCloseTo(24, 12);
    expect(total.rainBesideRoots).toBeCloseTo(12, 12);
    expect(done[0]?.depletion).toBeCloseTo(10 - 8 + 2.5, 12);
  });

  it('lets a storm run off by curve number, and ignores a trace (TR-55; FAO-56, chapter 8)', () => {
    const days = [76.2, 0.9].map((rain, day) => ({
      date: dateOf(day),
      eto: millimetres(5),
      rain: millimetres(rain),
      plantCoefficient: 0.5,
    }));
    const { days: done } = seasonBalance({ days, events: [], zone: { ...zone, curveNumber: 80 }, depletion: millimetres(30) });
    // TR-55, Table 2-1: 3 in on curve number 80 give 1.25 in.
    expect(done[0]?.runoff).toBeCloseTo(1.25 * 25.4, 0);
    expect(done[1]?.rainBesideRoots).toBeCloseTo(0.9, 12);
  });

  it('counts the days of each month', () => {
    const { months } = seasonBalance({ days: dry(20, 5), events: [], zone, depletion: zero });
    expect(months.map(({ month, dayCount, eto }) => [month, dayCount, eto])).toEqual([
      ['2026-02', 9, 45],
      ['2026-03', 11, 55],
    ]);
  });

  it('refuses what cannot be, by code', () => {
    const good: Season = { days: dry(3, 5), events: [], zone, depletion: zero };
    const refused = (change: Partial<Season>, wanted: string) =>
      expect(() => seasonBalance({ ...good, ...change })).toThrowError(code(wanted));
    refused({ zone: { ...zone, rootedFraction: 0 } }, 'SEASON_OUT_OF_DOMAIN');
    refused({ zone: { ...zone, tableFraction: 1.2 } }, 'SEASON_OUT_OF_DOMAIN');
    refused({ zone: { ...zone, curveNumber: 120 } }, 'CURVE_NUMBER_OUT_OF_DOMAIN');
    refused({ depletion: millimetres(61) }, 'SEASON_OUT_OF_DOMAIN');
    refused({ days: dry(3, -1) }, 'SEASON_OUT_OF_DOMAIN');
    refused({ days: [...dry(3, 5)].reverse() }, 'SEASON_DATES_OUT_OF_ORDER');
    refused({ events: [{ date: dateOf(9), irrigation: millimetres(5), wettedFraction: 1 }] }, 'IRRIGATION_EVENT_OUT_OF_DOMAIN');
  });
});
