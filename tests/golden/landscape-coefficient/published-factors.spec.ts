import { totalWaterApplied } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { assessedRange } from '@rillbook/agronomy/plants/published/category-range.js';
import { cropRow, type SeasonCoefficient } from '@rillbook/agronomy/plants/published/crop-row.js';
import { groupPlantFactor, landscapeGroups } from '@rillbook/agronomy/plants/published/landscape-group.js';
import { monthlyTurfCoefficient } from '@rillbook/agronomy/plants/published/monthly-turf-coefficient.js';
import type { FactorRange } from '@rillbook/agronomy/plants/published/factor-range.js';
import { isolatedTreeMicroclimate, singlePlantDensity, type SinglePlant } from '@rillbook/agronomy/plants/published/single-plant-factor.js';
import { inchesFromMillimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, given, givenRow } from '../golden-check.js';
import { expectWithin } from '../expect-within.js';
import { checks } from './values.js';

const applied = (inches: number, efficiency: number): number =>
  inchesFromMillimetres(totalWaterApplied(millimetresFromInches(inches), efficiency));

const between = ({ low, high }: FactorRange): string => (low === high ? low.toFixed(1) : `${low.toFixed(1)} to ${high.toFixed(1)}`);

describe('total water applied (Costello et al. 2000)', () => {
  it('is the published quotient of three efficiencies', () => {
    const check = checks['pl-030'];
    expectGolden(check, { TWA: givenRow(check, 'IE').map((efficiency) => applied(given(check, 'ETL'), efficiency)) });
  });

  it("is the quotient of the guide's case 1", () => {
    const check = checks['pl-032'];
    expectGolden(check, { TWA: applied(given(check, 'ETL'), given(check, 'IE')) });
  });
});

describe('published factors', () => {
  it('by category of the assessed list', () => {
    const text = ({ low, high }: FactorRange) => `${low.toFixed(2)}-${high.toFixed(2)}`;
    expectGolden(checks['pl-001'], {
      VL: `< ${assessedRange('very low').high.toFixed(2)}`,
      LO: text(assessedRange('low')),
      M: text(assessedRange('moderate')),
      H: text(assessedRange('high')),
    });
  });

  it('of plants that stand alone', () => {
    const plants: SinglePlant[] = ['shrub', 'very large shrub', 'tree under 15 ft', 'larger tree'];
    expectGolden(checks['pl-033'], {
      kd: plants.map((plant) => between(singlePlantDensity(plant))).join(' | '),
      kmc_large_tree_wind: between(isolatedTreeMicroclimate()),
    });
  });

  it('by group of the landscape standard', () => {
    expectGolden(checks['pl-035'], { PF: landscapeGroups.map((group) => groupPlantFactor(group)).join('|') });
  });

  const seasons = (prefix: string, { initial, mid, end }: SeasonCoefficient) => ({
    [`${prefix}_ini`]: initial,
    [`${prefix}_mid`]: mid,
    [`${prefix}_end`]: end,
  });

  it('of cool-season turf as a crop', () => {
    const { single, basal, height, rootDepth, depletionFraction } = cropRow('turf cool-season');
    expectGolden(checks['pl-036'], {
      ...seasons('Kc', single),
      ...seasons('Kcb', basal!),
      h: height! / 1000,
      Zr_min: rootDepth!.low / 1000,
      Zr_max: rootDepth!.high / 1000,
      p: depletionFraction,
    });
  });

  it('of citrus as a crop', () => {
    const { single, rootDepth, depletionFraction } = cropRow('citrus, no ground cover, 70% canopy');
    expectGolden(checks['pl-038'], {
      ...seasons('Kc', single),
      Zr_min: rootDepth!.low / 1000,
      Zr_max: rootDepth!.high / 1000,
      p: depletionFraction,
    });
  });

  // FAO-56 Tables 12, 17 and 22, read in a scientific library's table.
  it('of warm-season turf as a crop', () => {
    expect(cropRow('turf warm-season')).toMatchObject({
      single: { initial: 0.8, mid: 0.85, end: 0.85 },
      basal: { initial: 0.75, mid: 0.8, end: 0.8 },
      depletionFraction: 0.5,
    });
  });

  // University of California, monthly turf coefficients, from memory; measured whole-season values 0.85 and 0.70 (New Mexico, read as text).
  it('of turf by month lie around the measured values of a season', () => {
    const season = [4, 5, 6, 7, 8, 9, 10];
    const mean = (turf: 'turf cool-season' | 'turf warm-season') =>
      season.reduce((sum, month) => sum + monthlyTurfCoefficient(turf, month), 0) / season.length;
    expectWithin(mean('turf cool-season'), 0.85, 0.05);
    expectWithin(mean('turf warm-season'), 0.7, 0.05);
    expect([monthlyTurfCoefficient('turf cool-season', 1), monthlyTurfCoefficient('turf cool-season', 7)]).toEqual([0.61, 0.93]);
    expect([monthlyTurfCoefficient('turf warm-season', 1), monthlyTurfCoefficient('turf warm-season', 7)]).toEqual([0.52, 0.69]);
  });
});
