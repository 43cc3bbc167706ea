import { projectAllowance } from '@rillbook/metering/detection/monthly/projected/project-allowance.js';
import { projectMonth } from '@rillbook/metering/detection/monthly/projected/project-month.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

// Ten days of June at 800 and 1,200 litres in turn: mean 1,000, scatter √(10 · 200² / 9) = 210.82. By hand.
const tenDays = {
  daysInMonth: 30,
  metered: 12_000,
  perDay: Array.from({ length: 10 }, (_, day) => (day % 2 ? 1200 : 800)),
  normalPerDay: null,
};

describe('a month under way', () => {
  it('goes on as its last days: 12,000 + 1.2 · 1,000 · 20, give or take 1.2 · 210.82 · √(20 + 20²/10)', () => {
    const projected = projectMonth(tenDays);
    expect(projected?.litres).toBeCloseTo(36_000, 6);
    expect(projected?.sdLitres).toBeCloseTo(1959.59, 2);
    expect(projected?.lowerLitres).toBeCloseTo(36_000 - 1.645 * 1959.59, 1);
    expect(projected?.upperLitres).toBeCloseTo(36_000 + 1.645 * 1959.59, 1);
  });

  it('follows the normals of the days to come where they are known', () => {
    expect(projectMonth({ ...tenDays, normalPerDay: 1300 })?.litres).toBeCloseTo(12_000 + 1.2 * 1300 * 20, 6);
  });

  it('is what it is at its end', () => {
    const whole = { ...tenDays, perDay: Array.from({ length: 30 }, (_, day) => 1000 + day), metered: 31_000 };
    expect(projectMonth(whole)).toEqual({ litres: 31_000, sdLitres: 0, lowerLitres: 31_000, upperLitres: 31_000 });
  });

  it('is not known in its first week, or where nothing was driven', () => {
    expect(projectMonth({ ...tenDays, perDay: tenDays.perDay.slice(0, 6) })).toBeNull();
    expect(projectMonth({ ...tenDays, perDay: new Array<number>(10).fill(0) })).toBeNull();
  });

  it('never falls below what was metered, and its band holds it', () => {
    const litres = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(fc.array(litres, { minLength: 7, maxLength: 30 }), litres, (perDay, metered) => {
        const projected = projectMonth({ daysInMonth: 30, metered, perDay, normalPerDay: null });
        if (projected === null) return;
        expect(projected.litres).toBeGreaterThanOrEqual(metered);
        expect(projected.lowerLitres).toBeGreaterThanOrEqual(metered);
        expect(projected.lowerLitres).toBeLessThanOrEqual(projected.litres);
        expect(projected.upperLitres).toBeGreaterThanOrEqual(projected.litres);
      }),
    );
  });

  it('refuses more days than it has', () => {
    expect(() => projectMonth({ ...tenDays, daysInMonth: 9 })).toThrow(expect.objectContaining({ code: 'MONTH_OUT_OF_DOMAIN' }));
  });
});

describe('the allowance of a month under way', () => {
  it('is exceeded at its end by 36,000 projected less 10,000 · 30/10 allowed, by hand, with the band of the projection', () => {
    const projected = projectAllowance(tenDays, 10_000);
    expect(projected?.litres).toBeCloseTo(6000, 6);
    expect(projected?.lowerLitres).toBeCloseTo(6000 - 1.645 * 1959.59, 1);
    expect(projected?.upperLitres).toBeCloseTo(6000 + 1.645 * 1959.59, 1);
  });

  it('may be kept although it is exceeded so far: the last days ran less', () => {
    const perDay = [...new Array<number>(6).fill(3000), ...new Array<number>(14).fill(500)];
    expect(projectAllowance({ daysInMonth: 30, metered: 25_000, perDay, normalPerDay: null }, 24_000)?.litres).toBeLessThan(0);
  });

  it('is not known where the month is not', () => {
    expect(projectAllowance({ ...tenDays, perDay: tenDays.perDay.slice(0, 6) }, 10_000)).toBeNull();
  });
});
