import { evaporationCoefficient } from '@rillbook/agronomy/water-balance/surface/evaporation-coefficient.js';
import { evaporationReduction } from '@rillbook/agronomy/water-balance/surface/evaporation-reduction.js';
import { surfaceBalance } from '@rillbook/agronomy/water-balance/surface/surface-balance.js';
import { totalEvaporableWater } from '@rillbook/agronomy/water-balance/surface/total-evaporable-water.js';
import { wettedFractionByMethod } from '@rillbook/agronomy/water-balance/surface/wetted-fraction-by-method.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, type GoldenCheck, given, givenRow } from '../golden-check.js';
import { soil } from './cotton-season.js';
import { checks } from './values.js';

const zero = millimetres(0);

const limitsOf = (check: GoldenCheck) => ({
  basalCoefficient: given(check, 'Kcb'),
  maximumCoefficient: given(check, 'Kcmax'),
  exposedWettedFraction: given(check, 'few'),
});

/** The layer at the start of each day of Example 34: no rain, nothing but evaporation. */
function dryingCycle(check: GoldenCheck, days: number): readonly number[] {
  const [tew, rew, eto] = ['TEW', 'REW', 'ETo'].map((name) => millimetres(given(check, name))) as [
    Quantity<'mm'>,
    Quantity<'mm'>,
    Quantity<'mm'>,
  ];
  const limits = limitsOf(check);
  const starts: Quantity<'mm'>[] = [zero];
  for (let day = 1; day < days; day += 1) {
    const before = starts[day - 1] ?? zero;
    const ke = evaporationCoefficient(evaporationReduction(before, tew, rew), limits);
    const fluxes = {
      infiltratedRain: zero,
      irrigation: zero,
      evaporation: millimetres(ke * eto),
      wettedFraction: 1,
      exposedWettedFraction: 1,
    };
    starts.push(surfaceBalance(before, fluxes, tew).surfaceDepletion);
  }
  return starts;
}

describe('FAO-56, chapter 7: the surface layer', () => {
  it('rz-005: Example 34, the drying of loam over ten days', () => {
    expectGolden(checks['rz-005'], { De_start: dryingCycle(checks['rz-005'], 10) });
  });

  it('rz-006: Example 35, the first two days', () => {
    const check = checks['rz-006'];
    const reductions = givenRow(check, 'Kr');
    const coefficients = givenRow(check, 'Kcb').map((basalCoefficient, day) => {
      const limits = { basalCoefficient, maximumCoefficient: given(check, 'Kcmax'), exposedWettedFraction: given(check, 'few') };
      return evaporationCoefficient(reductions[day] ?? Number.NaN, limits);
    });
    expectGolden(check, { Ke: coefficients });
  });

  it('rz-011: evaporation from drying soil under cotton, 2013-122', () => {
    const check = checks['rz-011'];
    const mm = (name: string) => millimetres(given(check, name));
    const reduction = evaporationReduction(mm('De_prev'), mm('TEW'), mm('REW'));
    const ke = evaporationCoefficient(reduction, limitsOf(check));
    expectGolden(check, { Kr: reduction, Ke: ke, E: ke * mm('ETref') });
  });

  it('rz-014: evaporation from wet soil under cotton, 2013-116', () => {
    const check = checks['rz-014'];
    const ke = evaporationCoefficient(given(check, 'Kr'), limitsOf(check));
    const eto = given(check, 'ETref');
    expectGolden(check, { Ke: ke, E: ke * eto, ETc: (ke + given(check, 'Kcb')) * eto });
  });

  it('rz-022: irrigation on half of the ground wets that half twice as deep, 2013-115', () => {
    const check = checks['rz-022'];
    const irrigation = millimetres(given(check, 'irrigation'));
    const half = given(check, 'fw');
    const fluxes = { infiltratedRain: zero, irrigation, evaporation: zero, wettedFraction: half, exposedWettedFraction: half };
    const tew = totalEvaporableWater(soil.fieldCapacity, soil.wiltingPoint, millimetres(soil.evaporationDepth));
    const end = surfaceBalance(millimetres(given(check, 'De_prev')), fluxes, tew);
    expectGolden(check, { DPe: end.surfacePercolation, De: end.surfaceDepletion });
  });

  it('wetted share of the ground: all under rain and sprinklers, 0.3 to 0.4 under drip (Table 20, from memory)', () => {
    expect([wettedFractionByMethod('rain'), wettedFractionByMethod('sprinkler')]).toEqual([1, 1]);
    expectWithin(wettedFractionByMethod('drip'), 0.35, 0.05);
  });
});
