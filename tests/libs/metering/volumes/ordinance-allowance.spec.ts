import { contractAllowance } from '@rillbook/metering/volumes/contract-allowance.js';
import { grossVolume } from '@rillbook/metering/volumes/gross-volume.js';
import { ordinanceAllowance, yearlyOrdinanceAllowance } from '@rillbook/metering/volumes/ordinance-allowance.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { gallonsFromLitres } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { givenRow } from '../../../golden/golden-check.js';
import { checks as places } from '../../../golden/eto-of-places/values.js';
import { gallonsPerInchSquareFoot } from '../../../golden/volume-equivalents/values.js';
import { hydrozone } from '../../../golden/watersense-budget/values.js';

const areaOf = (etaf: number, irrigated: number, special: number) => ({
  etaf,
  irrigatedAreaM2: squareMetresFromSquareFeet(irrigated),
  specialLandscapeAreaM2: squareMetresFromSquareFeet(special),
});

describe('ordinance', () => {
  // Vacaville, California, municipal code, Table 14.27.030.A: months and the year printed beside them.
  it('is the same for a year of months and for the year', () => {
    const area = areaOf(0.55, 10_000, 500);
    const vacaville = places['ob-021'];
    const months = givenRow(vacaville, 'monthly').map((inches) => millimetresFromInches(inches));
    const printed = vacaville.expected.annual[0];
    const year = ordinanceAllowance(millimetresFromInches(printed), area);
    expect(Math.abs(yearlyOrdinanceAllowance(months, area) / year - 1)).toBeLessThanOrEqual(vacaville.tolerance.abs / printed);
    expect(() => yearlyOrdinanceAllowance(months.slice(1), area)).toThrow(expect.objectContaining({ code: 'MONTHLY_NORMALS_INVALID' }));
  });

  it('is proportional to evapotranspiration and never falls with the special area', () => {
    const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
    fc.assert(
      fc.property(number(300), number(1), fc.double({ min: 1, max: 1e5, noNaN: true }), number(1), (eto, etaf, irrigated, share) => {
        const plain = ordinanceAllowance(millimetres(eto), areaOf(etaf, irrigated, 0));
        expect(ordinanceAllowance(millimetres(2 * eto), areaOf(etaf, irrigated, 0))).toBeCloseTo(2 * plain, 3);
        expect(ordinanceAllowance(millimetres(eto), areaOf(etaf, irrigated, share * irrigated))).toBeGreaterThanOrEqual(
          plain * (1 - 1e-12),
        );
      }),
    );
  });

  it('refuses a special area above the irrigated by code', () => {
    expect(() => ordinanceAllowance(millimetres(100), areaOf(0.5, 100, 101))).toThrow(
      expect.objectContaining({ code: 'ORDINANCE_OUT_OF_DOMAIN' }),
    );
  });
});

describe('contract', () => {
  const table = [1, 2, 3, 4, 5, 6000, 7, 8, 9, 10, 11, 12];

  it('is the month of the table, to date by days', () => {
    expect(contractAllowance(table, '2026-06', 30, 30)).toBe(6000);
    expect(contractAllowance(table, '2026-06', 10, 30)).toBe(2000);
  });

  it('needs twelve months', () => {
    expect(() => contractAllowance(table.slice(1), '2026-06', 30, 30)).toThrow(expect.objectContaining({ code: 'CONTRACT_TABLE_INVALID' }));
  });
});

describe('gross volume', () => {
  // EPA WaterSense water budget approach (from memory); tests/golden/watersense-budget.
  it('is the published water requirement of a hydrozone', () => {
    const net = millimetresFromInches(hydrozone.eto * hydrozone.landscapeCoefficient - hydrozone.effectiveRain);
    const zone = { areaM2: squareMetresFromSquareFeet(hydrozone.squareFeet), duLq: hydrozone.uniformity, leachingFraction: 0 };
    expect(Math.abs(gallonsFromLitres(grossVolume(net, zone)) / hydrozone.gallons - 1)).toBeLessThanOrEqual(hydrozone.relativeTolerance);
  });

  // Unit definitions as printed in ordinances and circulars; tests/golden/volume-equivalents.
  it('of an inch on a square foot is 0.6233 gal', () => {
    const litres = grossVolume(millimetresFromInches(1), { areaM2: squareMetresFromSquareFeet(1), duLq: 1, leachingFraction: 0 });
    expect(Math.abs(gallonsFromLitres(litres) - gallonsPerInchSquareFoot.gallons)).toBeLessThanOrEqual(gallonsPerInchSquareFoot.tolerance);
  });

  it('grows with leaching, and leaching of everything is refused by code', () => {
    const zone = { areaM2: 10, duLq: 1, leachingFraction: 0.2 };
    expect(grossVolume(millimetres(8), zone)).toBeCloseTo(100, 9);
    expect(() => grossVolume(millimetres(8), { ...zone, leachingFraction: 1 })).toThrow(
      expect.objectContaining({ code: 'LEACHING_FRACTION_OUT_OF_DOMAIN' }),
    );
  });
});
