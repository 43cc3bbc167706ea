import { coverage } from '@rillbook/agronomy/soil/cover/layer-volume.js';
import { usualMulchDepth } from '@rillbook/agronomy/soil/cover/mulch.js';
import { organicMatterWaterAtMost } from '@rillbook/agronomy/soil/cover/organic-matter.js';
import { squareFeetFromSquareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { inchesFromMillimetres, metresFromFeet, millimetresFromInches, millimetresFromMetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { gallonsFromLitres, litresFromDepth } from '@rillbook/units/volume.js';
import { describe, it } from 'vitest';
import { expectGolden, given } from '../golden-check.js';
import { checks } from './values.js';

/** A cubic yard is 27 cubic feet of 0.3048 m a side. */
const CUBIC_YARD = (27 * 0.3048 ** 3) as Quantity<'m3'>;
/** Square feet in an acre. */
const ACRE = 43_560;
/** Conversions to inches and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));

describe('mulch and compost', () => {
  it.each(['mp-000', 'mp-002', 'mp-003'] as const)('%s: area that a cubic yard covers', (id) => {
    const check = checks[id];
    expectGolden(check, {
      area: dusted(squareFeetFromSquareMetres(coverage(CUBIC_YARD, millimetresFromInches(given(check, 'depth'))))),
    });
  });

  it('mp-005: water that organic matter holds at most, in an acre-foot of soil', () => {
    const check = checks['mp-005'];
    const depth = organicMatterWaterAtMost(given(check, 'organic_matter_increase'), millimetresFromMetres(metresFromFeet(1)));
    expectGolden(check, { water: dusted(gallonsFromLitres(litresFromDepth(depth, squareMetresFromSquareFeet(ACRE)))) });
  });

  it('mp-008: what a square foot of desert turf needs in a year', () => {
    const check = checks['mp-008'];
    const litres = litresFromDepth(millimetresFromInches(given(check, 'net_ET')), squareMetresFromSquareFeet(1));
    expectGolden(check, { volume: gallonsFromLitres(litres) });
  });

  it('mp-009: usual depth of mulch', () => {
    const { low, high } = usualMulchDepth();
    expectGolden(checks['mp-009'], { depth_low: dusted(inchesFromMillimetres(low)), depth_high: dusted(inchesFromMillimetres(high)) });
  });
});
