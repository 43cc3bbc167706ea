import { flowAtPressure } from '@rillbook/irrigation/hardware/flow/flow-at-pressure.js';
import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { orificeFlow } from '@rillbook/irrigation/hardware/flow/orifice-flow.js';
import { dripFlow } from '@rillbook/irrigation/hardware/leaks/dripping.js';
import { flowOfDailyLoss, leakVolume } from '@rillbook/irrigation/hardware/leaks/leak-volume.js';
import { leakOfStuckValve } from '@rillbook/irrigation/hardware/leaks/zone-leak.js';
import { precipitationRateFromDepth } from '@rillbook/irrigation/hardware/precipitation/catch-can-rate.js';
import { precipitationRateOfDripGrid, precipitationRateOfEmitterDensity } from '@rillbook/irrigation/hardware/precipitation/drip-rate.js';
import { areaPerHead, fullCircleFlow, triangularRowSpacing } from '@rillbook/irrigation/hardware/precipitation/head-layout.js';
import { flowFromPrecipitationRate, precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { judgePressure } from '@rillbook/irrigation/hardware/pressure/operating-pressure.js';
import { cycleLimit, cyclesFor } from '@rillbook/irrigation/hardware/run-time/cycle-limit.js';
import { baseMinutes, minutesPerAllowedDay, multipliedMinutes } from '@rillbook/irrigation/hardware/run-time/run-minutes.js';
import { soakMinutes } from '@rillbook/irrigation/hardware/run-time/soak.js';
import { wateringInterval } from '@rillbook/irrigation/hardware/run-time/watering-interval.js';
import { lowHalfFromLowQuarter } from '@rillbook/irrigation/hardware/uniformity/distribution-uniformity.js';
import { runTimeMultiplier } from '@rillbook/irrigation/hardware/uniformity/run-time-multiplier.js';
import { schedulingCoefficient } from '@rillbook/irrigation/hardware/uniformity/scheduling-coefficient.js';
import { adjustedMinutes } from '@rillbook/irrigation/settings/adjusted-minutes.js';
import { expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

type Formula = (...values: number[]) => unknown;

/** A function of plain numbers, whatever units its types give them. */
const of = (formula: (...values: never[]) => unknown): Formula => formula as unknown as Formula;

const NOT_A_NUMBER = Number.NaN;
const ENDLESS = Number.POSITIVE_INFINITY;

/** A formula, its code, the names of its values in the details, what is refused, and what stands at the edge with its result. */
const FORMULAS: readonly {
  readonly formula: Formula;
  readonly code: string;
  readonly names: readonly string[];
  readonly refused: readonly (readonly number[])[];
  readonly edges: readonly (readonly [readonly number[], unknown])[];
}[] = [
  {
    formula: of(flowAtPressure),
    code: 'FLOW_AT_PRESSURE_OUT_OF_DOMAIN',
    names: ['flow', 'fromPressure', 'toPressure'],
    refused: [
      [-1, 200, 200],
      [1, 0, 200],
      [1, 200, -1],
      [NOT_A_NUMBER, 200, 200],
    ],
    edges: [
      [[0, 200, 200], 0],
      [[1, 200, 0], 0],
      [[10, 100, 400], 20],
    ],
  },
  {
    formula: of(orificeFlow),
    code: 'ORIFICE_OUT_OF_DOMAIN',
    names: ['diameter', 'pressure', 'dischargeCoefficient'],
    refused: [
      [-1, 200, 0.62],
      [1, -1, 0.62],
      [1, 200, 0],
      [1, 200, 1.01],
      [NOT_A_NUMBER, 200, 0.62],
    ],
    edges: [
      [[0, 200, 0.62], 0],
      [[1, 0, 1], 0],
    ],
  },
  {
    formula: of(dripFlow),
    code: 'DROPS_OUT_OF_DOMAIN',
    names: ['dropsPerMinute'],
    refused: [[-1], [NOT_A_NUMBER]],
    edges: [[[0], { least: 0, likely: 0, most: 0 }]],
  },
  {
    formula: of(leakVolume),
    code: 'LEAK_OUT_OF_DOMAIN',
    names: ['flow', 'days'],
    refused: [
      [-1, 1],
      [1, -1],
      [NOT_A_NUMBER, 1],
    ],
    edges: [
      [[0, 1], 0],
      [[1, 0], 0],
      [[2, 3], 8640],
    ],
  },
  {
    formula: of(flowOfDailyLoss),
    code: 'LEAK_OUT_OF_DOMAIN',
    names: ['litresPerDay'],
    refused: [[-1], [NOT_A_NUMBER]],
    edges: [
      [[0], 0],
      [[1440], 1],
    ],
  },
  {
    formula: of(leakOfStuckValve),
    code: 'LEAK_OUT_OF_DOMAIN',
    names: ['zoneFlow'],
    refused: [[-1], [NOT_A_NUMBER]],
    edges: [
      [[0], 0],
      [[7], 7],
    ],
  },
  {
    formula: of(precipitationRateFromDepth),
    code: 'CATCH_TEST_OUT_OF_DOMAIN',
    names: ['depth', 'minutes'],
    refused: [
      [-1, 10],
      [1, 0],
      [NOT_A_NUMBER, 10],
    ],
    edges: [
      [[0, 10], 0],
      [[5, 20], 15],
    ],
  },
  {
    formula: of(precipitationRateOfDripGrid).bind(null, 1),
    code: 'PRECIPITATION_RATE_OUT_OF_DOMAIN',
    names: ['rowSpacing', 'emitterSpacing'],
    refused: [
      [0, 1],
      [1, 0],
      [-1, -1],
    ],
    edges: [[[0.5, 0.5], 240]],
  },
  {
    formula: of(precipitationRateOfEmitterDensity),
    code: 'PRECIPITATION_RATE_OUT_OF_DOMAIN',
    names: ['emitterFlow', 'density'],
    refused: [
      [-1, 1],
      [1, -1],
      [NOT_A_NUMBER, 1],
    ],
    edges: [
      [[0, 1], 0],
      [[1, 0], 0],
      [[0.05, 4], 12],
    ],
  },
  {
    formula: of(areaPerHead),
    code: 'SPACING_OUT_OF_DOMAIN',
    names: ['headSpacing', 'rowSpacing'],
    refused: [
      [0, 1],
      [1, 0],
      [-1, -1],
      [ENDLESS, 1],
    ],
    edges: [[[2, 3], 6]],
  },
  {
    formula: of(triangularRowSpacing),
    code: 'SPACING_OUT_OF_DOMAIN',
    names: ['headSpacing'],
    refused: [[0], [-1], [NOT_A_NUMBER]],
    edges: [],
  },
  {
    formula: of(fullCircleFlow),
    code: 'ARC_OUT_OF_DOMAIN',
    names: ['flow', 'arc'],
    refused: [
      [1, 0],
      [1, 361],
      [-1, 90],
    ],
    edges: [
      [[1, 360], 1],
      [[0, 90], 0],
      [[1, 90], 4],
    ],
  },
  {
    formula: of(precipitationRateFromFlow),
    code: 'PRECIPITATION_RATE_OUT_OF_DOMAIN',
    names: ['flow', 'area'],
    refused: [
      [1, 0],
      [-1, 1],
      [ENDLESS, 1],
      [NOT_A_NUMBER, 1],
      [Number.MAX_VALUE, 20],
      [1, ENDLESS],
    ],
    edges: [
      [[0, 1], 0],
      [[10, 60], 10],
    ],
  },
  {
    formula: of(flowFromPrecipitationRate),
    code: 'FLOW_OUT_OF_DOMAIN',
    names: ['precipitationRate', 'area'],
    refused: [
      [1, 0],
      [-1, 1],
      [ENDLESS, 1],
      [1, -1],
    ],
    edges: [
      [[0, 1], 0],
      [[30, 4], 2],
    ],
  },
  {
    formula: of(judgePressure as never).bind(null, 'hand' as never),
    code: 'PRESSURE_OUT_OF_DOMAIN',
    names: ['pressure'],
    refused: [[-1], [ENDLESS], [NOT_A_NUMBER]],
    edges: [[[0], null]],
  },
  {
    formula: of(cycleLimit),
    code: 'CYCLE_LIMIT_OUT_OF_DOMAIN',
    names: ['surfaceAccumulation', 'precipitationRate', 'intakeRate'],
    refused: [
      [-1, 20, 10],
      [1, -20, 10],
      [1, 20, -1],
      [1, ENDLESS, 10],
    ],
    edges: [
      [[0, 20, 10], 0],
      [[5, 20, 0], 15],
      [[5, 10, 10], null],
      [[5, 0, 0], null],
    ],
  },
  {
    formula: of(cyclesFor),
    code: 'CYCLE_LIMIT_OUT_OF_DOMAIN',
    names: ['totalMinutes', 'longestCycle'],
    refused: [
      [-1, 10],
      [10, 0],
      [NOT_A_NUMBER, 10],
    ],
    edges: [
      [[0, 10], 1],
      [[30, 10], 3],
      [[30.1, 10], 4],
    ],
  },
  {
    formula: of(baseMinutes),
    code: 'RUN_TIME_OUT_OF_DOMAIN',
    names: ['netDepth', 'precipitationRate'],
    refused: [
      [-1, 10],
      [1, 0],
      [NOT_A_NUMBER, 10],
    ],
    edges: [
      [[0, 10], 0],
      [[5, 20], 15],
    ],
  },
  {
    formula: of(multipliedMinutes),
    code: 'RUN_TIME_OUT_OF_DOMAIN',
    names: ['base', 'multiplier'],
    refused: [
      [-1, 1],
      [10, 0.99],
      [NOT_A_NUMBER, 1],
    ],
    edges: [
      [[0, 1.5], 0],
      [[10, 1], 10],
      [[10, 1.5], 15],
    ],
  },
  {
    formula: of(minutesPerAllowedDay),
    code: 'RUN_TIME_OUT_OF_DOMAIN',
    names: ['minutesPerDay', 'allowedDays'],
    refused: [
      [-1, 3],
      [10, 0],
      [10, 8],
      [10, 1.5],
    ],
    edges: [
      [[0, 3], 0],
      [[10, 1], 70],
      [[10, 7], 10],
    ],
  },
  {
    formula: of(soakMinutes),
    code: 'SOAK_OUT_OF_DOMAIN',
    names: ['surfaceAccumulation', 'intakeRate'],
    refused: [
      [-1, 10],
      [1, 0],
      [NOT_A_NUMBER, 10],
    ],
    edges: [
      [[0, 10], 0],
      [[5, 10], 30],
    ],
  },
  {
    formula: of(wateringInterval),
    code: 'WATERING_INTERVAL_OUT_OF_DOMAIN',
    names: ['allowableDepletion', 'dailyUse'],
    refused: [
      [-1, 5],
      [20, -1],
      [ENDLESS, 5],
    ],
    edges: [
      [[0, 5], 0],
      [[20, 0], null],
      [[20, 5], 4],
      [[19.9, 5], 3],
    ],
  },
  {
    formula: of(schedulingCoefficient),
    code: 'SCHEDULING_COEFFICIENT_OUT_OF_DOMAIN',
    names: ['mean', 'minimum'],
    refused: [
      [10, 0],
      [9, 10],
      [ENDLESS, 10],
    ],
    edges: [
      [[10, 10], 1],
      [[15, 10], 1.5],
    ],
  },
  {
    formula: of(runTimeMultiplier),
    code: 'UNIFORMITY_OUT_OF_DOMAIN',
    names: ['distributionUniformity'],
    refused: [[0], [1.01], [NOT_A_NUMBER]],
    edges: [[[1], 1]],
  },
  {
    formula: of(lowHalfFromLowQuarter),
    code: 'UNIFORMITY_OUT_OF_DOMAIN',
    names: ['distributionUniformity'],
    refused: [[-0.01], [1.01], [NOT_A_NUMBER]],
    edges: [
      [[0], 0.386],
      [[1], 1],
    ],
  },
  {
    formula: of(adjustedMinutes),
    code: 'SETTINGS_OUT_OF_DOMAIN',
    names: ['minutes', 'percent', 'minuteStep'],
    refused: [
      [-1, 100, 1],
      [10, -1, 1],
      [10, 100, 0],
      [ENDLESS, 100, 1],
    ],
    edges: [
      [[0, 100, 1], 0],
      [[10, 0, 1], 0],
      [[15, 90, 1], 14],
    ],
  },
];

const given = FORMULAS.map((each) => [`${each.code} of ${each.names.join(', ')}`, each] as const);

it.each(given)('%s: refuses with code and values', (_, { formula, code, names, refused }) => {
  for (const values of refused) {
    expect(refusalOf(() => formula(...values))).toEqual([code, Object.fromEntries(names.map((name, at) => [name, values[at]]))]);
  }
});

it.each(given)('%s: takes what stands at the edge', (_, { formula, edges }) => {
  for (const [values, result] of edges) {
    const found = formula(...values);
    if (typeof result === 'number') expect(found).toBeCloseTo(result, 9);
    else expect(found).toEqual(result);
  }
});

const LARGEST = Number.MAX_VALUE;

/** What the formulas take, with a result that no number can hold. */
const BEYOND_NUMBERS: readonly (readonly [string, () => unknown])[] = [
  ['FLOW_AT_PRESSURE_OUT_OF_DOMAIN', () => of(flowAtPressure)(LARGEST, 1, 100)],
  ['HEADS_OUT_OF_DOMAIN', () => flowOfHeads([{ count: 2, flow: LARGEST as never }])],
  ['ORIFICE_OUT_OF_DOMAIN', () => of(orificeFlow)(LARGEST, 1, 1)],
  ['DROPS_OUT_OF_DOMAIN', () => dripFlow(ENDLESS)],
  ['LEAK_OUT_OF_DOMAIN', () => of(leakVolume)(LARGEST, 1)],
  ['LEAK_OUT_OF_DOMAIN', () => of(flowOfDailyLoss)(ENDLESS)],
  ['LEAK_OUT_OF_DOMAIN', () => of(leakOfStuckValve)(ENDLESS)],
  ['CATCH_TEST_OUT_OF_DOMAIN', () => of(precipitationRateFromDepth)(LARGEST, 1)],
  ['PRECIPITATION_RATE_OUT_OF_DOMAIN', () => of(precipitationRateOfEmitterDensity)(1, LARGEST)],
  ['SPACING_OUT_OF_DOMAIN', () => of(triangularRowSpacing)(ENDLESS)],
  ['ARC_OUT_OF_DOMAIN', () => of(fullCircleFlow)(LARGEST, 1)],
  ['RUN_TIME_OUT_OF_DOMAIN', () => of(baseMinutes)(LARGEST, 1)],
  ['RUN_TIME_OUT_OF_DOMAIN', () => of(multipliedMinutes)(LARGEST, 2)],
  ['RUN_TIME_OUT_OF_DOMAIN', () => of(minutesPerAllowedDay)(LARGEST, 1)],
  ['SOAK_OUT_OF_DOMAIN', () => of(soakMinutes)(LARGEST, 1)],
];

it.each(BEYOND_NUMBERS)('%s: refuses a result that no number can hold', (code, deed) => {
  expect(refusalOf(deed)).toEqual([code, { value: ENDLESS }]);
});
