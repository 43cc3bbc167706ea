import { psychrometricConstant } from '@rillbook/agronomy/evapotranspiration/air/psychrometric-constant.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { cloudinessFactor } from '@rillbook/agronomy/evapotranspiration/radiation/cloudiness-factor.js';
import { clearSkyRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation.js';
import {
  diffuseClearness,
  directBeamClearness,
  precipitableWater,
} from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation-of-humid-air.js';
import { netRadiation, netShortwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-radiation.js';
import { solarRadiationFromSunshine } from '@rillbook/agronomy/evapotranspiration/radiation/solar-radiation-from-sunshine.js';
import { inverseRelativeDistance } from '@rillbook/agronomy/evapotranspiration/sun/inverse-relative-distance.js';
import { seasonalCorrection } from '@rillbook/agronomy/evapotranspiration/sun/seasonal-correction.js';
import { sineOfMeanSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-mean-sun-angle.js';
import { sineOfSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-sun-angle.js';
import { solarDeclination } from '@rillbook/agronomy/evapotranspiration/sun/solar-declination.js';
import { solarHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/solar-hour-angle.js';
import { sunsetHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/sunset-hour-angle.js';
import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { standardizedSlopeOfSaturationVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/slope-of-saturation-vapour-pressure.js';
import { vapourPressureFromSpecificHumidity } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-specific-humidity.js';
import { climateTerm, heightFactor } from '@rillbook/agronomy/water-balance/canopy/maximum-crop-coefficient.js';
import { holdAtTheEdge, of, type Row } from '../at-the-edge.js';
import { expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

const NONE = Number.NaN;
const ENDLESS = Number.POSITIVE_INFINITY;

const at = (latitude: number, rest: number) => sunsetHourAngle(latitude as never, rest as never);
const hourAt = (longitude: number, zoneLongitude: number) => solarHourAngle(12, 81, { longitude, zoneLongitude } as never);

const beam = (pressure: number, vapourPressure: number, sineOfSunAngle: number) =>
  directBeamClearness({ pressure, vapourPressure, sineOfSunAngle } as never);

const ROWS: readonly Row[] = [
  [
    beam,
    'AIR_OUT_OF_DOMAIN',
    ['pressure', 'vapourPressure', 'sineOfSunAngle'],
    [
      [100, 1, 0],
      [100, 1, -0.2],
      [100, 1, 1.1],
      [-1, 1, 0.5],
      [100, -0.1, 0.5],
      [100, 1, NONE],
    ],
    [[[0, 0, 1], 0.98 * Math.exp(-0.075 * 2.1 ** 0.4)]],
  ],
  [
    diffuseClearness,
    'CLEARNESS_OUT_OF_DOMAIN',
    ['directBeamClearness'],
    [[-0.01], [1.01], [NONE]],
    [
      [[0], 0.18],
      [[0.15], 0.296],
      [[1], -0.01],
    ],
  ],
  [
    of(cloudinessFactor),
    'RADIATION_OUT_OF_DOMAIN',
    ['solarRadiation', 'clearSkyRadiation'],
    [
      [-1, 30],
      [10, -1],
      [NONE, 30],
      [10, NONE],
    ],
    [
      [[0, 30], 0.055],
      [[30, 30], 1],
      [[0, 0], 0.595],
    ],
  ],
  [
    of(climateTerm),
    'WEATHER_OUT_OF_DOMAIN',
    ['windSpeedAt2M', 'minimumHumidity'],
    [
      [-1, 45],
      [2, -1],
      [ENDLESS, 45],
    ],
    [
      [[2, 45], 0],
      [[0, 45], -0.04],
      [[2, 0], 0.1],
      [[9, 45], 0.16],
      [[2, 99], -0.14],
    ],
  ],
  [
    of(heightFactor),
    'PLANT_HEIGHT_OUT_OF_DOMAIN',
    ['plantHeight'],
    [[-1], [ENDLESS], [NONE]],
    [
      [[0], 0],
      [[3], 1],
    ],
  ],
  [seasonalCorrection, 'DAY_OF_YEAR_OUT_OF_DOMAIN', ['dayOfYear'], [[0], [367], [NONE]], [[[81], -0.1255]]],
  [
    solarDeclination,
    'DAY_OF_YEAR_OUT_OF_DOMAIN',
    ['dayOfYear'],
    [[0], [367], [NONE]],
    [
      [[1], 0.409 * Math.sin((2 * Math.PI) / 365 - 1.39)],
      [[366], 0.409 * Math.sin((2 * Math.PI * 366) / 365 - 1.39)],
    ],
  ],
  [
    inverseRelativeDistance,
    'DAY_OF_YEAR_OUT_OF_DOMAIN',
    ['dayOfYear'],
    [[0], [367], [NONE]],
    [
      [[365], 1.033],
      [[366], 1 + 0.033 * Math.cos((2 * Math.PI * 366) / 365)],
    ],
  ],
  [
    hourAt,
    'LONGITUDE_OUT_OF_DOMAIN',
    ['longitude', 'zoneLongitude'],
    [
      [181, 0],
      [0, -181],
    ],
    [
      [[0, 0], (-0.1255 * Math.PI) / 12],
      [[180, 180], (-0.1255 * Math.PI) / 12],
      [[-180, -180], (-0.1255 * Math.PI) / 12],
    ],
  ],
  [
    of(sineOfMeanSunAngle),
    'LATITUDE_OUT_OF_DOMAIN',
    ['latitude'],
    [
      [91, 100],
      [-91, 100],
    ],
    [
      [[0, 100], Math.sin(0.85)],
      [[-90, 172], 0.1],
    ],
  ],
  [
    at,
    'LATITUDE_OUT_OF_DOMAIN',
    ['latitude'],
    [
      [91, 0],
      [-91, 0],
    ],
    [
      [[0, 0], Math.PI / 2],
      [[90, 0.4], Math.PI],
      [[-90, 0.4], 0],
    ],
  ],
  [
    of(sineOfSunAngle),
    'LATITUDE_OUT_OF_DOMAIN',
    ['latitude'],
    [
      [91, 0, 0],
      [-91, 0, 0],
    ],
    [
      [[0, 0, 0], 1],
      [[90, Math.PI / 6, 0], 0.5],
      [[-90, Math.PI / 6, 0], -0.5],
    ],
  ],
  [
    of(windSpeedAt2M),
    'WIND_OUT_OF_DOMAIN',
    ['windSpeed', 'windHeight'],
    [
      [-1, 2],
      [1, 0.4],
    ],
    [
      [[0, 2], 0],
      [[1, 0.5], 4.87 / Math.log(28.48)],
    ],
  ],
  [
    of(solarRadiationFromSunshine),
    'SUNSHINE_OUT_OF_DOMAIN',
    ['sunshineHours', 'daylightHours'],
    [
      [0, 0],
      [-1, 10],
      [11, 10],
    ],
    [
      [[0, 10, 40], 10],
      [[10, 10, 40], 30],
    ],
  ],
  [of(dewPointFromVapourPressure), 'PRESSURE_OUT_OF_DOMAIN', ['value'], [[0], [-1], [NONE]], [[[0.6108], 0]]],
  [
    of(vapourPressureFromSpecificHumidity),
    'HUMIDITY_OUT_OF_DOMAIN',
    ['value'],
    [
      [-0.01, 100],
      [0.11, 100],
    ],
    [
      [[0, 100], 0],
      [[0.1, 100], 10 / 0.6598],
    ],
  ],
];

holdAtTheEdge(ROWS);

/** What does not look at its values itself: the result that no number is has its code. */
const BEYOND_NUMBERS: readonly (readonly [string, () => unknown])[] = [
  ['CLOCK_HOUR_OUT_OF_DOMAIN', () => solarHourAngle(NONE, 81, { longitude: 0, zoneLongitude: 0 } as never)],
  ['LATITUDE_OUT_OF_DOMAIN', () => of(sunsetHourAngle)(0, NONE)],
  ['PRESSURE_OUT_OF_DOMAIN', () => of(psychrometricConstant)(NONE)],
  ['PRESSURE_OUT_OF_DOMAIN', () => of(precipitableWater)(NONE, 100)],
  ['RADIATION_OUT_OF_DOMAIN', () => of(clearSkyRadiation)(NONE, 40)],
  ['RADIATION_OUT_OF_DOMAIN', () => of(netShortwaveRadiation)(NONE)],
  ['RADIATION_OUT_OF_DOMAIN', () => of(netRadiation)(NONE, 1)],
  ['AIR_TEMPERATURE_OUT_OF_DOMAIN', () => of(standardizedSlopeOfSaturationVapourPressure)(NONE)],
];

it.each(BEYOND_NUMBERS)('%s: refuses a result that is no number', (code, deed) => {
  const [said, details] = refusalOf(deed);
  expect(said).toBe(code);
  expect(Object.keys(details)).toEqual(['value']);
});
