import {
  hydrozoneAdjustmentFactor,
  keepsAverageFactor,
  ordinanceEfficiency,
  ordinanceWorksheet,
  type WorksheetHydrozone,
} from '@rillbook/metering/volumes/allowances/ordinance-worksheet.js';
import { effectiveRainAtMost, ordinanceAllowanceLessRain } from '@rillbook/metering/volumes/allowances/allowance-less-rain.js';
import { ordinanceDistances, ordinanceRateLimit, overheadWindow } from '@rillbook/metering/volumes/allowances/ordinance-design-limits.js';
import { ordinanceRuleOn } from '@rillbook/metering/volumes/allowances/ordinance-rules.js';
import { estimatedTotalWaterUse, ordinanceAllowance } from '@rillbook/metering/volumes/ordinance-allowance.js';
import { squareFeetFromSquareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { inchesPerHourFromMillimetresPerHour } from '@rillbook/units/depth-rate.js';
import { feetFromMetres, inchesFromMillimetres, metres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { gallonsFromLitres } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, given, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

const ft2 = squareMetresFromSquareFeet;
const inches = millimetresFromInches;
/** Conversions to inches and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));
const clock = (minute: number) => `${String(minute / 60).padStart(2, '0')}:00`;

const hydrozone = (check: GoldenCheck, special = false): WorksheetHydrozone => ({
  plantFactor: given(check, 'PF'),
  irrigationEfficiency: given(check, 'IE'),
  areaM2: ft2(given(check, 'area')),
  special,
});

describe('allowance (23 CCR 492.4)', () => {
  it.each(['ob-001', 'mawa-special-2000', 'mawa-worksheet'] as const)('%s', (id) => {
    const check = checks[id];
    const area = {
      etaf: given(check, 'ETAF'),
      irrigatedAreaM2: ft2(given(check, 'LA')),
      specialLandscapeAreaM2: ft2(given(check, 'SLA')),
    };
    expectGolden(check, { MAWA: gallonsFromLitres(ordinanceAllowance(inches(given(check, 'ETo')), area)) });
  });

  it.each(['ob-003', 'ob-004'] as const)('%s: hydrozones and special landscape area', (id) => {
    const check = checks[id];
    // The example gives the sum of plant factor times area: one hydrozone of that area with plant factor 1 needs the same.
    const rows: WorksheetHydrozone[] = [
      { plantFactor: 1, irrigationEfficiency: given(check, 'IE'), areaM2: ft2(given(check, 'sum_PFxHA')), special: false },
      { plantFactor: 1, irrigationEfficiency: 1, areaM2: ft2(given(check, 'SLA')), special: true },
    ];
    expectGolden(check, { ETWU: gallonsFromLitres(ordinanceWorksheet(inches(given(check, 'ETo')), rows).litres) });
  });

  it('ob-003: its five hydrozones, row by row', () => {
    const check = checks['ob-003'];
    const rows = [
      [0.8, 7_000],
      [0.7, 10_000],
      [0.5, 16_000],
      [0.3, 7_000],
      [0.2, 10_000],
    ].map(([plantFactor, area]) => ({
      plantFactor: plantFactor!,
      irrigationEfficiency: given(check, 'IE'),
      areaM2: ft2(area!),
      special: false,
    }));
    expectGolden(check, { ETWU: gallonsFromLitres(ordinanceWorksheet(inches(given(check, 'ETo')), rows).litres) });
  });

  it('ob-024: with a quarter of the rain taken off', () => {
    const rain = inches(20);
    expectGolden(checks['ob-024'], { Eppt_fraction_of_annual_rain: effectiveRainAtMost(rain) / rain });
    const area = { etaf: 0.55, irrigatedAreaM2: ft2(10_000), specialLandscapeAreaM2: ft2(1_000) };
    // (52.3 - 5) in x 0.62 x (0.55 x 10,000 + 0.45 x 1,000) ft2.
    expect(gallonsFromLitres(ordinanceAllowanceLessRain(inches(52.3), rain, area))).toBeCloseTo(47.3 * 0.62 * 5_950, 6);
    expect(ordinanceAllowanceLessRain(inches(4), inches(20), area)).toBe(0);
  });
});

describe('worksheet (Appendix B, filled in, 2021)', () => {
  it.each(['ob-011', 'ob-012', 'ob-014', 'etwu-moderate-drip', 'etwu-low-drip-side'] as const)('%s', (id) => {
    const check = checks[id];
    const { plantFactor, irrigationEfficiency, areaM2 } = hydrozone(check);
    expectGolden(check, {
      ETAF: hydrozoneAdjustmentFactor(plantFactor, irrigationEfficiency),
      ETWU: gallonsFromLitres(estimatedTotalWaterUse(inches(given(check, 'ETo')), plantFactor, irrigationEfficiency, areaM2)),
    });
  });

  it('ob-015: total and averages', () => {
    const rows = (['etwu-moderate-drip', 'ob-011', 'ob-012', 'etwu-low-drip-side'] as const).map((id) => hydrozone(checks[id]));
    const sheet = ordinanceWorksheet(inches(given(checks['ob-011'], 'ETo')), [...rows, hydrozone(checks['ob-014'], true)]);
    const check = checks['ob-015'];
    const tolerance = { ...check.tolerance, average_ETAF_regular: 0.001, sitewide_ETAF: 0.001, LA_regular: 1e-9, SLA: 1e-9 };
    expectGolden(
      { ...check, tolerance },
      {
        ETWU_total: gallonsFromLitres(sheet.litres),
        average_ETAF_regular: sheet.averageEtaf!,
        sitewide_ETAF: sheet.sitewideEtaf!,
        LA_regular: squareFeetFromSquareMetres(sheet.regularAreaM2),
        SLA: squareFeetFromSquareMetres(sheet.specialAreaM2),
      },
    );
    expect(keepsAverageFactor(sheet, 0.55)).toBe(true);
    expect(keepsAverageFactor(sheet, 0.45)).toBe(false);
  });

  it('ob-050: factors and efficiencies as printed', () => {
    const { etaf } = ordinanceRuleOn('California', '2026-01-01')!;
    expectGolden(checks['ob-050'], {
      IE_spray: ordinanceEfficiency('overhead'),
      IE_drip: ordinanceEfficiency('drip'),
      ETAF_res: etaf.residential!,
      ETAF_nonres: etaf['non-residential']!,
    });
  });
});

describe('texts in force', () => {
  it('ob-017: the current text of the state', () => {
    const { etaf } = ordinanceRuleOn('California', '2016-01-01')!;
    expectGolden(checks['ob-017'], { max_ETAF: `${etaf.residential} | ${etaf['non-residential']}` });
  });

  it('ob-018: a stricter city', () => {
    expectGolden(checks['ob-018'], { ETAF: ordinanceRuleOn('San Diego', '2026-01-01')!.etaf.residential! });
  });

  it('ob-020: the text of 2009', () => {
    const rule = ordinanceRuleOn('California', '2012-06-30')!;
    expectGolden(checks['ob-020'], {
      ETAF: rule.etaf.residential!,
      SLA_extra: dusted(rule.specialAreaFactor - rule.etaf.residential!),
      IE_min: rule.leastEfficiency!,
    });
  });

  it('ob-026: slopes, setback and narrow areas', () => {
    const { overheadSetback, narrowBelow } = ordinanceDistances();
    expectGolden(checks['ob-026'], {
      max_application_rate: dusted(inchesPerHourFromMillimetresPerHour(ordinanceRateLimit(25.1)!)),
      overhead_setback_from_hardscape: dusted(inchesFromMillimetres(overheadSetback)),
      narrow_area_width_needing_subsurface: dusted(feetFromMetres(metres(millimetres(narrowBelow) / 1000))),
    });
    expect(ordinanceRateLimit(25)).toBeNull();
  });

  it('ob-027: window of overhead irrigation', () => {
    const { fromMinute, untilMinute } = overheadWindow();
    expectGolden(checks['ob-027'], { allowed_window: `${clock(fromMinute)}-${clock(untilMinute)}` });
  });
});
