import { ordinanceRateLimit } from '@rillbook/metering/volumes/allowances/ordinance-design-limits.js';
import { assignScope } from '@rillbook/metering/account/assign-scope.js';
import { shareOfInterval } from '@rillbook/metering/intervals/apportion-interval.js';
import { registerVolume, resolutionSd } from '@rillbook/metering/intervals/register-volume.js';
import { displacementMeterFlows } from '@rillbook/metering/meter-limits/displacement-meter.js';
import { paceOfMeter, registrationError } from '@rillbook/metering/meter-limits/registration.js';
import { seenByMeter, smallestSeenFlow } from '@rillbook/metering/meter-limits/smallest-seen-flow.js';
import { backgroundLossOfMains, legitimateNightUse } from '@rillbook/metering/night-flow/minimum-night-flow.js';
import { determination, errorAutocorrelation } from '@rillbook/metering/statistics/correlation.js';
import { tabularCusum } from '@rillbook/metering/statistics/cusum.js';
import { ewma, ewmaLimits } from '@rillbook/metering/statistics/ewma.js';
import { modelFit } from '@rillbook/metering/statistics/model-fit.js';
import { errorsOf } from '@rillbook/metering/statistics/paired-series.js';
import { effectiveRainAtMost } from '@rillbook/metering/volumes/allowances/allowance-less-rain.js';
import {
  budgetCoefficient,
  countedRainAtMost,
  landscapeWaterAllowance,
  landscapeWaterRequirement,
} from '@rillbook/metering/volumes/allowances/federal-water-budget.js';
import { ordinanceRuleOn } from '@rillbook/metering/volumes/allowances/ordinance-rules.js';
import { contractAllowance } from '@rillbook/metering/volumes/contract-allowance.js';
import { grossVolume } from '@rillbook/metering/volumes/gross-volume.js';
import { estimatedTotalWaterUse, ordinanceAllowance } from '@rillbook/metering/volumes/ordinance-allowance.js';
import { weatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import { holdAtTheEdge, of, type Row } from '../at-the-edge.js';
import { expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

const NONE = Number.NaN;
const ENDLESS = Number.POSITIVE_INFINITY;

const allowance = (referenceEvapotranspiration: number, etaf: number, irrigatedAreaM2: number, specialLandscapeAreaM2: number) =>
  of(ordinanceAllowance as never)(referenceEvapotranspiration, { etaf, irrigatedAreaM2, specialLandscapeAreaM2 } as never);
const leached = (leachingFraction: number) => grossVolume(10 as never, { areaM2: 100, duLq: 1, leachingFraction });
const averaged = (target: number, weight: number) => ewma([2, 4], target, weight);
const summed = (target: number, slack: number, decision: number) => tabularCusum([1, 3], { target, slack, decision });
const fitted = (parameters: number) => modelFit([1, 2], [1, 2], parameters).rmse;
const determined = (parameters: number) => determination([1, 2, 4], [1, 2, 4], parameters);
const required = (peakEto: number, countedRain: number, landscapeCoefficient: number, areaM2: number) =>
  landscapeWaterRequirement(peakEto as never, countedRain as never, { landscapeCoefficient, areaM2, duLq: 1 });
const register = (from: number, to: number, digits: number, multiplier: number) =>
  registerVolume({ from, to }, { unit: 'L', digits, multiplier });
const resolved = (resolution: number, multiplier: number) => resolutionSd(resolution, { unit: 'L', digits: null, multiplier });

const ROWS: readonly Row[] = [
  [
    allowance,
    'ORDINANCE_OUT_OF_DOMAIN',
    ['referenceEvapotranspiration', 'etaf', 'irrigatedAreaM2', 'specialLandscapeAreaM2'],
    [
      [-1, 0.5, 10, 0],
      [100, -0.1, 10, 0],
      [100, 1.1, 10, 0],
      [100, 0.5, 10, -1],
      [100, 0.5, 10, 11],
    ],
    [
      [[0, 0.5, 10, 0], 0],
      [[100, 0, 10, 0], 0],
    ],
  ],
  [
    of(estimatedTotalWaterUse),
    'ORDINANCE_OUT_OF_DOMAIN',
    ['referenceEvapotranspiration', 'plantFactor', 'irrigationEfficiency', 'area'],
    [
      [-1, 0.5, 0.8, 10],
      [100, -0.1, 0.8, 10],
      [100, 0.5, 0, 10],
      [100, 0.5, 75, 10],
      [100, 0.5, 0.8, -1],
    ],
    [
      [[0, 0.5, 0.8, 10], 0],
      [[100, 0, 0.8, 10], 0],
      [[100, 0.5, 0.8, 0], 0],
    ],
  ],
  [
    ordinanceRateLimit,
    'SLOPE_OUT_OF_DOMAIN',
    ['slope'],
    [[-1], [NONE], [Number.POSITIVE_INFINITY]],
    [
      [[0], null],
      [[25], null],
    ],
  ],
  [
    leached,
    'LEACHING_FRACTION_OUT_OF_DOMAIN',
    ['leachingFraction'],
    [[-0.1], [1], [NONE]],
    [
      [[0], 1000],
      [[0.5], 2000],
    ],
  ],
  [
    of(effectiveRainAtMost),
    'RAIN_OUT_OF_DOMAIN',
    ['annualRain'],
    [[-1], [NONE]],
    [
      [[0], 0],
      [[400], 100],
    ],
  ],
  [
    of(countedRainAtMost),
    'RAIN_OUT_OF_DOMAIN',
    ['rain'],
    [[-1], [NONE]],
    [
      [[0], 0],
      [[40], 10],
    ],
  ],
  [
    of(landscapeWaterAllowance),
    'BUDGET_OUT_OF_DOMAIN',
    ['peakEto', 'area'],
    [
      [-1, 10],
      [10, -1],
    ],
    [
      [[0, 10], 0],
      [[10, 0], 0],
      [[100, 10], 700],
    ],
  ],
  [
    required,
    'BUDGET_OUT_OF_DOMAIN',
    ['peakEto', 'countedRain', 'landscapeCoefficient', 'areaM2'],
    [
      [-1, 0, 0.5, 10],
      [100, -1, 0.5, 10],
      [100, 0, -0.1, 10],
      [100, 0, 0.5, -1],
    ],
    [
      [[0, 0, 0.5, 10], 0],
      [[100, 0, 0, 10], 0],
      [[100, 0, 0.5, 0], 0],
      [[100, 20, 0.5, 10], 300],
      [[100, 60, 0.5, 10], 0],
    ],
  ],
  [
    of(legitimateNightUse),
    'NIGHT_FLOW_OUT_OF_DOMAIN',
    ['people'],
    [[-1], [NONE]],
    [
      [[0], 0],
      [[100], 60],
    ],
  ],
  [
    of(backgroundLossOfMains),
    'NIGHT_FLOW_OUT_OF_DOMAIN',
    ['length'],
    [[-1], [NONE]],
    [
      [[0], 0],
      [[1000], 40],
    ],
  ],
  [
    of(displacementMeterFlows),
    'METER_SIZE_OUT_OF_DOMAIN',
    ['size'],
    [[0], [-1], [ENDLESS]],
    [
      [[5], null],
      [[1000], null],
    ],
  ],
  [
    registrationError,
    'REGISTRATION_OUT_OF_DOMAIN',
    ['meterVolume', 'standardVolume'],
    [
      [0, 10],
      [10, -1],
      [ENDLESS, 10],
    ],
    [
      [[10, 0], 100],
      [[100, 98], 2],
      [[100, 102], -2],
    ],
  ],
  [
    of(paceOfMeter),
    'REGISTRATION_OUT_OF_DOMAIN',
    ['error'],
    [[NONE], [ENDLESS]],
    [
      [[0], 'true'],
      [[0.1], 'fast'],
      [[-0.1], 'slow'],
    ],
  ],
  [
    of(seenByMeter),
    'SMALLEST_FLOW_OUT_OF_DOMAIN',
    ['flow', 'smallest'],
    [
      [-1, 1],
      [1, -1],
      [1, ENDLESS],
    ],
    [
      [[0, 0], 'seen'],
      [[1, 1], 'seen'],
      [[0.9, 1], 'not seen by this meter'],
    ],
  ],
  [
    of(smallestSeenFlow as never).bind(null, null as never),
    'SMALLEST_FLOW_OUT_OF_DOMAIN',
    ['resolution', 'hours'],
    [
      [-1, 1],
      [1, 0],
      [1, ENDLESS],
    ],
    [
      [[0, 1], 0.5678117676],
      [[600, 1], 20],
      [[600, 4], 5],
    ],
  ],
  [
    averaged,
    'EWMA_OUT_OF_DOMAIN',
    ['target', 'weight'],
    [
      [1, 0],
      [1, 1.1],
      [NONE, 0.5],
    ],
    [
      [
        [0, 1],
        [2, 4],
      ],
      [
        [0, 0.5],
        [1, 2.5],
      ],
    ],
  ],
  [
    of(ewmaLimits),
    'EWMA_OUT_OF_DOMAIN',
    ['target', 'sd', 'weight', 'width'],
    [
      [1, -1, 0.5, 3],
      [1, 1, 0, 3],
      [1, 1, 1.1, 3],
      [1, 1, 0.5, -1],
      [ENDLESS, 1, 0.5, 3],
    ],
    [
      [[10, 2, 1, 3], { lower: 4, upper: 16 }],
      [[10, 0, 1, 3], { lower: 10, upper: 10 }],
      [[10, 2, 1, 0], { lower: 10, upper: 10 }],
    ],
  ],
  [
    summed,
    'CUSUM_OUT_OF_DOMAIN',
    ['target', 'slack', 'decision'],
    [
      [1, -1, 1],
      [1, 1, -1],
      [NONE, 1, 1],
      [1, ENDLESS, 1],
    ],
    [
      [[1, 0, 0], { high: [0, 2], low: [0, 0], firstSignal: 1 }],
      [[1, 0, 2], { high: [0, 2], low: [0, 0], firstSignal: null }],
      [[4, 0.5, 2.5], { high: [0, 0], low: [2.5, 3], firstSignal: 1 }],
    ],
  ],
  [
    register,
    'REGISTER_OUT_OF_DOMAIN',
    ['from', 'to', 'digits', 'multiplier'],
    [
      [-1, 5, 3, 1],
      [5, -1, 3, 1],
      [1000, 5, 3, 1],
      [5, 1000, 3, 1],
      [1, 5, 3, 0],
    ],
    [
      [[0, 999, 3, 1], { litres: 999, rolledOver: false }],
      [[999, 0, 3, 10], { litres: 10, rolledOver: true }],
      [[7, 7, 3, 1], { litres: 0, rolledOver: false }],
    ],
  ],
  [
    resolved,
    'REGISTER_OUT_OF_DOMAIN',
    ['resolution', 'multiplier'],
    [
      [-1, 1],
      [1, 0],
    ],
    [
      [[0, 1], 0],
      [[6, 10], 60 / Math.sqrt(6)],
    ],
  ],
];

holdAtTheEdge(ROWS);

const sunday = { date: '2026-06-07', etoMm: 5, rainMm: 0, etoRelativeSd: 0.1 };
const table = new Array<number>(12).fill(3000);
const zone = { id: 'Z', areaM2: 10, handWatered: false, meterId: null } as never;
const day = (changes: object) => () => weatherSeries([{ ...sunday, ...changes }]);

const refused: readonly (readonly [string, () => unknown, string, object])[] = [
  [
    'a table of eleven months',
    () => contractAllowance(table.slice(1), '2026-06', 30, 30),
    'CONTRACT_TABLE_INVALID',
    { litresPerMonth: table.slice(1), month: '2026-06' },
  ],
  [
    'a thirteenth month of contract',
    () => contractAllowance(table, '2026-13', 30, 30),
    'CONTRACT_TABLE_INVALID',
    { litresPerMonth: table, month: '2026-13' },
  ],
  [
    'a contract for less than nothing',
    () => contractAllowance(table.with(5, -1), '2026-06', 30, 30),
    'CONTRACT_TABLE_INVALID',
    { litresPerMonth: table.with(5, -1), month: '2026-06' },
  ],
  ['plants of no budget', () => budgetCoefficient('moss' as never, 'low'), 'BUDGET_PLANTS_UNKNOWN', { plants: 'moss', waterNeed: 'low' }],
  ['a need of no budget', () => budgetCoefficient('turf', 'none' as never), 'BUDGET_PLANTS_UNKNOWN', { plants: 'turf', waterNeed: 'none' }],
  ['a day with more behind it', () => ordinanceRuleOn('California', '2026-06-011'), 'DATE_INVALID', { date: '2026-06-011' }],
  ['a day with more before it', () => ordinanceRuleOn('California', '12026-06-01'), 'DATE_INVALID', { date: '12026-06-01' }],
  ['evapotranspiration below nothing', day({ etoMm: -1 }), 'WEATHER_DAY_INVALID', { ...sunday, etoMm: -1 }],
  ['endless evapotranspiration', day({ etoMm: ENDLESS }), 'WEATHER_DAY_INVALID', { ...sunday, etoMm: ENDLESS }],
  ['rain below nothing', day({ rainMm: -1 }), 'WEATHER_DAY_INVALID', { ...sunday, rainMm: -1 }],
  ['a deviation below nothing', day({ etoRelativeSd: -0.1 }), 'WEATHER_DAY_INVALID', { ...sunday, etoRelativeSd: -0.1 }],
  ['parameters in part', () => fitted(0.5), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: 0.5, count: 2 }],
  ['parameters below nothing', () => fitted(-1), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: -1, count: 2 }],
  ['as many parameters as values', () => fitted(2), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: 2, count: 2 }],
  ['no freedom left', () => determined(2), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: 2, count: 3 }],
  ['a determination by half a parameter', () => determined(0.5), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: 0.5, count: 3 }],
  ['a determination by less than none', () => determined(-1), 'PARAMETERS_OUT_OF_DOMAIN', { parameters: -1, count: 3 }],
  ['two errors in a row', () => errorAutocorrelation([1, 2], [1, 3]), 'SERIES_OUT_OF_DOMAIN', { observed: 2, predicted: 2 }],
  ['nothing observed', () => errorsOf([], []), 'SERIES_OUT_OF_DOMAIN', { observed: 0, predicted: 0 }],
  ['more observed than predicted', () => errorsOf([1, 2], [1]), 'SERIES_OUT_OF_DOMAIN', { observed: 2, predicted: 1 }],
  ['an endless value', () => errorsOf([1], [ENDLESS]), 'SERIES_OUT_OF_DOMAIN', { observed: 1, predicted: 1 }],
  ['a value not known, averaged', () => ewma([NONE], 1, 0.5), 'EWMA_OUT_OF_DOMAIN', { target: 1, weight: 0.5 }],
  [
    'a register that runs backwards',
    () => registerVolume({ from: 5, to: 4 }, { unit: 'L', digits: null, multiplier: 1 }),
    'REGISTER_RUNS_BACKWARDS',
    { from: 5, to: 4 },
  ],
  [
    'a zone of no area',
    () => assignScope([{ ...(zone as object), areaM2: 0 } as never], []),
    'ZONE_AREA_OUT_OF_DOMAIN',
    { zoneId: 'Z', areaM2: 0 },
  ],
  [
    'an endless zone',
    () => assignScope([{ ...(zone as object), areaM2: ENDLESS } as never], []),
    'ZONE_AREA_OUT_OF_DOMAIN',
    { zoneId: 'Z', areaM2: ENDLESS },
  ],
  [
    'a meter nobody has',
    () => assignScope([{ ...(zone as object), meterId: 'M' } as never], [{ id: 'N' } as never]),
    'ZONE_METER_UNKNOWN',
    { zoneId: 'Z', meterId: 'M' },
  ],
  [
    'an interval of no length',
    () => shareOfInterval([2, 2], [2, 2], () => 1),
    'INTERVAL_OUT_OF_DOMAIN',
    { interval: [2, 2], part: [2, 2] },
  ],
  [
    'a part before the interval',
    () => shareOfInterval([2, 4], [1, 3], () => 1),
    'INTERVAL_OUT_OF_DOMAIN',
    { interval: [2, 4], part: [1, 3] },
  ],
  [
    'a part after the interval',
    () => shareOfInterval([2, 4], [3, 5], () => 1),
    'INTERVAL_OUT_OF_DOMAIN',
    { interval: [2, 4], part: [3, 5] },
  ],
  [
    'a part that runs backwards',
    () => shareOfInterval([2, 4], [3.5, 3], () => 1),
    'INTERVAL_OUT_OF_DOMAIN',
    { interval: [2, 4], part: [3.5, 3] },
  ],
];

it.each(refused)('%s is refused', (_, deed, code, details) => {
  expect(refusalOf(deed)).toEqual([code, details]);
});

it('a part of an interval is weighed by its days, whole and in part', () => {
  const weights: Record<number, number | null> = { 1: 1, 2: 3, 3: null };
  const weightOf = (number: number) => weights[number] ?? null;
  expect(shareOfInterval([1, 3], [1, 2], weightOf)).toBe(0.25);
  expect(shareOfInterval([1, 3], [1, 3], weightOf)).toBe(1);
  expect(shareOfInterval([1, 3], [2.5, 3], weightOf)).toBe(0.375);
  expect(shareOfInterval([1, 4], [3, 4], weightOf)).toBeCloseTo(1 / 3, 12);
  expect(shareOfInterval([1, 3], [1, 1.5], () => 0)).toBe(0.25);
  expect(shareOfInterval([1, 3], [1, 1.5], () => null)).toBe(0.25);
  expect(shareOfInterval([1.25, 1.75], [1.25, 1.5], () => 0)).toBe(0.5);
});

it('a contract pays for the days that it covers', () => {
  expect(contractAllowance(table.with(5, 6000), '2026-06', 10, 30)).toBe(2000);
  expect(contractAllowance(table.with(0, 0), '2026-01', 31, 31)).toBe(0);
  expect(contractAllowance(table.with(11, 62), '2026-12', 1, 31)).toBe(2);
});

it('a day of no water and no doubt is a day', () => {
  const series = weatherSeries([
    { ...sunday, etoMm: 0, etoRelativeSd: 0 },
    { ...sunday, date: '2026-06-09', etoMm: null, rainMm: null },
  ]);
  expect([...series.etoMm]).toEqual([0, NONE, NONE]);
  expect([...series.rainMm]).toEqual([0, NONE, NONE]);
});

it('ordinances are in force from their first day through their last', () => {
  const from = (date: string) => ordinanceRuleOn('California', date)?.from ?? null;
  expect(['2009-09-09', '2009-09-10', '2015-11-30', '2015-12-01'].map(from)).toEqual([null, '2009-09-10', '2009-09-10', '2015-12-01']);
});
