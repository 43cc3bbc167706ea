import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { youngRootDepth } from '@rillbook/agronomy/plants/establishment/young-plants.js';
import { totalWaterApplied } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { transpiringArea } from '@rillbook/agronomy/plants/published/hydrozone-rules.js';
import { monthlyTurfCoefficient } from '@rillbook/agronomy/plants/published/monthly-turf-coefficient.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { allowableSurfaceAccumulation, slopeClass } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { coverage, layerVolume } from '@rillbook/agronomy/soil/cover/layer-volume.js';
import { mulchedEvaporation } from '@rillbook/agronomy/soil/cover/mulch.js';
import { organicMatterWaterAtMost } from '@rillbook/agronomy/soil/cover/organic-matter.js';
import { maximumPrecipitationRate } from '@rillbook/agronomy/soil/maximum-precipitation-rate.js';
import { curveNumberRetention } from '@rillbook/agronomy/water-balance/rain/curve-number-runoff.js';
import { dependableRainRatio } from '@rillbook/agronomy/water-balance/rain/dependable-rain-ratio.js';
import { fixedFractionRain } from '@rillbook/agronomy/water-balance/rain/fixed-fraction-rain.js';
import { adjustedDepletionFraction } from '@rillbook/agronomy/water-balance/root-zone/depletion-fraction.js';
import { readilyAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/readily-available-water.js';
import { totalAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { waterStressCoefficient } from '@rillbook/agronomy/water-balance/root-zone/water-stress-coefficient.js';
import { evaporationCoefficient } from '@rillbook/agronomy/water-balance/surface/evaporation-coefficient.js';
import { evaporationReduction } from '@rillbook/agronomy/water-balance/surface/evaporation-reduction.js';
import { exposedWettedFraction } from '@rillbook/agronomy/water-balance/surface/exposed-wetted-fraction.js';
import { totalEvaporableWater } from '@rillbook/agronomy/water-balance/surface/total-evaporable-water.js';
import { holdAtTheEdge, of, type Row } from '../at-the-edge.js';
import { expect, it } from 'vitest';
import { wettedFraction } from '@rillbook/agronomy/water-balance/surface/wetted-fraction.js';
import { refusalOf } from '../refusal-of.js';

const NONE = Number.NaN;
const ENDLESS = Number.POSITIVE_INFINITY;

const accumulationOfLoam = (slope: number) => allowableSurfaceAccumulation('loam', slope);
const rateOfLoam = (slope: number) => maximumPrecipitationRate('silt loam', slope, 'bare');
const ofStatedFactor = (stated: number) => plantFactor(stated, null, null);
const ofStatedDepth = (stated: number) => rootDepth(stated as never, null);
const turfInMonth = (month: number) => monthlyTurfCoefficient('turf warm-season', month);
const youngDepth = (share: number) => youngRootDepth('trees', 500 as never, share);
const evaporationOfLimits = (basalCoefficient: number, maximumCoefficient: number) =>
  evaporationCoefficient(1, { basalCoefficient, maximumCoefficient, exposedWettedFraction: 1 });
const evaporationOfShares = (evaporationReduction: number, exposedWettedFraction: number) =>
  evaporationCoefficient(evaporationReduction, { basalCoefficient: 0, maximumCoefficient: 1, exposedWettedFraction });
const wettedAfter = (previousFraction: number, irrigatedFraction: number) =>
  of((previous, rain, irrigation, share) => wettedFraction(previous, { rain, irrigation, irrigatedFraction: share }))(
    previousFraction,
    0,
    1,
    irrigatedFraction,
  );
const wettedBy = (rain: number, irrigation: number) =>
  of((fell, applied) => wettedFraction(0.2, { rain: fell, irrigation: applied, irrigatedFraction: 0.4 }))(rain, irrigation);
const soilWater = (fieldCapacity: number, wiltingPoint: number) => of(totalAvailableWater)(fieldCapacity, wiltingPoint, 1000);
const evaporable = (fieldCapacity: number, wiltingPoint: number) => of(totalEvaporableWater)(fieldCapacity, wiltingPoint, 100);

const ROWS: readonly Row[] = [
  [
    slopeClass,
    'SLOPE_OUT_OF_DOMAIN',
    ['slope'],
    [[-0.1], [ENDLESS], [NONE]],
    [
      [[0], '0-3'],
      [[3], '0-3'],
      [[3.1], '4-6'],
      [[6], '4-6'],
      [[12], '7-12'],
      [[12.1], '13+'],
    ],
  ],
  [
    accumulationOfLoam,
    'SLOPE_OUT_OF_DOMAIN',
    ['slope'],
    [[-1]],
    [
      [[3], 7.62],
      [[4], 6.35],
      [[12], 5.334],
      [[13], 4.318],
    ],
  ],
  [
    rateOfLoam,
    'SLOPE_OUT_OF_DOMAIN',
    ['slope'],
    [[-0.1], [ENDLESS], [NONE]],
    [
      [[0], 12.7],
      [[5], 12.7],
      [[8], 10.16],
      [[12], 7.62],
      [[12.1], 5.08],
    ],
  ],
  [
    mulchedEvaporation,
    'MULCH_OUT_OF_DOMAIN',
    ['evaporationCoefficient', 'mulchCover'],
    [
      [-1, 0.5],
      [1, -0.1],
      [1, 1.1],
      [NONE, 0],
    ],
    [
      [[0, 0.5], 0],
      [[1, 0], 1],
      [[1, 1], 0.5],
    ],
  ],
  [
    of(layerVolume),
    'LAYER_OUT_OF_DOMAIN',
    ['area', 'layerDepth'],
    [
      [-1, 1],
      [1, -1],
      [NONE, 1],
    ],
    [
      [[0, 1], 0],
      [[1, 0], 0],
      [[100, 75], 7.5],
    ],
  ],
  [
    of(coverage),
    'LAYER_OUT_OF_DOMAIN',
    ['layerVolume', 'layerDepth'],
    [
      [-1, 1],
      [1, 0],
      [NONE, 1],
    ],
    [
      [[0, 1], 0],
      [[7.5, 75], 100],
    ],
  ],
  [
    of(organicMatterWaterAtMost),
    'ORGANIC_MATTER_OUT_OF_DOMAIN',
    ['organicMatterPercent', 'soilDepth'],
    [
      [-1, 300],
      [101, 300],
      [1, -1],
    ],
    [
      [[0, 300], 0],
      [[5, 0], 0],
    ],
  ],
  [
    ofStatedFactor,
    'PLANT_FACTOR_OUT_OF_DOMAIN',
    ['plantFactor'],
    [[-0.1], [1.6], [NONE]],
    [
      [[0], { plantFactor: 0, assumed: false }],
      [[1.5], { plantFactor: 1.5, assumed: false }],
    ],
  ],
  [ofStatedDepth, 'ROOT_DEPTH_OUT_OF_DOMAIN', ['rootDepth'], [[0], [3001], [NONE]], [[[3000], { rootDepth: 3000, assumed: false }]]],
  [
    turfInMonth,
    'MONTH_OUT_OF_DOMAIN',
    ['month'],
    [[0], [13]],
    [
      [[1], 0.52],
      [[12], 0.53],
    ],
  ],
  [
    of(transpiringArea),
    'CANOPY_OUT_OF_DOMAIN',
    ['bedArea', 'canopyArea'],
    [
      [0, 0],
      [1, -1],
      [1, 2],
    ],
    [
      [[10, 0], 0],
      [[10, 10], 10],
      [[10, 8], 10],
      [[10, 7.9], 7.9],
    ],
  ],
  [
    youngDepth,
    'ESTABLISHMENT_OUT_OF_DOMAIN',
    ['share'],
    [[-0.1], [1.1], [NONE]],
    [
      [[0], 355.6],
      [[1], 500],
      [[0.5], 427.8],
    ],
  ],
  [of(densityFactor), 'DENSITY_FACTOR_OUT_OF_DOMAIN', ['densityFactor'], [[0], [1.6], [NONE]], [[[1.5], 1.5]]],
  [
    of(totalWaterApplied).bind(null, 10),
    'IRRIGATION_EFFICIENCY_OUT_OF_DOMAIN',
    ['irrigationEfficiency'],
    [[0], [1.1], [NONE]],
    [
      [[1], 10],
      [[0.5], 20],
    ],
  ],
  [
    of(adjustedDepletionFraction),
    'DEPLETION_FRACTION_OUT_OF_DOMAIN',
    ['tableFraction'],
    [[-0.1], [1.1]],
    [
      [[0, 5], 0.1],
      [[1, 5], 0.8],
      [[0.5, 5], 0.5],
      [[0.5, 7.5], 0.4],
    ],
  ],
  [
    of(readilyAvailableWater),
    'DEPLETION_FRACTION_OUT_OF_DOMAIN',
    ['depletionFraction'],
    [[-0.1], [1.1]],
    [
      [[0, 100], 0],
      [[1, 100], 100],
    ],
  ],
  [
    soilWater,
    'SOIL_WATER_OUT_OF_DOMAIN',
    ['fieldCapacity', 'wiltingPoint'],
    [
      [0.3, -0.1],
      [0.1, 0.2],
      [1.1, 0.1],
    ],
    [
      [[0.3, 0], 300],
      [[0.2, 0.2], 0],
      [[1, 0.5], 500],
    ],
  ],
  [
    evaporable,
    'SOIL_WATER_OUT_OF_DOMAIN',
    ['fieldCapacity', 'wiltingPoint'],
    [
      [0.3, -0.1],
      [0.1, 0.2],
      [1.1, 0.1],
    ],
    [
      [[0.3, 0], 30],
      [[0.2, 0.2], 10],
      [[1, 0.5], 75],
    ],
  ],
  [
    of(waterStressCoefficient),
    'ROOT_ZONE_OUT_OF_DOMAIN',
    ['depletion', 'totalAvailableWater', 'readilyAvailableWater'],
    [
      [40, 100, -1],
      [40, 50, 60],
      [Number.NaN, 100, 40],
    ],
    [
      [[40, 100, 40], 1],
      [[40, 40, 0], 0],
      [[40, 80, 0], 0.5],
      [[40, 40, 40], 1],
    ],
  ],
  [
    of(evaporationReduction),
    'SURFACE_LAYER_OUT_OF_DOMAIN',
    ['surfaceDepletion', 'totalEvaporableWater', 'readilyEvaporableWater'],
    [
      [4, 10, -1],
      [4, 5, 6],
      [ENDLESS, 10, 4],
    ],
    [
      [[4, 10, 4], 1],
      [[4, 4, 0], 0],
      [[4, 8, 0], 0.5],
      [[4, 4, 4], 1],
    ],
  ],
  [
    evaporationOfLimits,
    'CROP_COEFFICIENT_OUT_OF_DOMAIN',
    ['basalCoefficient', 'maximumCoefficient'],
    [
      [-0.1, 1],
      [1.1, 1],
      [0, ENDLESS],
    ],
    [
      [[0, 1.2], 1.2],
      [[1, 1], 0],
    ],
  ],
  [
    evaporationOfShares,
    'SURFACE_LAYER_OUT_OF_DOMAIN',
    ['evaporationReduction', 'exposedWettedFraction'],
    [
      [-0.1, 1],
      [1.1, 1],
      [1, -0.1],
      [1, 1.1],
      [NONE, 1],
    ],
    [
      [[0, 1], 0],
      [[1, 0], 0],
      [[1, 1], 1],
    ],
  ],
  [
    wettedAfter,
    'SURFACE_LAYER_OUT_OF_DOMAIN',
    ['previousFraction', 'irrigatedFraction'],
    [
      [-0.1, 1],
      [1.1, 1],
      [1, -0.1],
      [1, 1.1],
    ],
    [
      [[0, 1], 1],
      [[1, 0], 0],
    ],
  ],
  [
    wettedBy,
    'RAIN_OUT_OF_DOMAIN',
    ['rain', 'irrigation'],
    [
      [-0.1, 0],
      [0, -0.1],
      [ENDLESS, 0],
      [0, ENDLESS],
    ],
    [
      [[0, 0], 0.2],
      [[2.9, 0], 0.2],
      [[3, 0], 1],
      [[3, 0.1], 0.4],
    ],
  ],
  [
    exposedWettedFraction,
    'GROUND_FRACTION_OUT_OF_DOMAIN',
    ['canopyCover', 'wettedFraction'],
    [
      [-0.1, 0.5],
      [1.1, 0.5],
      [0.5, -0.1],
      [0.5, 1.1],
    ],
    [
      [[0, 1], 1],
      [[1, 1], 0.01],
      [[0.5, 0], 0.01],
      [[0.6, 1], 0.4],
    ],
  ],
  [
    of(curveNumberRetention),
    'CURVE_NUMBER_OUT_OF_DOMAIN',
    ['curveNumber'],
    [[0], [101], [NONE]],
    [
      [[100], 0],
      [[50], 254],
    ],
  ],
  [
    of(fixedFractionRain).bind(null, 40),
    'RAIN_SHARE_OUT_OF_DOMAIN',
    ['share'],
    [[-0.1], [1.1]],
    [
      [[0], 0],
      [[1], 40],
    ],
  ],
  [
    of(dependableRainRatio),
    'MEAN_RAIN_OUT_OF_DOMAIN',
    ['meanAnnualRain'],
    [[76.1], [2286.1], [NONE]],
    [
      [[76.2], 0.45],
      [[2286], 0.9],
      [[88.9], 0.475],
    ],
  ],
];

holdAtTheEdge(ROWS);

it('a layer of more than numbers hold is refused', () => {
  expect(refusalOf(() => of(layerVolume)(Number.MAX_VALUE, 10))).toEqual(['LAYER_OUT_OF_DOMAIN', { value: ENDLESS }]);
  expect(refusalOf(() => of(coverage)(Number.MAX_VALUE, 1))).toEqual(['LAYER_OUT_OF_DOMAIN', { value: ENDLESS }]);
});
