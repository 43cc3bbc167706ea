import { etoOfPlace } from '@rillbook/agronomy/budgets/eto-of-place.js';
import { yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { inchesFromMillimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, givenRow, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

const yearOf = (check: GoldenCheck): number =>
  inchesFromMillimetres(yearlyNormal(givenRow(check, 'monthly').map((month) => millimetresFromInches(month))));

describe('monthly ETo of places (23 CCR ch. 2.7 Appendix A and municipal codes)', () => {
  const { 'ob-023': sanFrancisco, ...rows } = checks;

  it.each(Object.entries(rows))('%s: the months add up to the year', (_, check) => {
    expectGolden(check, { annual: yearOf(check) });
  });

  it('ob-023: the year of San Francisco is that of its row', () => {
    expectGolden(sanFrancisco, { annual_ETo: Number(yearOf(rows['ob-043']).toFixed(1)) });
  });

  it('ships the two rows that were read, and no other', () => {
    const shipped = (place: Parameters<typeof etoOfPlace>[0]) => etoOfPlace(place).months.map((month) => inchesFromMillimetres(month));
    const close = (check: GoldenCheck) => givenRow(check, 'monthly').map((month) => expect.closeTo(month, 9));
    expect(shipped('Vacaville')).toEqual(close(rows['ob-021']));
    expect(shipped('Vacaville, Lagoon Valley')).toEqual(close(rows['vacaville-lagoon-valley']));
    expect(() => etoOfPlace('Fresno' as 'Vacaville')).toThrowError(expect.objectContaining({ code: 'PLACE_UNKNOWN' }));
  });
});
