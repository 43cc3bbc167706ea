import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { youngDensityFactor, youngPlantFactor, youngRootDepth } from '@rillbook/agronomy/plants/establishment/young-plants.js';
import { HIGHEST_PLANT_FACTOR, plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { DEEPEST_ROOTS, rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { basicIntakeRate } from '@rillbook/agronomy/soil/basic-intake-rate.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { allowableSurfaceAccumulation } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { evaporableWaterByTexture } from '@rillbook/agronomy/water-balance/surface/evaporable-water-by-texture.js';
import { defaultPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/default-precipitation-rate.js';
import { designPressure } from '@rillbook/irrigation/hardware/pressure/design-pressure.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { defaultRelativeSd } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import { inchesPerHourFromMillimetresPerHour, millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { inchesFromMillimetres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { psiFromKilopascals } from '@rillbook/units/pressure.js';
import { describe, expect, it } from 'vitest';

// Every cell of the tables that the product falls back on: a digit that slips is noticed here, whatever else it moves.

const middle = ([low, high]: readonly [number, number]) => (low + high) / 2;

describe('plants that nobody described', () => {
  // Usual single values of ordinance worksheets (0.1, 0.2, 0.5, 0.8: a filled-in public worksheet); ANSI/ASABE S623 for kinds of plant, turf
  // and annuals from memory; vegetables FAO-56 Table 12, from memory. Root depths: middles of the Arizona guideline's ranges (trees 24 to 36,
  // shrubs 18 to 24, groundcover and annuals 8 to 12, grass 6 to 10 in), City of Phoenix 1 ft, turf to 12 in (UC San Joaquin). Depletion:
  // FAO-56 p for turf, 0.5 in general, 0.3 to 0.4 for shallow-rooted annuals (from memory). Root balls are common practice, no source.
  it.each([
    ['turf cool-season', 0.8, middle([6, 10]), 0.4, 2],
    ['turf warm-season', 0.6, 12, 0.5, 2],
    ['trees', 0.5, middle([24, 36]), 0.5, 14],
    ['shrubs', 0.5, middle([18, 24]), 0.5, 10],
    ['groundcover', 0.5, middle([8, 12]), 0.5, 4],
    ['perennials', 0.5, 12, 0.5, 6],
    ['annuals', 0.8, middle([8, 12]), middle([0.3, 0.4]), 4],
    ['vegetables', 1, 12, middle([0.3, 0.4]), 4],
    ['mixed', 0.5, 12, 0.5, 6],
  ] as const)('%s: factor %d, roots %d in, depletion %d, root ball %d in', (plants, factor, roots, depletion, ball) => {
    expect(plantFactor(null, null, plants)).toEqual({ plantFactor: factor, assumed: true });
    const found = rootDepth(null, plants);
    expect([inchesFromMillimetres(found.rootDepth), found.assumed]).toEqual([expect.closeTo(roots, 9), true]);
    expect(managementAllowedDepletion(plants)).toBeCloseTo(depletion, 12);
    expect(inchesFromMillimetres(youngRootDepth(plants, found.rootDepth, 0))).toBeCloseTo(ball, 9);
  });

  it('take the usual value of their water need, and turf of moderate need its own', () => {
    const found = (['very low', 'low', 'moderate', 'high'] as const).map((need) => plantFactor(null, need, 'shrubs').plantFactor);
    expect(found).toEqual([0.1, 0.2, 0.5, 0.8]);
    expect(plantFactor(null, 'moderate', 'turf warm-season').plantFactor).toBe(0.6);
    expect(plantFactor(null, 'moderate', 'turf cool-season').plantFactor).toBe(0.5);
    expect(plantFactor(null, 'high', 'turf warm-season').plantFactor).toBe(0.8);
  });

  it('in shade need the middle of the guide’s low class, 0.5 to 0.9, and half way to it in part shade (assumptions)', () => {
    expect(shadeFactor('shade')).toBeCloseTo(middle([0.5, 0.9]), 12);
    expect(shadeFactor('part')).toBeCloseTo(middle([middle([0.5, 0.9]), 1]), 12);
    expect(shadeFactor('full')).toBe(1);
  });

  it('newly planted drink as their bed is watered, and grow evenly into what they will be', () => {
    expect(youngPlantFactor('turf cool-season', 0.6, 0)).toBe(1);
    expect(youngPlantFactor('shrubs', 0.5, 0)).toBe(0.8);
    expect(youngPlantFactor('shrubs', 0.5, 0.5)).toBeCloseTo(0.65, 12);
    expect(youngDensityFactor('shrubs', 1, 0)).toBeCloseTo(middle([0.5, 0.9]), 12);
    expect(youngDensityFactor('shrubs', 1, 0.5)).toBeCloseTo(0.85, 12);
    expect(inchesFromMillimetres(youngRootDepth('shrubs', millimetresFromInches(20), 0.25))).toBeCloseTo(12.5, 9);
    expect(() => youngRootDepth('shrubs', millimetresFromInches(20), 1.01)).toThrow();
  });

  it('are believed up to the same ends as ever: 1.5 of ETo, roots of 3 m', () => {
    expect(plantFactor(1.5, null, null)).toEqual({ plantFactor: 1.5, assumed: false });
    expect(() => plantFactor(1.51, null, null)).toThrow();
    expect(rootDepth(millimetres(3000), null).rootDepth).toBe(3000);
    expect(() => rootDepth(millimetres(3001), null)).toThrow();
    expect([HIGHEST_PLANT_FACTOR, DEEPEST_ROOTS]).toEqual([1.5, 3000]);
  });
});

describe('soil that nobody tested', () => {
  // The trade's scheduling table of 2005: basic intake in/h, surface accumulation in by slope (texture names, slope columns and available water
  // from memory); silt loam between loam and clay loam. REW and TEW: ranges of FAO-56 Table 19, from memory.
  it.each([
    ['sand', 0.6, [0.4, 0.35, 0.3, 0.25], 0.06, { rew: [2, 7], tew: [6, 12] }],
    ['loamy sand', 0.5, [0.36, 0.3, 0.26, 0.22], 0.08, { rew: [4, 8], tew: [9, 14] }],
    ['sandy loam', 0.4, [0.33, 0.29, 0.24, 0.2], 0.12, { rew: [6, 10], tew: [15, 20] }],
    ['loam', 0.35, [0.3, 0.25, 0.21, 0.17], 0.17, { rew: [8, 10], tew: [16, 22] }],
    ['silt loam', 0.3, [0.29, 0.24, 0.2, 0.16], 0.18, { rew: [8, 11], tew: [18, 25] }],
    ['clay loam', 0.2, [0.26, 0.22, 0.18, 0.15], 0.18, { rew: [8, 11], tew: [22, 27] }],
    ['silty clay', 0.15, [0.23, 0.19, 0.16, 0.13], 0.17, { rew: [8, 12], tew: [22, 28] }],
    ['clay', 0.1, [0.2, 0.15, 0.1, 0.1], 0.17, { rew: [8, 12], tew: [22, 29] }],
  ] as const)('%s: intake %d in/h, accumulation %j in, available %d in/in', (texture, intake, held, available, { rew, tew }) => {
    expect(inchesPerHourFromMillimetresPerHour(basicIntakeRate(texture))).toBeCloseTo(intake, 9);
    // The ends of the slope classes, and just above them.
    const ends = [3, 6, 12, 13, 3.1, 6.1, 12.1].map((slope) => inchesFromMillimetres(allowableSurfaceAccumulation(texture, slope)));
    expect(ends).toEqual([...held, ...held.slice(1)].map((depth) => expect.closeTo(depth, 9)));
    expect(availableWater(texture) / 1000).toBeCloseTo(available, 9);
    const { readilyEvaporableWater, totalEvaporableWater } = evaporableWaterByTexture(texture);
    expect([readilyEvaporableWater, totalEvaporableWater]).toEqual([middle(rew), middle(tew)]);
  });
});

describe('hardware that nobody tested', () => {
  // DU: the federal budget's defaults (from memory), rotary nozzles, bubblers and hand common practice. Rate: sprays 0.5 in in 20 min (Utah state
  // guide), the rest common practice. Pressure: sprays 30, rotors 45 to 50 psi (desert water agencies), the rest common practice.
  it.each([
    ['spray', 0.65, 60 * (0.5 / 20), [30, 30]],
    ['rotor', 0.7, middle([0.4, 0.6]), [45, 50]],
    ['rotary nozzle', 0.7, 0.45, [40, 45]],
    ['bubbler', 0.8, null, [20, 30]],
    ['microspray', 0.7, 1, [20, 30]],
    ['drip', 0.7, 0.6, [20, 30]],
    ['subsurface drip', 0.9, 0.6, [20, 30]],
    ['hand', 0.7, null, null],
  ] as const)('%s: DU %d, %d in/h, %j psi', (method, uniformity, rate, pressure) => {
    expect(defaultUniformity(method).value).toBe(uniformity);
    const found = defaultPrecipitationRate(method);
    expect(found && inchesPerHourFromMillimetresPerHour(millimetresPerHour(found.value))).toEqual(rate && expect.closeTo(rate, 9));
    const design = designPressure(method);
    expect(design && [design.from, design.to].map((end) => psiFromKilopascals(end))).toEqual(
      pressure && pressure.map((end) => expect.closeTo(end, 9)),
    );
  });
});

it('errs by what is documented: defaults, common practice but for the meter (98.5 to 101.5 %, US Navy MO-221)', () => {
  expect(defaultRelativeSd).toEqual({
    area: { recorded: 0.05, assumed: 0.15 },
    plantFactor: { recorded: 0.15, assumed: 0.25 },
    densityOrShade: 0.1,
    rootStorage: { recorded: 0.2, assumed: 0.35 },
    uniformity: { recorded: 0.08, assumed: 0.15 },
    rain: 0.15,
    flow: { measured: 0.05, nameplate: 0.15, assumed: 0.3, derived: 0.2 },
    rainSensor: 0.3,
    settingsFromWeather: 0.3,
    handVolume: 0.3,
    meter: 0.015,
    indoor: { stated: 0.25, winter: 0.15 },
    filled: 0.3,
    apportioning: { share: 0.2, run: 1.25 },
  });
});
