import { establishedPlants } from '@rillbook/agronomy/water-balance/canopy/growing-plants.js';
import { dualDay } from '@rillbook/agronomy/water-balance/dual/dual-day.js';
import { type DualSeason, dualSeason } from '@rillbook/agronomy/water-balance/dual/dual-season.js';
import { dualZoneOfTexture } from '@rillbook/agronomy/water-balance/dual/dual-zone-of-texture.js';
import { soilTextures } from '@rillbook/agronomy/soil/soil-texture.js';
import { irrigationBy } from '@rillbook/agronomy/water-balance/season/irrigation-event.js';
import { closingDepletion } from '@rillbook/agronomy/water-balance/season/closing-depletion.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOf, depth, dualSeasons, kernelSeason, number, perMetre, quantities } from './random-season.js';

const CLOSE = 1e-9;
const columns = ['evaporation', 'transpiration', 'runoff', 'surfaceDepletion', 'depletion', 'deepPercolation', 'shortfall'] as const;

describe('dualSeason', () => {
  it('loses no water, with runoff, drainage and what rises', () => {
    fc.assert(
      fc.property(dualSeasons, (season) => {
        const { days, total } = dualSeason(season);
        const wanted = closingDepletion(season.start.depletion, quantities(total)) - total.shortfall;
        expect(Math.abs((days.at(-1)?.depletion ?? Number.NaN) - wanted)).toBeLessThanOrEqual(CLOSE);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps surface layer, root zone and coefficients within their limits (FAO-56, Eq. 74, 75, 78, 84 and 86)', () => {
    fc.assert(
      fc.property(dualSeasons, (season) => {
        for (const day of dualSeason(season).days) {
          expect(Math.min(day.depletion, day.surfaceDepletion, day.runoff, day.deepPercolation, day.shortfall)).toBeGreaterThanOrEqual(0);
          expect(day.depletion).toBeLessThanOrEqual(day.totalAvailableWater);
          expect(day.surfaceDepletion).toBeLessThanOrEqual(season.zone.totalEvaporableWater);
          expect(day.runoff).toBeLessThanOrEqual(day.rain);
          for (const share of [day.waterStressCoefficient, day.evaporationReduction, day.canopyCover, day.exposedWettedFraction]) {
            expect(share >= 0 && share <= 1).toBe(true);
          }
          expect(day.etc).toBeLessThanOrEqual(day.maximumCoefficient * day.eto + CLOSE);
        }
      }),
    );
  });

  it('has months that sum to the whole, and evaporation and transpiration that sum to evapotranspiration', () => {
    fc.assert(
      fc.property(dualSeasons, (season) => {
        const { months, total, days } = dualSeason(season);
        for (const [name, sum] of Object.entries(total)) {
          const ofMonths = months.reduce((all, month) => all + month[name as keyof typeof total], 0);
          expect(Math.abs(ofMonths - sum)).toBeLessThanOrEqual(CLOSE);
        }
        expect(months.reduce((all, { dayCount }) => all + dayCount, 0)).toBe(days.length);
        expect(Math.abs(total.evaporation + total.transpiration - total.evapotranspiration)).toBeLessThanOrEqual(CLOSE);
      }),
    );
  });

  it('takes no water out of the surface layer that was not in it, as long as it does not dry out (FAO-56, Eq. 77)', () => {
    fc.assert(
      fc.property(dualSeasons, (season) => {
        let before = season.start.surfaceDepletion;
        for (const day of dualSeason(season).days) {
          const wetting = day.rain - day.runoff + day.irrigation / day.wettedFraction;
          const wanted = before - wetting + day.evaporation / day.exposedWettedFraction + day.surfacePercolation;
          const held = day.surfaceDepletion === season.zone.totalEvaporableWater;
          expect(held ? wanted >= day.surfaceDepletion - CLOSE : Math.abs(wanted - day.surfaceDepletion) <= CLOSE).toBe(true);
          before = day.surfaceDepletion;
        }
      }),
    );
  });
});

describe('mulch in the dual balance', () => {
  it('never raises the evaporation of a day, whatever the day finds (FAO-56, chapter 11)', () => {
    fc.assert(
      fc.property(dualSeasons, number(0, 1), number(0, 1), (season, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        for (const day of dualSeason(season).days) {
          const input = { ...day, irrigatedFraction: 0.5, canopy: day };
          const state = { ...season.start };
          const ofCover = (mulchCover: number) => dualDay(state, input, { ...season.zone, mulchCover }).evaporation;
          expect(ofCover(more)).toBeLessThanOrEqual(ofCover(less));
        }
      }),
    );
  });

  it('never raises the evaporation of a season whose ground does not dry within a day', () => {
    const days = fc.array(fc.record({ eto: depth(6), rain: fc.oneof(fc.constant(millimetres(0)), depth(40)) }), {
      minLength: 5,
      maxLength: 60,
    });
    fc.assert(
      fc.property(days, number(0, 1), (weather, mulchCover) => {
        const season = (cover: number): DualSeason => ({
          days: weather.map((day, at) => ({ ...day, date: dateOf(at), windSpeedAt2M: metresPerSecond(2), minimumHumidity: 45 })),
          events: [],
          plants: establishedPlants(0.15, metres(0.1), millimetres(300)),
          zone: { ...loam, mulchCover: cover },
          start: { surfaceDepletion: millimetres(0), depletion: millimetres(0), wettedFraction: 1 },
        });
        expect(dualSeason(season(mulchCover)).total.evaporation).toBeLessThanOrEqual(dualSeason(season(0)).total.evaporation + CLOSE);
      }),
    );
  });

  it('saves water under half a cover where rain keeps the ground wet: less evaporates, less is missing at the end', () => {
    const season = (mulchCover: number): DualSeason => ({
      days: Array.from({ length: 30 }, (_, at) => ({
        date: dateOf(at),
        eto: millimetres(5),
        rain: millimetres(at % 2 === 0 ? 10 : 0),
        windSpeedAt2M: metresPerSecond(2),
        minimumHumidity: 45,
      })),
      events: [],
      plants: establishedPlants(0.15, metres(0.1), millimetres(1000)),
      zone: { ...loam, mulchCover },
      start: { surfaceDepletion: millimetres(0), depletion: millimetres(150), wettedFraction: 1 },
    });
    const [bare, mulched] = [dualSeason(season(0)), dualSeason(season(0.5))];
    expect(mulched.total.evaporation).toBeLessThan(bare.total.evaporation - 1);
    expect(mulched.days.at(-1)?.depletion ?? Number.NaN).toBeLessThan((bare.days.at(-1)?.depletion ?? Number.NaN) - 1);
  });
});

describe('a zone of which little is known', () => {
  const season = (method: 'drip' | 'sprinkler', mulchCover: number) => {
    const days = Array.from({ length: 60 }, (_, at) => ({
      date: dateOf(at),
      eto: millimetres(6),
      rain: millimetres(0),
      windSpeedAt2M: metresPerSecond(2),
      minimumHumidity: 40,
    }));
    const zone = dualZoneOfTexture('loam', 0.5, mulchCover);
    const events = days.filter((_, at) => at % 3 === 0).map(({ date }) => irrigationBy(date, millimetres(12), method));
    const start = { surfaceDepletion: zone.totalEvaporableWater, depletion: millimetres(20), wettedFraction: 1 };
    return dualSeason({ days, events, plants: establishedPlants(0.4, metres(0.6), millimetres(500)), zone, start });
  };

  it('evaporates less from drip than from sprinklers, and less under mulch; the plants transpire the same', () => {
    const [sprinkled, dripped, mulched] = [season('sprinkler', 0), season('drip', 0), season('drip', 0.8)];
    expect(dripped.total.evaporation).toBeLessThan(0.8 * sprinkled.total.evaporation);
    expect(mulched.total.evaporation).toBeLessThan(0.9 * dripped.total.evaporation);
    expect(mulched.total.transpiration).toBeCloseTo(60 * 0.4 * 6, 9);
  });

  it('evaporates freely only part of what can evaporate, for every texture (FAO-56, Table 19, from memory)', () => {
    for (const texture of soilTextures) {
      const { readilyEvaporableWater, totalEvaporableWater } = dualZoneOfTexture(texture, 0.5, 0);
      expect(readilyEvaporableWater).toBeGreaterThan(2);
      expect(totalEvaporableWater).toBeGreaterThan(readilyEvaporableWater);
      expect(totalEvaporableWater).toBeLessThanOrEqual(29);
    }
  });
});

describe('runDualBalance', () => {
  it('writes what the chain of days gives, to 1e-9 mm, for any zone', () => {
    fc.assert(
      fc.property(dualSeasons, (season) => {
        const written = kernelSeason(season);
        dualSeason(season).days.forEach((day, at) => {
          for (const name of columns) expect(Math.abs((written[name][at] ?? Number.NaN) - day[name])).toBeLessThanOrEqual(CLOSE);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('lets a value that is not a number show', () => {
    const [season] = fc.sample(dualSeasons, { numRuns: 1, seed: 7 });
    if (!season) throw new Error('no season was made');
    const spoiled = { ...season, days: season.days.map((day) => ({ ...day, eto: Number.NaN as typeof day.eto })) };
    expect(kernelSeason(spoiled).depletion.at(-1)).toBeNaN();
  });
});

describe('dualSeason, refusals by code', () => {
  const [good] = fc.sample(dualSeasons, { numRuns: 1, seed: 11 });
  if (!good) throw new Error('no season was made');
  const last = good.days.at(-1)?.date ?? '';
  const cases: readonly (readonly [string, string, Partial<DualSeason>])[] = [
    ['a surface layer without water', 'DUAL_ZONE_OUT_OF_DOMAIN', { zone: { ...good.zone, totalEvaporableWater: millimetres(0) } }],
    ['ground that nothing wetted', 'DUAL_ZONE_OUT_OF_DOMAIN', { start: { ...good.start, wettedFraction: 0 } }],
    ['roots that shrink', 'SEASON_OUT_OF_DOMAIN', { plants: { ...good.plants, fullRootDepth: millimetres(1) } }],
    ['more missing than roots hold', 'SEASON_OUT_OF_DOMAIN', { start: { ...good.start, depletion: millimetres(5000) } }],
    ['rain below nothing', 'SEASON_OUT_OF_DOMAIN', { days: good.days.map((day) => ({ ...day, rain: millimetres(-1) })) }],
    ['evapotranspiration below nothing', 'SEASON_OUT_OF_DOMAIN', { days: good.days.map((day) => ({ ...day, eto: millimetres(-1) })) }],
    ['a day that comes twice', 'SEASON_DATES_OUT_OF_ORDER', { days: [...good.days, ...good.days.slice(-1)] }],
    [
      'irrigation outside the season',
      'IRRIGATION_EVENT_OUT_OF_DOMAIN',
      { events: [{ date: '2020-01-01', irrigation: millimetres(5), wettedFraction: 1 }] },
    ],
    [
      'irrigation that wets nothing',
      'IRRIGATION_EVENT_OUT_OF_DOMAIN',
      { events: [{ date: last, irrigation: millimetres(5), wettedFraction: 0 }] },
    ],
    ['a mulch over more than all', 'DUAL_ZONE_OUT_OF_DOMAIN', { zone: { ...good.zone, mulchCover: 1.1 } }],
  ];

  it.each(cases)('%s', (_, code, change) => {
    expect(() => dualSeason({ ...good, ...change })).toThrowError(expect.objectContaining({ code }));
  });
});

const loam = {
  totalEvaporableWater: millimetres(20),
  readilyEvaporableWater: millimetres(9),
  availableWater: perMetre(170),
  tableFraction: 0.5,
  mulchCover: 0,
  curveNumber: null,
  capillaryRise: millimetres(0),
};
