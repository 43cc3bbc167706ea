import { allowableSurfaceAccumulation } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { basicIntakeRate } from '@rillbook/agronomy/soil/basic-intake-rate.js';
import type { SoilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import { inchesPerHourFromMillimetresPerHour } from '@rillbook/units/depth-rate.js';
import { inchesFromMillimetres } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';

/** Inches of water per foot of soil, from mm per m: both are ratios, a foot has 12 inches. */
const inchesPerFoot = (texture: SoilTexture): number => (availableWater(texture) / 1000) * 12;

describe('Soil tables', () => {
  it.each<[SoilTexture, number, number]>([
    ['sand', 0.4, 1.25],
    ['loamy sand', 0.75, 1.25],
    ['sandy loam', 1.25, 1.75],
    ['loam', 1.5, 2.3],
    ['silt loam', 1.5, 2.3],
    ['clay loam', 1.75, 2.5],
    ['silty clay', 1.6, 2.5],
    ['clay', 1.6, 2.5],
  ])('UC Drought Management, available water of %s within %d to %d in/ft', (texture, low, high) => {
    expect(inchesPerFoot(texture)).toBeGreaterThanOrEqual(low);
    expect(inchesPerFoot(texture)).toBeLessThanOrEqual(high);
  });

  it.each<[SoilTexture, number, number]>([
    ['clay', 0.1, 0.2],
    ['silty clay', 0.15, 0.23],
    ['clay loam', 0.2, 0.26],
    ['loam', 0.35, 0.3],
    ['sandy loam', 0.4, 0.33],
    ['loamy sand', 0.5, 0.36],
    ['sand', 0.6, 0.4],
  ])('irrigation trade scheduling table (2005), flat ground: %s takes %d in/h and holds %d in', (texture, intake, accumulation) => {
    expectWithin(inchesPerHourFromMillimetresPerHour(basicIntakeRate(texture)), intake, 1e-9);
    expectWithin(inchesFromMillimetres(allowableSurfaceAccumulation(texture, 2)), accumulation, 1e-9);
  });
});
