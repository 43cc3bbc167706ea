import { squareMetresFromSquareInches } from '@rillbook/units/area.js';
import { kilopascalsFromPsi } from '@rillbook/units/pressure.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { litresFrom } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

// NIST Special Publication 811 (2008), Appendix B.8, and definitions. Equivalents of volume and flow: tests/golden/volume-equivalents.
describe('Published equivalents', () => {
  it('1 gal is 231 in3 and 3.785411784 L, 1 kgal a thousand of them, 1 imperial gal 4.54609 L', () => {
    expect(litresFrom(1, 'gal')).toBe(3.785411784);
    expectWithin(litresFrom(1, 'kgal'), 3785.411784, 1e-9);
    expect(litresFrom(1, 'imperial gal')).toBe(4.54609);
  });

  it('1 mph is 0.44704 m/s, 1 langley 0.041868 MJ/m2, 1 psi 6.894757 kPa, 1 in2 6.4516 cm2', () => {
    expect(metresPerSecondFromMilesPerHour(1)).toBe(0.44704);
    expect(megajoulesPerSquareMetreDayFromLangleys(1)).toBe(0.041868);
    expectWithin(kilopascalsFromPsi(1), 6.894757, 5e-7);
    expectWithin(squareMetresFromSquareInches(1) * 10_000, 6.4516, 1e-12);
  });
});
