import { adjustedBasalCoefficient } from '@rillbook/agronomy/water-balance/canopy/adjusted-basal-coefficient.js';
import { canopyCover } from '@rillbook/agronomy/water-balance/canopy/canopy-cover.js';
import { canopyDay } from '@rillbook/agronomy/water-balance/canopy/canopy-day.js';
import { canopySeries } from '@rillbook/agronomy/water-balance/canopy/canopy-series.js';
import { establishedPlants, plantsInClimate } from '@rillbook/agronomy/water-balance/canopy/growing-plants.js';
import { developedShare, stageCoefficient } from '@rillbook/agronomy/water-balance/canopy/growth-stages.js';
import { climateTerm, heightFactor, maximumCropCoefficient } from '@rillbook/agronomy/water-balance/canopy/maximum-crop-coefficient.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dualSeasons } from './random-season.js';

const code = (found: string) => expect.objectContaining({ code: found });
const stages = { initialDays: 20, developmentDays: 40, midDays: 50, lateDays: 10 };

describe('growth stages (FAO-56, Eq. 66)', () => {
  it('are level, rise, stay, and fall in straight lines', () => {
    const kc = { initial: 0.2, mid: 1.2, end: 0.6 };
    const at = [0, 20, 40, 60, 110, 115, 120, 200].map((day) => Number(stageCoefficient(day, stages, kc).toFixed(12)));
    expect(at).toEqual([0.2, 0.2, 0.7, 1.2, 1.2, 0.9, 0.6, 0.6]);
  });

  it('develop once and stay so', () => {
    expect([0, 20, 30, 60, 119].map((day) => developedShare(day, stages))).toEqual([0, 0, 0.25, 1, 1]);
  });

  it('refuse a day before the first and a stage of no length that is a number', () => {
    expect(() => developedShare(-1, stages)).toThrowError(code('GROWTH_STAGES_OUT_OF_DOMAIN'));
    expect(() => developedShare(1, { ...stages, midDays: Number.NaN })).toThrowError(code('GROWTH_STAGES_OUT_OF_DOMAIN'));
  });
});

describe('coefficients and the air (FAO-56, Eq. 70 and 72)', () => {
  it('the tables hold at 2 m/s and 45 %, and drier and windier air raises the limit', () => {
    expect(climateTerm(metresPerSecond(2), 45)).toBe(0);
    expect(climateTerm(metresPerSecond(4), 25)).toBeCloseTo(0.16, 12);
    expect(maximumCropCoefficient(0, 1, 0.4)).toBe(1.2);
    expect(maximumCropCoefficient(0, 1, 1.2)).toBe(1.25);
  });

  it('hold wind within 1 to 6 m/s and humidity within 20 to 80 %', () => {
    expect(climateTerm(metresPerSecond(0), 45)).toBe(climateTerm(metresPerSecond(1), 45));
    expect(climateTerm(metresPerSecond(15), 5)).toBe(climateTerm(metresPerSecond(6), 20));
    expect(climateTerm(metresPerSecond(2), 99)).toBe(climateTerm(metresPerSecond(2), 80));
  });

  it('adjust a basal coefficient from 0.45 on', () => {
    expect(adjustedBasalCoefficient(0.44, 0.2, 1)).toBe(0.44);
    expect(adjustedBasalCoefficient(0.45, 0.2, 0.5)).toBeCloseTo(0.55, 12);
    expect(heightFactor(metres(3))).toBe(1);
  });

  it('adjust plants in mid-season and at the end, not at the start', () => {
    const plants = { ...establishedPlants(0.6, metres(3), millimetres(300)), basalCoefficients: { initial: 0.5, mid: 1.1, end: 0.3 } };
    expect(plantsInClimate(plants, 0.1).basalCoefficients).toEqual({ initial: 0.5, mid: 1.1 + 0.1, end: 0.3 });
  });

  it('refuse wind and height below nothing', () => {
    expect(() => climateTerm(metresPerSecond(-1), 45)).toThrowError(code('WEATHER_OUT_OF_DOMAIN'));
    expect(() => heightFactor(metres(-1))).toThrowError(code('PLANT_HEIGHT_OUT_OF_DOMAIN'));
  });
});

describe('cover (FAO-56, Eq. 76)', () => {
  const cover = (basalCoefficient: number) =>
    canopyCover({ basalCoefficient, minimumCoefficient: 0.15, maximumCoefficient: 1.15 }, metres(0));

  it('grows with the coefficient, from none to nearly all', () => {
    expect(cover(0.1)).toBe(0);
    expect(cover(0.65)).toBeCloseTo(0.5, 12);
    expect(cover(1.15)).toBe(0.99);
  });

  it.each([
    [{ basalCoefficient: Number.NaN, minimumCoefficient: 0.15, maximumCoefficient: 1.15 }, 1, 'CROP_COEFFICIENT_OUT_OF_DOMAIN'],
    [{ basalCoefficient: -0.1, minimumCoefficient: 0.15, maximumCoefficient: 1.15 }, 1, 'CROP_COEFFICIENT_OUT_OF_DOMAIN'],
    [
      { basalCoefficient: 0.5, minimumCoefficient: 0.15, maximumCoefficient: Number.POSITIVE_INFINITY },
      1,
      'CROP_COEFFICIENT_OUT_OF_DOMAIN',
    ],
    [{ basalCoefficient: 0.5, minimumCoefficient: 0.15, maximumCoefficient: 1.15 }, -2, 'PLANT_HEIGHT_OUT_OF_DOMAIN'],
  ] as const)('of %j and %d m is refused', (coefficients, height, code) => {
    expect(() => canopyCover(coefficients, height as never)).toThrowError(expect.objectContaining({ code }));
  });

  it('of tall plants is less than of low ones with the same coefficient', () => {
    const coefficients = { basalCoefficient: 0.65, minimumCoefficient: 0.15, maximumCoefficient: 1.15 };
    expect(canopyCover(coefficients, metres(2))).toBeCloseTo(0.25, 12);
  });
});

describe('canopySeries', () => {
  it('is what canopyDay gives, day by day, for any plants and air', () => {
    fc.assert(
      fc.property(dualSeasons, ({ plants, days }) => {
        const series = canopySeries(
          plants,
          days.map(({ windSpeedAt2M, minimumHumidity }) => climateTerm(windSpeedAt2M, minimumHumidity)),
        );
        days.forEach((air, at) => {
          const day = canopyDay(plants, at, air);
          for (const name of ['basalCoefficient', 'maximumCoefficient', 'canopyCover', 'rootDepth'] as const) {
            expect(series[name][at]).toBe(day[name]);
          }
        });
      }),
    );
  });

  it('of established plants changes only with the air', () => {
    const series = canopySeries(establishedPlants(0.6, metres(0.5), millimetres(300)), [0, 0.1, 0]);
    expect([...series.basalCoefficient]).toEqual([0.6, 0.6, 0.6]);
    expect([...series.rootDepth]).toEqual([300, 300, 300]);
    expect(series.maximumCoefficient[1]).toBeGreaterThan(series.maximumCoefficient[0] ?? Number.NaN);
    expect(series.canopyCover[2]).toBe(series.canopyCover[0]);
  });

  it('refuses a day whose air is not known', () => {
    expect(() => canopySeries(establishedPlants(0.6, metres(0.5), millimetres(300)), [0, Number.NaN])).toThrowError(
      code('WEATHER_SERIES_OUT_OF_DOMAIN'),
    );
  });
});
