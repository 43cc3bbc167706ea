import { etoOfZone, etoZones } from '@rillbook/agronomy/budgets/eto-zones.js';
import { dailyNormal, peakMonth, yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { inchesFromMillimetres } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectGolden, given } from '../golden-check.js';
import { expectWithin } from '../expect-within.js';
import { checks } from './values.js';

/** Yearly inches printed on the map, zone 1 first; from memory. */
const PRINTED = [33, 39, 46.3, 46.6, 43.9, 49.7, 43.3, 49.4, 55.1, 49.1, 53.1, 53.4, 54.3, 57, 57.9, 62.5, 66.5, 71.6];

describe('reference ETo zones (California DWR and UC Davis 1999)', () => {
  it.each(Object.entries(checks))('%s: months and their sum', (_, check) => {
    const { months, known } = etoOfZone(given(check, 'zone'));
    expectGolden(check, {
      monthly_ETo: months.map((month) => inchesFromMillimetres(month)),
      annual_from_sum: inchesFromMillimetres(yearlyNormal(months)),
    });
    expect(known).toBe(check.known);
  });

  it.each(etoZones)('zone %d adds up to the printed year within rounding', (zone) => {
    // Zone 1 is printed as 33.0 and adds up to 32.92.
    expectWithin(inchesFromMillimetres(yearlyNormal(etoOfZone(zone).months)), PRINTED[zone - 1]!, zone === 1 ? 0.081 : 0.051);
  });

  it('has eighteen zones whose peak is June or July, and days that make up the months', () => {
    expect(etoZones).toHaveLength(18);
    for (const zone of etoZones) {
      const { months } = etoOfZone(zone);
      expect([6, 7]).toContain(peakMonth(months));
      expect(dailyNormal(months, 7) * 31).toBeCloseTo(months[6]!, 9);
    }
    expect(() => etoOfZone(19)).toThrowError(expect.objectContaining({ code: 'ETO_ZONE_UNKNOWN' }));
  });
});
