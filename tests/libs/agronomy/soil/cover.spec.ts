import { coverage, layerVolume } from '@rillbook/agronomy/soil/cover/layer-volume.js';
import { mulchedEvaporation, usualMulchDepth } from '@rillbook/agronomy/soil/cover/mulch.js';
import { organicMatterWaterAtMost } from '@rillbook/agronomy/soil/cover/organic-matter.js';
import { squareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });
const CUBIC_YARD = 27 * 0.3048 ** 3;

describe('mulch and compost', () => {
  // Arithmetic: yd3 = ft2 x in / 324; 1,000 ft2 at 1 in take 3.086.
  it('1,000 ft2 an inch deep take 3.086 yd3', () => {
    expect(layerVolume(squareMetresFromSquareFeet(1000), millimetresFromInches(1)) / CUBIC_YARD).toBeCloseTo(1000 / 324, 9);
  });

  // Model Water Efficient Landscape Ordinance (from memory): 4 yd3 of compost per 1,000 ft2 is a layer of 1.3 in.
  it('4 yd3 on 1,000 ft2 lie 1.296 in deep', () => {
    const area = coverage((4 * CUBIC_YARD) as ReturnType<typeof layerVolume>, millimetresFromInches(1.296));
    expect(area / squareMetresFromSquareFeet(1000)).toBeCloseTo(1, 3);
  });

  it('a volume covers the area that it was computed for', () => {
    const some = fc.double({ min: 0.1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(some, fc.double({ min: 1, max: 500, noNaN: true }), (area, depth) => {
        expect(coverage(layerVolume(squareMetres(area), millimetres(depth)), millimetres(depth)) / area).toBeCloseTo(1, 9);
      }),
    );
    expect(() => layerVolume(squareMetres(-1), millimetres(10))).toThrowError(code('LAYER_OUT_OF_DOMAIN'));
    expect(() => coverage(layerVolume(squareMetres(1), millimetres(10)), millimetres(0))).toThrowError(code('LAYER_OUT_OF_DOMAIN'));
  });

  // FAO-56, chapter 11, from memory: about 5 % less for each 10 % of organic mulch.
  it('mulch takes 5 % of the evaporation of bare soil for each 10 % of cover', () => {
    expect([0, 0.1, 0.5, 1].map((cover) => mulchedEvaporation(0.4, cover))).toEqual(
      [0.4, 0.38, 0.3, 0.2].map((ke) => expect.closeTo(ke, 12)),
    );
    expect(() => mulchedEvaporation(0.4, 1.1)).toThrowError(code('MULCH_OUT_OF_DOMAIN'));
    expect(usualMulchDepth().low).toBeLessThan(usualMulchDepth().high);
  });

  // MSU Extension citing ATTRA: 16,500 gal per acre-foot for 1 %, about 0.6 in of water in a foot of soil.
  it('organic matter holds at most 0.6 in more in a foot of soil for each percent, and in proportion', () => {
    const foot = millimetresFromInches(12);
    expect(organicMatterWaterAtMost(1, foot) / millimetresFromInches(1)).toBeCloseTo(0.6077, 3);
    expect(organicMatterWaterAtMost(2, millimetresFromInches(6))).toBeCloseTo(organicMatterWaterAtMost(1, foot), 9);
    expect(() => organicMatterWaterAtMost(101, foot)).toThrowError(code('ORGANIC_MATTER_OUT_OF_DOMAIN'));
  });
});
