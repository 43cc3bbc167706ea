import {
  budgetCoefficient,
  countedRainAtMost,
  landscapeWaterAllowance,
  landscapeWaterRequirement,
} from '@rillbook/metering/volumes/allowances/federal-water-budget.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { gallonsFromLitres } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, given } from '../golden-check.js';
import { checks } from './values.js';

describe('federal water budget (EPA WaterSense, from memory)', () => {
  it('ob-029: allowance of the peak month', () => {
    const check = checks['ob-029'];
    const litres = landscapeWaterAllowance(
      millimetresFromInches(given(check, 'ETo_peak_month')),
      squareMetresFromSquareFeet(given(check, 'area')),
    );
    expectGolden(check, { LWA: gallonsFromLitres(litres) });
    expect(
      litres / landscapeWaterAllowance(millimetresFromInches(given(check, 'ETo_peak_month')), squareMetresFromSquareFeet(1)),
    ).toBeCloseTo(given(check, 'area'), 6);
  });

  it('ob-030: requirement of a hydrozone', () => {
    const check = checks['ob-030'];
    const hydrozone = {
      landscapeCoefficient: given(check, 'KL'),
      areaM2: squareMetresFromSquareFeet(given(check, 'area')),
      duLq: given(check, 'DU_LQ'),
    };
    const litresAt = (duLq: number) =>
      landscapeWaterRequirement(millimetresFromInches(given(check, 'ETo')), millimetresFromInches(given(check, 'Ra')), {
        ...hydrozone,
        duLq,
      });
    const litres = litresAt(hydrozone.duLq);
    expectGolden(check, { RTM: litres / litresAt(1), LWR: gallonsFromLitres(litres) });
  });

  it.each([
    ['trees', [0.2, 0.5, 0.9]],
    ['shrubs and groundcover', [0.2, 0.5, 0.7]],
    ['turf', [0.6, 0.7, 0.8]],
    ['water feature', [0.8, 0.8, 0.8]],
  ] as const)('coefficients of %s, from memory', (plants, published) => {
    expect((['low', 'medium', 'high'] as const).map((need) => budgetCoefficient(plants, need))).toEqual(published);
  });

  it('counts a quarter of the rain, and needs nothing where that is enough', () => {
    expect(countedRainAtMost(millimetresFromInches(1.2))).toBeCloseTo(millimetresFromInches(0.3), 12);
    const dry = { landscapeCoefficient: 0.2, areaM2: 100, duLq: 0.7 };
    expect(landscapeWaterRequirement(millimetresFromInches(1), millimetresFromInches(0.2), dry)).toBe(0);
  });
});
