import { areaBudget, districtAllocation } from '@rillbook/metering/volumes/allowances/supplier-budgets.js';
import { squareFeetFromSquareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { gallonsFromLitres, volumeIn } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, given, givenRow } from '../golden-check.js';
import { checks } from './values.js';

/** Square feet in an acre. */
const ACRE = 43_560;

describe("suppliers' budgets", () => {
  it.each(['ob-060', 'ob-062', 'ob-063', 'district-week-0.44'] as const)('%s: a week of a district', (id) => {
    const check = checks[id];
    const area = squareMetresFromSquareFeet(given(check, 'area') * ACRE);
    const litres = districtAllocation(millimetresFromInches(given(check, 'ET')), given(check, 'implied_factor'), area);
    expectGolden(check, { allocation: volumeIn(litres, 'CCF') });
  });

  it('a plan by area and water need', () => {
    const check = checks['area-budget-plan'];
    const zones = (['high', 'moderate', 'low'] as const).flatMap((waterNeed) =>
      givenRow(check, waterNeed).map((feet) => ({ waterNeed, areaM2: squareMetresFromSquareFeet(feet) })),
    );
    const budget = areaBudget(zones);
    const feet = zones.reduce((sum, { areaM2 }) => sum + squareFeetFromSquareMetres(areaM2), 0);
    const perFoot = gallonsFromLitres(budget.litres) / feet;
    expectGolden(check, { area: feet, volume: gallonsFromLitres(budget.litres), average: perFoot });
    expect(budget.within).toBe(true);
    expect(budget.averageDepth! * squareMetresFromSquareFeet(1)).toBeCloseTo(perFoot * 3.785411784, 9);
    expect(areaBudget(zones.filter(({ waterNeed }) => waterNeed === 'high')).within).toBe(false);
    expect(areaBudget([])).toEqual({ litres: 0, averageDepth: null, within: null });
  });
});
