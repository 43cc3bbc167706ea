import { effectiveRainAtMost, ordinanceAllowanceLessRain } from '@rillbook/metering/volumes/allowances/allowance-less-rain.js';
import {
  budgetCoefficient,
  countedRainAtMost,
  landscapeWaterAllowance,
  landscapeWaterRequirement,
} from '@rillbook/metering/volumes/allowances/federal-water-budget.js';
import { ordinanceRuleOn, ordinanceRules, strictestFactor } from '@rillbook/metering/volumes/allowances/ordinance-rules.js';
import {
  hydrozoneAdjustmentFactor,
  keepsAverageFactor,
  ordinanceWorksheet,
} from '@rillbook/metering/volumes/allowances/ordinance-worksheet.js';
import { areaBudget, districtAllocation } from '@rillbook/metering/volumes/allowances/supplier-budgets.js';
import { grossVolume } from '@rillbook/metering/volumes/gross-volume.js';
import { ordinanceAllowance } from '@rillbook/metering/volumes/ordinance-allowance.js';
import { squareMetres } from '@rillbook/units/area.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const someEto = number(1, 2000);
const someArea = number(1, 1e5);
const someFactor = number(0.01, 1);

/** Demands that one number is another, but for rounding. */
const same = (actual: number, wanted: number) =>
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));

describe('need', () => {
  it('is linear in area', () => {
    fc.assert(
      fc.property(number(0, 300), someArea, number(0.1, 1), number(0.1, 10), (depth, areaM2, duLq, times) => {
        const zone = { areaM2, duLq, leachingFraction: 0.1 };
        const once = grossVolume(millimetres(depth), zone);
        same(grossVolume(millimetres(depth), { ...zone, areaM2: times * areaM2 }), times * once);
        same(grossVolume(millimetres(times * depth), zone), times * once);
      }),
    );
  });

  it('never grows with a higher uniformity, and is the net depth at a perfect one', () => {
    fc.assert(
      fc.property(number(0, 300), someArea, number(0.01, 1), number(0.01, 1), (depth, areaM2, one, other) => {
        const at = (duLq: number) => grossVolume(millimetres(depth), { areaM2, duLq, leachingFraction: 0 });
        expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)) * (1 + 1e-12));
        same(at(1), depth * areaM2);
      }),
    );
  });
});

describe('allowances', () => {
  it('are linear in area and in evapotranspiration', () => {
    const ways: readonly ((eto: number, areaM2: number, factor: number) => number)[] = [
      (eto, areaM2, etaf) =>
        ordinanceAllowance(millimetres(eto), {
          etaf,
          irrigatedAreaM2: squareMetres(areaM2),
          specialLandscapeAreaM2: squareMetres(areaM2 / 4),
        }),
      (eto, areaM2) => landscapeWaterAllowance(millimetres(eto), squareMetres(areaM2)),
      (eto, areaM2, factor) => districtAllocation(millimetres(eto), factor, squareMetres(areaM2)),
      (eto, areaM2, duLq) => landscapeWaterRequirement(millimetres(eto), millimetres(0), { landscapeCoefficient: 0.5, areaM2, duLq }),
      (eto, areaM2, factor) =>
        ordinanceWorksheet(millimetres(eto), [
          { plantFactor: factor, irrigationEfficiency: 0.75, areaM2: squareMetres(areaM2), special: false },
          { plantFactor: 1, irrigationEfficiency: 1, areaM2: squareMetres(areaM2 / 2), special: true },
        ]).litres,
    ];
    for (const allowed of ways)
      fc.assert(
        fc.property(someEto, someArea, someFactor, number(0.1, 10), (eto, areaM2, factor, times) => {
          const once = allowed(eto, areaM2, factor);
          expect(once).toBeGreaterThan(0);
          same(allowed(times * eto, areaM2, factor), times * once);
          same(allowed(eto, times * areaM2, factor), times * once);
        }),
        { numRuns: 50 },
      );
  });

  it('by area are linear in area', () => {
    fc.assert(
      fc.property(someArea, number(0.1, 10), (areaM2, times) => {
        const budget = (area: number) => areaBudget([{ waterNeed: 'moderate', areaM2: squareMetres(area) }]).litres;
        same(budget(times * areaM2), times * budget(areaM2));
      }),
    );
  });

  it('with rain taken off are never above those without, nor below nothing', () => {
    fc.assert(
      fc.property(someEto, number(0, 10_000), someArea, someFactor, (eto, rain, areaM2, etaf) => {
        const area = { etaf, irrigatedAreaM2: squareMetres(areaM2), specialLandscapeAreaM2: squareMetres(0) };
        const less = ordinanceAllowanceLessRain(millimetres(eto), millimetres(rain), area);
        expect(less).toBeGreaterThanOrEqual(0);
        expect(less).toBeLessThanOrEqual(ordinanceAllowance(millimetres(eto), area) * (1 + 1e-12));
      }),
    );
    expect(effectiveRainAtMost(millimetres(400))).toBe(100);
    expect(countedRainAtMost(millimetres(40))).toBe(10);
  });
});

describe('texts of ordinances', () => {
  it('change on their days: what was in force then is found, what was not known is not made up', () => {
    const factorOn = (date: string) => ordinanceRuleOn('California', date)?.etaf.residential ?? null;
    expect(['2009-09-09', '2009-09-10', '2015-11-30', '2015-12-01', '2040-01-01'].map(factorOn)).toEqual([null, 0.7, 0.7, 0.55, 0.55]);
    expect(ordinanceRuleOn('San Diego', '1990-01-01')?.from).toBeNull();
    for (const none of ['2026', '2026-99-99', '2026-02-30', '2026-6-01', '2026-06-01T00:00'])
      expect(() => ordinanceRuleOn('California', none), none).toThrowError(code('DATE_INVALID'));
    expect(factorOn('2028-02-29')).toBe(0.55);
  });

  it('of one authority never overlap, and name their source', () => {
    for (const rule of ordinanceRules) {
      expect(rule.source.length).toBeGreaterThan(10);
      const others = ordinanceRules.filter((other) => other !== rule && other.authority === rule.authority);
      for (const other of others) {
        const before = (rule.until ?? '9999') < (other.from ?? '0000');
        const after = (other.until ?? '9999') < (rule.from ?? '0000');
        expect(before || after, `${rule.authority} ${rule.from} and ${other.from}`).toBe(true);
      }
    }
  });

  it('that stand together are kept where the stricter is', () => {
    const rules = (['California', 'San Diego'] as const).flatMap((authority) => ordinanceRuleOn(authority, '2026-06-01') ?? []);
    expect(strictestFactor('residential', rules)).toBe(0.42);
    expect(strictestFactor('non-residential', rules)).toBe(0.45);
    expect(strictestFactor('existing', rules)).toBe(0.8);
    expect(strictestFactor('residential', [])).toBeNull();
  });
});

describe('worksheet', () => {
  const row = (plantFactor: number, area: number, special = false) => ({
    plantFactor,
    irrigationEfficiency: special ? 1 : 0.75,
    areaM2: squareMetres(area),
    special,
  });

  it('averages over the regular areas only', () => {
    const sheet = ordinanceWorksheet(millimetres(1000), [row(0.3, 300), row(0.6, 100), row(1, 100, true)]);
    expect(sheet.averageEtaf).toBeCloseTo((0.4 * 300 + 0.8 * 100) / 400, 12);
    expect(sheet.sitewideEtaf).toBeCloseTo((0.4 * 300 + 0.8 * 100 + 100) / 500, 12);
    expect([keepsAverageFactor(sheet, 0.55), keepsAverageFactor(sheet, 0.45)]).toEqual([true, false]);
  });

  it('of special areas alone has no average to judge', () => {
    const sheet = ordinanceWorksheet(millimetres(1000), [row(1, 100, true)]);
    expect(sheet).toMatchObject({ averageEtaf: null, sitewideEtaf: 1, regularAreaM2: 0, specialAreaM2: 100 });
    expect(keepsAverageFactor(sheet, 0.55)).toBeNull();
    expect(ordinanceWorksheet(millimetres(1000), [])).toMatchObject({ litres: 0, averageEtaf: null, sitewideEtaf: null });
  });

  it('keeps its factor exactly when its use keeps the allowance', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(number(0, 1), number(1, 1000)), { minLength: 1, maxLength: 6 }), someFactor, (rows, etaf) => {
        const hydrozones = rows.map(([factor, area]) => row(factor, area));
        const sheet = ordinanceWorksheet(millimetres(1200), hydrozones);
        const area = { etaf, irrigatedAreaM2: sheet.regularAreaM2, specialLandscapeAreaM2: squareMetres(0) };
        const room = sheet.litres / ordinanceAllowance(millimetres(1200), area) - 1;
        fc.pre(Math.abs(room) > 1e-9);
        expect(keepsAverageFactor(sheet, etaf)).toBe(room < 0);
      }),
    );
  });
});

it('what cannot be is refused by code', () => {
  expect(() => hydrozoneAdjustmentFactor(0.5, 0)).toThrowError(code('ORDINANCE_OUT_OF_DOMAIN'));
  expect(() => effectiveRainAtMost(millimetres(-1))).toThrowError(code('RAIN_OUT_OF_DOMAIN'));
  expect(() => countedRainAtMost(millimetres(-1))).toThrowError(code('RAIN_OUT_OF_DOMAIN'));
  expect(() => landscapeWaterAllowance(millimetres(-1), squareMetres(1))).toThrowError(code('BUDGET_OUT_OF_DOMAIN'));
  expect(() => landscapeWaterRequirement(millimetres(1), millimetres(-1), { landscapeCoefficient: 1, areaM2: 1, duLq: 1 })).toThrowError(
    code('BUDGET_OUT_OF_DOMAIN'),
  );
  expect(() => districtAllocation(millimetres(1), -1, squareMetres(1))).toThrowError(code('BUDGET_OUT_OF_DOMAIN'));
  expect(() => budgetCoefficient('moss' as 'turf', 'low')).toThrowError(code('BUDGET_PLANTS_UNKNOWN'));
  expect(() => areaBudget([{ waterNeed: 'none' as 'low', areaM2: squareMetres(1) }])).toThrowError(code('BUDGET_OUT_OF_DOMAIN'));
});
