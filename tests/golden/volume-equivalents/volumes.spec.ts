import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import {
  gallonsPerMinuteFromLitresPerMinute,
  litresPerMinute,
  litresPerMinuteFromGallonsPerMinute,
  litresPerSecondFromLitresPerMinute,
} from '@rillbook/units/flow.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { gallonsFromLitres, litresFrom, litresFromDepth, type OtherVolumeUnit, type VolumeUnit, volumeIn } from '@rillbook/units/volume.js';
import { expect, it } from 'vitest';
import { expectGolden, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks, gallonsPerInchSquareFoot } from './values.js';

const gallons = (unit: VolumeUnit | OtherVolumeUnit) => gallonsFromLitres(litresFrom(1, unit));
const anInchOn = (squareFeet: number) => litresFromDepth(millimetresFromInches(1), squareMetresFromSquareFeet(squareFeet));

const computed: Readonly<Record<keyof typeof checks, () => Readonly<Record<string, GoldenValue>>>> = {
  'ml-001': () => ({ CCF: gallons('CCF'), acre_ft: gallons('acre-ft'), acre_in: gallons('acre-in'), m3: gallons('m3') }),
  'ml-054': () => ({
    acre_foot: gallons('acre-ft'),
    acre_foot_ft3: volumeIn(litresFrom(1, 'acre-ft'), 'ft3'),
    acre_inch: gallons('acre-in'),
    ft3: gallons('ft3'),
    gpm_in_Ls: litresPerSecondFromLitresPerMinute(litresPerMinuteFromGallonsPerMinute(1)),
    gpm_for_1_acre_inch_per_hour: gallonsPerMinuteFromLitresPerMinute(litresPerMinute(litresFrom(1, 'acre-in') / 60)),
  }),
  'cubic-foot-and-others': () => ({
    ft3: gallons('ft3'),
    CCF_in_kgal: volumeIn(litresFrom(1, 'CCF'), 'kgal'),
    kgal_in_CCF: volumeIn(litresFrom(1, 'kgal'), 'CCF'),
    imperial_gal: litresFrom(1, 'imperial gal'),
  }),
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute());
});

it('an inch on an acre is an acre-inch, on a square foot 0.6233 gal', () => {
  expect(volumeIn(anInchOn(43_560), 'acre-in')).toBeCloseTo(1, 12);
  const off = Math.abs(gallonsFromLitres(anInchOn(1)) - gallonsPerInchSquareFoot.gallons);
  expect(off).toBeLessThanOrEqual(gallonsPerInchSquareFoot.tolerance);
});
