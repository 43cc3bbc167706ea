import { percentAdjust } from '@rillbook/irrigation/planning/percent-adjust.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const zones = [
  { zoneId: 'lawn', neededLitres: 600, programmedLitres: 1000 },
  { zoneId: 'beds', neededLitres: 300, programmedLitres: 200 },
];

describe('percent adjust', () => {
  it('brings the program to the need and tells what it leaves in each zone', () => {
    const change = percentAdjust(zones, 100, { stepPercent: 5, maxPercent: 200 });
    expect(change).toMatchObject({ percent: 75, capped: false, programmedLitres: 900, overLitres: 150, underLitres: 150 });
    expect(change?.zones).toEqual([
      { zoneId: 'lawn', programmedLitres: 750, overLitres: 150, underLitres: 0 },
      { zoneId: 'beds', programmedLitres: 150, overLitres: 0, underLitres: 150 },
    ]);
  });

  it('starts from the percent that was in force', () => {
    expect(percentAdjust(zones, 150, { stepPercent: 1, maxPercent: null })?.percent).toBe(113);
  });

  it('stops at the largest percent that the controller holds', () => {
    const dry = [{ zoneId: 'lawn', neededLitres: 3000, programmedLitres: 1000 }];
    expect(percentAdjust(dry, 100, { stepPercent: 20, maxPercent: 150 })).toMatchObject({ percent: 140, capped: true, underLitres: 1600 });
  });

  it('is none where nothing is programmed', () => {
    expect(
      percentAdjust([{ zoneId: 'lawn', neededLitres: 100, programmedLitres: 0 }], 100, { stepPercent: 1, maxPercent: 200 }),
    ).toBeNull();
  });

  it('is the nearest of all percents that the controller has', () => {
    const zone = fc.record({
      zoneId: fc.constant('z'),
      neededLitres: fc.double({ min: 0, max: 1e5, noNaN: true }),
      programmedLitres: fc.double({ min: 1, max: 1e5, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(zone, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(1, 5, 10),
        fc.integer({ min: 20, max: 200 }),
        (plans, step, now) => {
          const change = percentAdjust(plans, now, { stepPercent: step, maxPercent: 200 });
          const needed = plans.reduce((sum, each) => sum + each.neededLitres, 0);
          const programmed = plans.reduce((sum, each) => sum + each.programmedLitres, 0);
          const miss = (percent: number) => Math.abs((programmed * percent) / now - needed);
          const best = Math.min(...Array.from({ length: 200 / step + 1 }, (_, index) => miss(index * step)));
          expect(miss(change?.percent ?? Number.NaN)).toBeLessThanOrEqual(best * (1 + 1e-9) + 1e-6);
        },
      ),
    );
  });

  it('refuses a percent of nothing by code', () => {
    expect(() => percentAdjust(zones, 0, { stepPercent: 1, maxPercent: 200 })).toThrow(
      expect.objectContaining({ code: 'PERCENT_ADJUST_OUT_OF_DOMAIN' }),
    );
  });
});
