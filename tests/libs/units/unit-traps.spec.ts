import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { areaPerHead, precipitationRateOfPattern, triangularRowSpacing } from '@rillbook/irrigation/hardware/precipitation/head-layout.js';
import { precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { squareMetres } from '@rillbook/units/area.js';
import { inchesPerHourFromMillimetresPerHour } from '@rillbook/units/depth-rate.js';
import {
  gallonsPerHourFromLitresPerMinute,
  litresPerHourFromLitresPerMinute,
  litresPerMinuteFromGallonsPerMinute,
  litresPerSecondFromLitresPerMinute,
} from '@rillbook/units/flow.js';
import { metresFromFeet } from '@rillbook/units/length.js';
import { kilopascals, kilopascalsFromPsi, psiFromKilopascals } from '@rillbook/units/pressure.js';
import { gallonsFromLitres, isVolumeUnit, litresFrom, litresFromGallons, volumeIn } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';

describe('unit traps', () => {
  // Cross-checked in Canadian tables: 4.546 L; a fifth more than the US gallon.
  it('imperial gallons: a gallon is the US gallon unless it says imperial', () => {
    expect(litresFromGallons(1)).toBe(litresFrom(1, 'gal'));
    expect(gallonsFromLitres(litresFrom(1, 'imperial gal'))).toBeCloseTo(1.20095, 5);
    expect(isVolumeUnit('imperial gal')).toBe(false);
  });

  // Unit definitions; the factors by which a register read in the wrong unit is off.
  it('CCF against kgal: 0.748 one way, 1.337 the other; cubic feet against gallons 7.48; CCF against gallons 748', () => {
    const inKgal = volumeIn(litresFrom(1, 'CCF'), 'kgal');
    expect(inKgal).toBeCloseTo(0.748, 3);
    expect(1 / inKgal).toBeCloseTo(1.337, 3);
    expect(volumeIn(litresFrom(1, 'ft3'), 'gal')).toBeCloseTo(7.48, 2);
    expect(volumeIn(litresFrom(1, 'CCF'), 'gal')).toBeCloseTo(748.05, 2);
  });

  it('CCF and HCF are the same hundred cubic feet', () => {
    expect(litresFrom(3, 'HCF')).toBe(litresFrom(3, 'CCF'));
    expect(volumeIn(litresFrom(3, 'HCF'), 'ft3')).toBeCloseTo(300, 9);
  });

  // Extension circular SCR-23 prints 3,360 ft3 for an acre-inch; 43,560 / 12 is 3,630.
  it('acre-inch: a twelfth of an acre-foot, 3,630 ft3 and not 3,360', () => {
    expect(volumeIn(litresFrom(1, 'acre-in'), 'ft3')).toBeCloseTo(3630, 9);
    expect(volumeIn(litresFrom(1, 'acre-ft'), 'acre-in')).toBeCloseTo(12, 12);
  });

  it('gpm/L: a gallon a minute is 3.785 L a minute, 0.0631 L a second, 227 L an hour and 60 gallons an hour', () => {
    const flow = litresPerMinuteFromGallonsPerMinute(1);
    expect(flow).toBeCloseTo(3.785, 3);
    expect(litresPerSecondFromLitresPerMinute(flow)).toBeCloseTo(0.0631, 4);
    expect(litresPerHourFromLitresPerMinute(flow)).toBeCloseTo(227.12, 2);
    expect(gallonsPerHourFromLitresPerMinute(flow)).toBeCloseTo(60, 12);
  });

  // A public page prints 0.89 in/h for 25 by 30 ft and 6 gpm in a triangle: it takes 0.866 of a row spacing that already holds it.
  it('triangular spacing: 0.866 is applied once', () => {
    const [spacing, flow] = [metresFromFeet(30), litresPerMinuteFromGallonsPerMinute(6)];
    const rows = triangularRowSpacing(spacing);
    const rate = precipitationRateOfPattern(flow, spacing, rows);
    const squareRate = precipitationRateOfPattern(flow, spacing, spacing);
    expect(rate / squareRate).toBeCloseTo(1 / 0.866, 3);

    // The same from many heads on the ground that they cover: a hundred rows of a hundred.
    const covered = squareMetres(100 * spacing * (100 * rows));
    const whole = precipitationRateFromFlow(flowOfHeads([{ count: 10_000, flow }]), covered);
    expect(whole / rate).toBeCloseTo(1, 9);
    expect(areaPerHead(spacing, rows) / spacing ** 2).toBeCloseTo(0.866, 3);
    const page = precipitationRateOfPattern(flow, metresFromFeet(25), metresFromFeet(30));
    expect(inchesPerHourFromMillimetresPerHour(page)).toBeCloseTo(0.77, 2);
  });

  // NIST Special Publication 811 (2008), Appendix B.8.
  it('psi/kPa: 30 psi are 206.8 kPa, and 30 kPa are 4.35 psi', () => {
    expect(kilopascalsFromPsi(30)).toBeCloseTo(206.84, 2);
    expect(psiFromKilopascals(kilopascals(30))).toBeCloseTo(4.351, 3);
  });
});
