import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { plantsWords, sunWords, waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { allowableSurfaceAccumulation, slopeClass } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { basicIntakeRate } from '@rillbook/agronomy/soil/basic-intake-rate.js';
import { soilTexture, soilTextures } from '@rillbook/agronomy/soil/soil-texture.js';
import { millimetres } from '@rillbook/units/length.js';
import { describe, expect, it } from 'vitest';

const code = (found: string) => expect.objectContaining({ code: found });

describe('plants', () => {
  it('a stated factor stands above the water need, the need above the kind of plant', () => {
    expect(plantFactor(0.33, 'high', 'shrubs')).toEqual({ plantFactor: 0.33, assumed: false });
    expect(plantFactor(null, 'low', 'turf cool-season')).toMatchObject({ plantFactor: 0.2, assumed: true });
    expect(plantFactor(null, null, null)).toMatchObject({ plantFactor: 0.5, assumed: true });
    expect(plantFactor(null, 'moderate', 'turf warm-season').plantFactor).toBe(0.6);
  });

  it('thirstier categories need more', () => {
    const factors = waterNeeds.map((need) => plantFactor(null, need, 'mixed').plantFactor);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
  });

  it('less sun never needs more', () => {
    const factors = sunWords.map((sun) => shadeFactor(sun));
    expect(factors).toEqual([...factors].sort((a, b) => b - a));
    expect(shadeFactor(null)).toBe(1);
  });

  it('has roots and depletion for every word', () => {
    for (const plants of plantsWords) {
      expect(rootDepth(null, plants).rootDepth).toBeGreaterThan(150);
      expect(managementAllowedDepletion(plants)).toBeGreaterThan(0.3);
      expect(managementAllowedDepletion(plants)).toBeLessThanOrEqual(0.5);
    }
    expect(rootDepth(millimetres(400), 'trees')).toEqual({ rootDepth: 400, assumed: false });
    expect(rootDepth(null, 'trees').assumed).toBe(true);
    expect(managementAllowedDepletion(null)).toBe(0.5);
  });

  it('refuses what cannot be, by code', () => {
    expect(() => plantFactor(80, null, null)).toThrowError(code('PLANT_FACTOR_OUT_OF_DOMAIN'));
    expect(() => densityFactor(0)).toThrowError(code('DENSITY_FACTOR_OUT_OF_DOMAIN'));
    expect(() => rootDepth(millimetres(-1), null)).toThrowError(code('ROOT_DEPTH_OUT_OF_DOMAIN'));
  });
});

describe('soil', () => {
  it('assumes loam and says so', () => {
    expect(soilTexture(null)).toEqual({ texture: 'loam', assumed: true });
    expect(soilTexture('clay')).toEqual({ texture: 'clay', assumed: false });
  });

  it('finer soils take water more slowly and steeper ones hold less of it', () => {
    const intakes = soilTextures.map((texture) => basicIntakeRate(texture));
    expect(intakes).toEqual([...intakes].sort((a, b) => b - a));
    for (const texture of soilTextures) {
      const held = [2, 5, 10, 20].map((slope) => allowableSurfaceAccumulation(texture, slope));
      expect(held).toEqual([...held].sort((a, b) => b - a));
      expect(availableWater(texture)).toBeGreaterThan(50);
    }
  });

  it('puts a slope between two classes into the steeper', () => {
    expect([0, 3, 3.5, 6, 6.1, 12, 12.5, 80].map(slopeClass)).toEqual(['0-3', '0-3', '4-6', '4-6', '7-12', '7-12', '13+', '13+']);
    expect(() => slopeClass(-1)).toThrowError(code('SLOPE_OUT_OF_DOMAIN'));
  });
});
