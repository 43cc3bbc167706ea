import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { gallonsFromLitres, litresFrom, litresFromDepth } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// Lists of equivalents in water supply circulars (extension circular SCR-23 and others) and unit definitions; 1 m3 from memory.
describe('Published equivalents', () => {
  it('1 CCF is 748.05 gal, 1 ft3 7.4805 gal, 1 m3 264.172 gal', () => {
    expectWithin(gallonsFromLitres(litresFrom(1, 'CCF')), 748.05, 0.005);
    expectWithin(gallonsFromLitres(litresFrom(1, 'HCF')), 748.05, 0.005);
    expectWithin(gallonsFromLitres(litresFrom(1, 'ft3')), 7.4805, 0.00005);
    expectWithin(gallonsFromLitres(litresFrom(1, 'm3')), 264.172, 0.0005);
    expect(litresFrom(1, 'gal')).toBe(3.785411784);
    expectWithin(litresFrom(1, 'kgal'), 3785.411784, 1e-9);
  });

  it('1 acre-foot is 325,851 gal, 1 acre-inch 27,154 gal, 1 in on 1 ft2 0.6233 gal', () => {
    const inchOn = (squareFeet: number) =>
      gallonsFromLitres(litresFromDepth(millimetresFromInches(1), squareMetresFromSquareFeet(squareFeet)));
    expectWithin(12 * inchOn(43_560), 325_851, 1);
    expectWithin(inchOn(43_560), 27_154, 0.5);
    expectWithin(inchOn(1), 0.6233, 0.0001);
  });

  it('1 gpm is 0.06309 L/s, 1 mph 0.44704 m/s, 1 langley 0.041868 MJ/m2', () => {
    expectWithin(litresPerMinuteFromGallonsPerMinute(1) / 60, 0.06309, 0.000005);
    expect(metresPerSecondFromMilesPerHour(1)).toBe(0.44704);
    expect(megajoulesPerSquareMetreDayFromLangleys(1)).toBe(0.041868);
  });
});
