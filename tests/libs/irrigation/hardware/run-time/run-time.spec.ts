import { cycleLimit, cyclesFor } from '@rillbook/irrigation/hardware/run-time/cycle-limit.js';
import { baseMinutes, minutesPerAllowedDay, multipliedMinutes } from '@rillbook/irrigation/hardware/run-time/run-minutes.js';
import { type RunInput, runSchedule } from '@rillbook/irrigation/hardware/run-time/run-schedule.js';
import { recommendedSoak, soakMinutes } from '@rillbook/irrigation/hardware/run-time/soak.js';
import { wateringInterval } from '@rillbook/irrigation/hardware/run-time/watering-interval.js';
import { readilyAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/readily-available-water.js';
import { totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { millimetresPerHour, millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const minutes = (value: number) => value as Quantity<'min'>;
const millimetresPerMetre = (value: number) => value as Quantity<'mm/m'>;
const inches = millimetresFromInches;
const inchesPerHour = millimetresPerHourFromInchesPerHour;

/** Clay on flat ground under a spray zone. */
const clay: RunInput = {
  netDepth: inches(0.2),
  precipitationRate: inchesPerHour(1.6),
  distributionUniformity: 0.65,
  surfaceAccumulation: inches(0.2),
  intakeRate: inchesPerHour(0.1),
};

describe('cycle and soak', () => {
  it('24 minutes are three cycles of the limit of 8, 25 are four', () => {
    const limit = cycleLimit(clay.surfaceAccumulation, clay.precipitationRate, clay.intakeRate);
    expect(limit).toBeCloseTo(8, 9);
    expect(cyclesFor(minutes(24), limit)).toBe(3);
    expect(cyclesFor(minutes(25), limit)).toBe(4);
  });

  it('is no limit where the soil takes all that comes', () => {
    expect(cycleLimit(inches(0.2), millimetresPerHour(10), millimetresPerHour(10))).toBeNull();
    expect(cyclesFor(minutes(90), null)).toBe(1);
  });

  it('soaks for as long as the standing water needs: two hours on clay, within the guides on sandy loam', () => {
    expect(soakMinutes(inches(0.2), inchesPerHour(0.1))).toBeCloseTo(120, 9);
    const sandyLoam = soakMinutes(inches(0.33), inchesPerHour(0.4));
    expect(sandyLoam).toBeGreaterThanOrEqual(recommendedSoak.from);
    expect(sandyLoam).toBeLessThanOrEqual(recommendedSoak.to);
  });
});

describe('a laid out irrigation', () => {
  it('is base minutes, multiplied, divided and soaked', () => {
    const schedule = runSchedule(clay);
    expect(schedule.baseMinutes).toBeCloseTo(7.5, 9);
    expect(schedule.totalMinutes).toBeCloseTo(7.5 / 0.79, 9);
    expect(schedule.cycles).toBe(2);
    expect(schedule.minutesPerCycle).toBeCloseTo(7.5 / 0.79 / 2, 9);
    expect(schedule.soakMinutes).toBeCloseTo(120, 9);
  });

  it('has one cycle and no soak on a soil that takes all that comes', () => {
    expect(runSchedule({ ...clay, intakeRate: inchesPerHour(2) })).toMatchObject({ longestCycle: null, cycles: 1, soakMinutes: null });
  });

  it('never runs a cycle beyond the limit, and loses no minute to dividing', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0, 60), number(1, 60), number(0.2, 1), number(1, 12), number(0.5, 30), (depth, rate, even, standing, intake) => {
        const schedule = runSchedule({
          netDepth: millimetres(depth),
          precipitationRate: millimetresPerHour(rate),
          distributionUniformity: even,
          surfaceAccumulation: millimetres(standing),
          intakeRate: millimetresPerHour(intake),
        });
        expect(schedule.minutesPerCycle * schedule.cycles).toBeCloseTo(schedule.totalMinutes, 9);
        expect(schedule.totalMinutes).toBeGreaterThanOrEqual(schedule.baseMinutes);
        if (schedule.longestCycle !== null) expect(schedule.minutesPerCycle).toBeLessThanOrEqual(schedule.longestCycle * (1 + 1e-8));
      }),
    );
  });

  it.each<[string, () => unknown, string]>([
    ['a rate of nothing', () => baseMinutes(inches(1), millimetresPerHour(0)), 'RUN_TIME_OUT_OF_DOMAIN'],
    ['a multiplier below 1', () => multipliedMinutes(minutes(5), 0.9), 'RUN_TIME_OUT_OF_DOMAIN'],
    ['eight days a week', () => minutesPerAllowedDay(minutes(5), 8), 'RUN_TIME_OUT_OF_DOMAIN'],
    ['half a day', () => minutesPerAllowedDay(minutes(5), 0.5), 'RUN_TIME_OUT_OF_DOMAIN'],
    ['a soak where nothing goes in', () => soakMinutes(inches(0.2), millimetresPerHour(0)), 'SOAK_OUT_OF_DOMAIN'],
    ['an accumulation below zero', () => cycleLimit(inches(-1), millimetresPerHour(9), millimetresPerHour(1)), 'CYCLE_LIMIT_OUT_OF_DOMAIN'],
    ['a cycle of no time', () => cyclesFor(minutes(5), minutes(0)), 'CYCLE_LIMIT_OUT_OF_DOMAIN'],
    ['a use below zero', () => wateringInterval(millimetres(10), millimetres(-1)), 'WATERING_INTERVAL_OUT_OF_DOMAIN'],
  ])('refuses %s by code', (_, deed, code) => {
    expect(deed).toThrow(expect.objectContaining({ code }));
  });
});

describe('interval', () => {
  it('is what the root zone holds over what is used, rounded down', () => {
    // Loam 170 mm/m, 200 mm of roots, half of it: 17 mm; at 5 mm a day three days.
    const depletion = readilyAvailableWater(0.5, totalAvailableWaterOfSoil(millimetresPerMetre(170), millimetres(200)));
    expect(depletion).toBeCloseTo(17, 12);
    expect(wateringInterval(depletion, millimetres(5))).toBe(3);
    expect(wateringInterval(millimetres(15), millimetres(5))).toBe(3);
    expect(wateringInterval(millimetres(4), millimetres(5))).toBe(0);
    expect(wateringInterval(millimetres(4), millimetres(0))).toBeNull();
  });

  it('never lets the plants use more than is allowed, nor waters a day too soon', () => {
    const use = fc.double({ min: 0.1, max: 12, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 200, noNaN: true }), use, (depletion, daily) => {
        const days = wateringInterval(millimetres(depletion), millimetres(daily)) ?? Number.NaN;
        expect(days * daily).toBeLessThanOrEqual(depletion + 1e-7);
        expect((days + 1) * daily).toBeGreaterThan(depletion - 1e-7);
      }),
    );
  });
});
