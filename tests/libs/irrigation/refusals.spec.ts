import { elapsedMinutesOfWallTime, localDayNumber } from '@rillbook/irrigation/calendar/elapsed-minutes.js';
import { dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { leakOfBrokenHead, leakOfCutDripLine } from '@rillbook/irrigation/hardware/leaks/zone-leak.js';
import { precipitationRateFromCans } from '@rillbook/irrigation/hardware/precipitation/catch-can-rate.js';
import { defaultPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/default-precipitation-rate.js';
import { designPressure } from '@rillbook/irrigation/hardware/pressure/design-pressure.js';
import { actualEfficiency, potentialEfficiency } from '@rillbook/irrigation/hardware/uniformity/application-efficiency.js';
import { lowestMean, meanCatch } from '@rillbook/irrigation/hardware/uniformity/catch.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { overlapOfLaterals } from '@rillbook/irrigation/hardware/uniformity/overlap-of-laterals.js';
import { driestWindow } from '@rillbook/irrigation/hardware/uniformity/scheduling-coefficient.js';
import { percentAdjust } from '@rillbook/irrigation/planning/percent-adjust.js';
import { layOutStart } from '@rillbook/irrigation/settings/replay/lay-out-start.js';
import { percentInForce } from '@rillbook/irrigation/settings/replay/percent-in-force.js';
import { programStartsOn } from '@rillbook/irrigation/settings/replay/program-starts-on.js';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

const ENDLESS = Number.POSITIVE_INFINITY;

describe('refusals of what is not a plain number', () => {
  const riser = { bore: 10, pressure: 200, supply: 20 } as never;
  const noSupply = { bore: 10, pressure: 200, supply: -1 } as never;
  const run = { hours: 1, depletion: 10 } as never;
  const station = { station: 4, minutes: 10, cycles: 2, soakMinutes: 5 };
  const zone = { zoneId: 'Z', neededLitres: 1, programmedLitres: 1 };

  const refused: readonly (readonly [string, () => unknown, string, object])[] = [
    ['a broken head without flow', () => leakOfBrokenHead(riser, -1 as never), 'LEAK_OUT_OF_DOMAIN', { headFlow: -1 }],
    ['a line without supply', () => leakOfCutDripLine(noSupply), 'LEAK_OUT_OF_DOMAIN', { supply: -1 }],
    ['heads in part', () => flowOfHeads([{ count: 1.5, flow: 1 as never }]), 'HEADS_OUT_OF_DOMAIN', { heads: [{ count: 1.5, flow: 1 }] }],
    [
      'fewer heads than none',
      () => flowOfHeads([{ count: -1, flow: 1 as never }]),
      'HEADS_OUT_OF_DOMAIN',
      { heads: [{ count: -1, flow: 1 }] },
    ],
    ['heads that drink', () => flowOfHeads([{ count: 1, flow: -1 as never }]), 'HEADS_OUT_OF_DOMAIN', { heads: [{ count: 1, flow: -1 }] }],
    [
      'a can without mouth',
      () => precipitationRateFromCans(1 as never, 1 as never, 0 as never),
      'CATCH_TEST_OUT_OF_DOMAIN',
      { mouthArea: 0 },
    ],
    ['a method nobody knows: rate', () => defaultPrecipitationRate('flood' as never), 'METHOD_UNKNOWN', { method: 'flood' }],
    ['a method nobody knows: pressure', () => designPressure('flood' as never), 'METHOD_UNKNOWN', { method: 'flood' }],
    ['a method nobody knows: uniformity', () => defaultUniformity('flood' as never), 'METHOD_UNKNOWN', { method: 'flood' }],
    ['no rate applied', () => potentialEfficiency([1 as never], 0 as never), 'PRECIPITATION_RATE_OUT_OF_DOMAIN', { appliedRate: 0 }],
    [
      'an endless rate',
      () => potentialEfficiency([1 as never], ENDLESS as never),
      'PRECIPITATION_RATE_OUT_OF_DOMAIN',
      { appliedRate: ENDLESS },
    ],
    [
      'a run of no time',
      () => actualEfficiency([1 as never], 1 as never, { hours: 0, depletion: 1 } as never),
      'IRRIGATION_RUN_OUT_OF_DOMAIN',
      { hours: 0, depletion: 1 },
    ],
    [
      'an endless run',
      () => actualEfficiency([1 as never], 1 as never, { hours: ENDLESS, depletion: 1 } as never),
      'IRRIGATION_RUN_OUT_OF_DOMAIN',
      { hours: ENDLESS, depletion: 1 },
    ],
    [
      'a soil fuller than full',
      () => actualEfficiency([1 as never], 1 as never, { hours: 1, depletion: -1 } as never),
      'IRRIGATION_RUN_OUT_OF_DOMAIN',
      { hours: 1, depletion: -1 },
    ],
    ['cans all dry', () => meanCatch([0, 0]), 'CATCHES_OUT_OF_DOMAIN', { catches: [0, 0] }],
    ['a can below nothing', () => meanCatch([-1, 3]), 'CATCHES_OUT_OF_DOMAIN', { catches: [-1, 3] }],
    ['no cans', () => meanCatch([]), 'CATCHES_OUT_OF_DOMAIN', { catches: [] }],
    ['a can without bottom', () => meanCatch([ENDLESS, 1]), 'CATCHES_OUT_OF_DOMAIN', { catches: [ENDLESS, 1] }],
    ['no share of the cans', () => lowestMean([1, 2], 0), 'CATCHES_OUT_OF_DOMAIN', { share: 0 }],
    ['more than all the cans', () => lowestMean([1, 2], 1.5), 'CATCHES_OUT_OF_DOMAIN', { share: 1.5 }],
    ['a window of no rows', () => driestWindow([[1]], { rows: 0, columns: 1 }), 'CAN_WINDOW_OUT_OF_DOMAIN', { rows: 0, columns: 1 }],
    [
      'a window of half a column',
      () => driestWindow([[1]], { rows: 1, columns: 0.5 }),
      'CAN_WINDOW_OUT_OF_DOMAIN',
      { rows: 1, columns: 0.5 },
    ],
    [
      'a window higher than the grid',
      () => driestWindow([[1]], { rows: 2, columns: 1 }),
      'CAN_WINDOW_OUT_OF_DOMAIN',
      { rows: 2, columns: 1 },
    ],
    [
      'a window wider than the grid',
      () => driestWindow([[1]], { rows: 1, columns: 2 }),
      'CAN_WINDOW_OUT_OF_DOMAIN',
      { rows: 1, columns: 2 },
    ],
    ['a grid with a gap', () => driestWindow([[1, 2], [1]], { rows: 1, columns: 1 }), 'CAN_WINDOW_OUT_OF_DOMAIN', { rows: 1, columns: 1 }],
    [
      'a can of the grid below nothing',
      () => driestWindow([[1, -1]], { rows: 1, columns: 1 }),
      'CAN_WINDOW_OUT_OF_DOMAIN',
      { rows: 1, columns: 1 },
    ],
    [
      'a grid without end',
      () => driestWindow([[1, ENDLESS]], { rows: 1, columns: 1 }),
      'CAN_WINDOW_OUT_OF_DOMAIN',
      { rows: 1, columns: 1 },
    ],
    ['no grid', () => driestWindow([], { rows: 1, columns: 1 }), 'CAN_WINDOW_OUT_OF_DOMAIN', { rows: 1, columns: 1 }],
    [
      'a station of half a cycle',
      () => layOutStart([{ ...station, cycles: 0.5 }], 100, { minuteStep: null, maxMinutes: null }),
      'SETTINGS_OUT_OF_DOMAIN',
      { station: 4, cycles: 0.5, soakMinutes: 5 },
    ],
    [
      'a station without cycles',
      () => layOutStart([{ ...station, cycles: 0 }], 100, { minuteStep: null, maxMinutes: null }),
      'SETTINGS_OUT_OF_DOMAIN',
      { station: 4, cycles: 0, soakMinutes: 5 },
    ],
    [
      'a soak below nothing',
      () => layOutStart([{ ...station, soakMinutes: -1 }], 100, { minuteStep: null, maxMinutes: null }),
      'SETTINGS_OUT_OF_DOMAIN',
      { station: 4, cycles: 2, soakMinutes: -1 },
    ],
    [
      'every no days',
      () => programStartsOn({ kind: 'every', everyDays: 0, from: '2026-06-01' }, 1),
      'PROGRAM_DAYS_INVALID',
      { everyDays: 0 },
    ],
    [
      'every day and a half',
      () => programStartsOn({ kind: 'every', everyDays: 1.5, from: '2026-06-01' }, 1),
      'PROGRAM_DAYS_INVALID',
      { everyDays: 1.5 },
    ],
    [
      'a wall time that is none',
      () => elapsedMinutesOfWallTime('2026-06-01T24:00', []),
      'WALL_TIME_INVALID',
      { wallTime: '2026-06-01T24:00' },
    ],
    [
      'a wall time with more behind it',
      () => elapsedMinutesOfWallTime('2026-06-01T05:00Z', []),
      'WALL_TIME_INVALID',
      { wallTime: '2026-06-01T05:00Z' },
    ],
    [
      'a wall time with more before it',
      () => elapsedMinutesOfWallTime(' 2026-06-01T05:00', []),
      'WALL_TIME_INVALID',
      { wallTime: ' 2026-06-01T05:00' },
    ],
    [
      'a day without length',
      () => localDayNumber('2026-06-01', 0, 0),
      'LOCAL_DAY_INVALID',
      { date: '2026-06-01', minutesSinceMidnight: 0, minutesInDay: 0 },
    ],
    [
      'before the day',
      () => localDayNumber('2026-06-01', -1, 1440),
      'LOCAL_DAY_INVALID',
      { date: '2026-06-01', minutesSinceMidnight: -1, minutesInDay: 1440 },
    ],
    [
      'after the day',
      () => localDayNumber('2026-06-01', 1441, 1440),
      'LOCAL_DAY_INVALID',
      { date: '2026-06-01', minutesSinceMidnight: 1441, minutesInDay: 1440 },
    ],
    ['a date with more behind it', () => dayNumberOfDate('2026-06-011'), 'LOCAL_DATE_INVALID', { date: '2026-06-011' }],
    ['a date with more before it', () => dayNumberOfDate('12026-06-01'), 'LOCAL_DATE_INVALID', { date: '12026-06-01' }],
    ['a year taken for another', () => dayNumberOfDate('0026-06-01'), 'LOCAL_DATE_INVALID', { date: '0026-06-01' }],
    ['a thirteenth month', () => daysOfMonth('2026-13'), 'MONTH_INVALID', { month: '2026-13' }],
    ['a month with a day', () => daysOfMonth('2026-06-01'), 'MONTH_INVALID', { month: '2026-06-01' }],
    ['a month with more before it', () => daysOfMonth('12026-06'), 'MONTH_INVALID', { month: '12026-06' }],
  ];

  it.each(refused)('%s', (_, deed, code, details) => {
    expect(refusalOf(deed)).toEqual([code, details]);
  });

  it('the ends of a day belong to it, and the smallest of each at its edge', () => {
    const firstOfJune = dayNumberOfDate('2026-06-01');
    expect(localDayNumber('2026-06-01', 0, 1440)).toBe(firstOfJune);
    expect(localDayNumber('2026-06-01', 1440, 1440)).toBe(firstOfJune + 1);
    expect(lowestMean([4, 1, 2, 3], 1)).toBe(2.5);
    expect(driestWindow([[1, 0]], { rows: 1, columns: 2 })).toBe(0.5);
    expect(
      flowOfHeads([
        { count: 0, flow: 1 as never },
        { count: 2, flow: 0 as never },
      ]),
    ).toBe(0);
    expect(actualEfficiency([1 as never], 1 as never, { hours: 1, depletion: 0 } as never)).toBe(0);
    expect(leakOfBrokenHead({ bore: 10, pressure: 200, supply: 20 } as never, 0 as never)).toBe(20);
    expect(leakOfCutDripLine({ bore: 10, pressure: 200, supply: 0 } as never)).toBe(0);
    expect(actualEfficiency([1 as never], 1 as never, run)).toBe(1);
  });

  it.each([
    [[-1, 3], [1, 1], 3, 1],
    [[1], [ENDLESS], 3, 1],
    [[1], [1], 3, 2],
    [[1], [1], 3, 0],
    [[1], [1], 0.2, 1],
    [[1], [1], 1001, 1],
    [[1], [1], 1e6, 1e-9],
  ] as const)('laterals %j and %j, %d m apart with cans every %d m, do not overlap', (left, right, lateralSpacing, canSpacing) => {
    expect(refusalOf(() => overlapOfLaterals(left, right, lateralSpacing as never, canSpacing as never))).toEqual([
      'OVERLAP_OUT_OF_DOMAIN',
      { left, right, lateralSpacing, canSpacing },
    ]);
  });

  it.each([
    [zone, 0, 1, null],
    [zone, 100, 0, null],
    [zone, 100, 1, 0],
    [{ ...zone, neededLitres: -1 }, 100, 1, 200],
    [{ ...zone, programmedLitres: -1 }, 100, null, 200],
  ])('a percent cannot be found for %j at %d %% with step %d and maximum %d', (each, percentNow, stepPercent, maxPercent) => {
    expect(refusalOf(() => percentAdjust([each], percentNow, { stepPercent, maxPercent }))).toEqual([
      'PERCENT_ADJUST_OUT_OF_DOMAIN',
      { percentNow, stepPercent, maxPercent },
    ]);
  });

  it('a percent is found for a zone that needs nothing, and none where nothing is programmed', () => {
    const limits = { stepPercent: null, maxPercent: null };
    expect(percentAdjust([{ ...zone, neededLitres: 0 }], 100, limits)?.percent).toBe(0);
    expect(percentAdjust([{ ...zone, programmedLitres: 0 }], 100, limits)).toBeNull();
  });

  it('a table of percents has twelve of at least nothing', () => {
    const twelve = new Array<number>(12).fill(50);
    const inMonth = (monthlyAdjustPercent: readonly number[], month: number) =>
      percentInForce(80, { monthlyAdjustPercent, maxAdjustPercent: null }, month);
    expect(inMonth(twelve, 11)).toBe(40);
    expect(inMonth(twelve.with(3, 0), 3)).toBe(0);
    for (const [table, month] of [
      [twelve.slice(1), 0],
      [[...twelve, 50], 0],
      [twelve, 12],
      [twelve.with(3, -1), 3],
    ] as const) {
      expect(refusalOf(() => inMonth(table, month))).toEqual([
        'MONTHLY_ADJUST_INVALID',
        { monthlyAdjustPercent: table, monthIndex: month },
      ]);
    }
  });
});
