import { yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { inchesFromMillimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, it } from 'vitest';
import { expectGolden, givenRow } from '../golden-check.js';
import { checks } from './pan-evaporation.values.js';

describe('class A pan in irrigated pasture (California Department of Water Resources 1975)', () => {
  it.each(Object.entries(checks))('%s: months and their year', (_, check) => {
    const months = givenRow(check, 'monthly_pan').map((inches) => millimetresFromInches(inches));
    expectGolden(check, { annual: inchesFromMillimetres(yearlyNormal(months)) });
  });
});
