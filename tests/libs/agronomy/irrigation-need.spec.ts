import { irrigationNeed, WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { runIrrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.kernel.js';
import { countedRain, effectiveRain } from '@rillbook/agronomy/water-balance/rain/effective-rain.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyDay = fc.record({ eto: within(0, 12), rain: fc.oneof(fc.constant(0), within(0, 80)) });
const anyZone = fc.record({ plantCoefficient: within(0, 1.2), readilyAvailableWater: within(0, 120).map(millimetres) });
const weatherOf = (days: readonly { eto: number; rain: number }[]) => ({
  eto: days.map((day) => day.eto),
  rain: days.map((day) => day.rain),
});
const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((total, value) => total + value, 0);

describe('irrigationNeed', () => {
  const zone = { plantCoefficient: 0.8, readilyAvailableWater: millimetres(20) };

  it('starts at RAW, so that without rain the need is ETc day by day', () => {
    const need = irrigationNeed({ eto: [5, 6], rain: [0, 0] }, zone, 0);
    expect(Array.from(need.irrigationMm)).toEqual([4, 5.6 * 0.8 + 6 * 0.8 - 5.6 * 0.8].map((value) => expect.closeTo(value, 12)));
    expect(need.finalDepletionMm).toBe(20);
  });

  it('stores rain and asks for nothing until it is used (common practice of a checkbook balance, arithmetic)', () => {
    const need = irrigationNeed({ eto: [5, 5, 5, 5], rain: [11, 0, 0, 0] }, zone, 0);
    expect(Array.from(need.irrigationMm)).toEqual([0, 0, 1, 4].map((value) => expect.closeTo(value, 12)));
    expect(need.effectiveRainMm[0]).toBe(11);
  });

  it('loses rain for which there is no room', () => {
    const need = irrigationNeed({ eto: [5], rain: [60] }, zone, 0);
    expect(need.effectiveRainMm[0]).toBe(24);
    expect(need.finalDepletionMm).toBe(0);
  });

  it('ignores a trace of rain: exactly 0.2 ETo does not count, more does (FAO-56, chapter 8)', () => {
    expect(irrigationNeed({ eto: [5], rain: [1] }, zone, 0).effectiveRainMm[0]).toBe(0);
    expect(irrigationNeed({ eto: [5], rain: [1.01] }, zone, 0).effectiveRainMm[0]).toBe(1.01);
  });

  it('gives only the days asked for, and how long the warm-up was', () => {
    const days = WARM_UP_DAYS + 2;
    const need = irrigationNeed({ eto: new Array(days).fill(5), rain: new Array(days).fill(0) }, zone, WARM_UP_DAYS);
    expect(need.irrigationMm.length).toBe(2);
    expect(need.warmUpDays).toBe(90);
  });

  it('refuses broken series and root zones by code', () => {
    const code = (found: string) => expect.objectContaining({ code: found });
    expect(() => irrigationNeed({ eto: [5], rain: [] }, zone, 0)).toThrowError(code('WEATHER_SERIES_OUT_OF_DOMAIN'));
    expect(() => irrigationNeed({ eto: [5], rain: [0] }, zone, 2)).toThrowError(code('WEATHER_SERIES_OUT_OF_DOMAIN'));
    expect(() => irrigationNeed({ eto: [Number.NaN], rain: [0] }, zone, 0)).toThrowError(code('WEATHER_SERIES_OUT_OF_DOMAIN'));
    expect(() => irrigationNeed({ eto: [5], rain: [-1] }, zone, 0)).toThrowError(code('WEATHER_SERIES_OUT_OF_DOMAIN'));
    expect(() => irrigationNeed({ eto: [5], rain: [0] }, { ...zone, plantCoefficient: -1 }, 0)).toThrowError(
      code('ROOT_ZONE_OUT_OF_DOMAIN'),
    );
  });
});

describe('irrigationNeed in any weather', () => {
  it('conserves water: what came in less what was used is what the depletion changed by', () => {
    fc.assert(
      fc.property(fc.array(anyDay, { maxLength: 400 }), anyZone, (days, rootZone) => {
        const need = irrigationNeed(weatherOf(days), rootZone, 0);
        const used = rootZone.plantCoefficient * sum(days.map((day) => day.eto));
        const end = rootZone.readilyAvailableWater + used - sum(need.effectiveRainMm) - sum(need.irrigationMm);
        expect(end).toBeCloseTo(need.finalDepletionMm, 7);
      }),
    );
  });

  it('is never negative, and depletion stays between 0 and RAW', () => {
    fc.assert(
      fc.property(fc.array(anyDay, { maxLength: 200 }), anyZone, (days, rootZone) => {
        const need = irrigationNeed(weatherOf(days), rootZone, 0);
        expect(need.irrigationMm.every((value) => value >= 0)).toBe(true);
        expect(need.finalDepletionMm).toBeGreaterThanOrEqual(0);
        expect(need.finalDepletionMm).toBeLessThanOrEqual(rootZone.readilyAvailableWater);
      }),
    );
  });

  it('never needs more because more rain fell', () => {
    const rainier = fc.array(fc.tuple(anyDay, fc.oneof(fc.constant(0), within(0, 40))), { maxLength: 200 });
    fc.assert(
      fc.property(rainier, anyZone, (days, rootZone) => {
        const dry = weatherOf(days.map(([day]) => day));
        const wet = { eto: dry.eto, rain: days.map(([day, more]) => day.rain + more) };
        const less = sum(irrigationNeed(wet, rootZone, 0).irrigationMm);
        expect(less).toBeLessThanOrEqual(sum(irrigationNeed(dry, rootZone, 0).irrigationMm) + 1e-9);
      }),
    );
  });

  it('never needs less because plants need more', () => {
    fc.assert(
      fc.property(fc.array(anyDay, { maxLength: 200 }), anyZone, within(0, 0.5), (days, rootZone, more) => {
        const thirstier = { ...rootZone, plantCoefficient: rootZone.plantCoefficient + more };
        const need = sum(irrigationNeed(weatherOf(days), rootZone, 0).irrigationMm);
        expect(sum(irrigationNeed(weatherOf(days), thirstier, 0).irrigationMm)).toBeGreaterThanOrEqual(need - 1e-9);
      }),
    );
  });
});

describe('the kernel', () => {
  it('takes the same rain as effectiveRain, day by day', () => {
    fc.assert(
      fc.property(anyDay, within(0, 60), within(0, 1.2), ({ eto, rain }, depletion, plantCoefficient) => {
        const days = { irrigation: new Float64Array(1), effectiveRain: new Float64Array(1) };
        runIrrigationNeed([eto], [rain], { plantCoefficient, readilyAvailableWater: 60, initialDepletion: depletion }, days);
        const room = millimetres(depletion + plantCoefficient * eto);
        expect(days.effectiveRain[0]).toBe(effectiveRain(millimetres(rain), millimetres(eto), room));
        expect(days.effectiveRain[0]).toBeLessThanOrEqual(countedRain(millimetres(rain), millimetres(eto)));
      }),
    );
  });

  it.each([
    [
      [5, Number.NaN, 5],
      [0, 0, 0],
    ],
    [
      [5, 5, 5],
      [0, Number.NaN, 0],
    ],
  ])('shows a day that is not a number instead of counting it as dry', (eto, rain) => {
    const days = { irrigation: new Float64Array(3), effectiveRain: new Float64Array(3) };
    const zone = { plantCoefficient: 0.8, readilyAvailableWater: 20, initialDepletion: 20 };
    expect(runIrrigationNeed(eto, rain, zone, days)).toBeNaN();
  });
});
