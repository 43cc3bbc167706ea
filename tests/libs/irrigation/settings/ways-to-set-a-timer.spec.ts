import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import { layOutStart } from '@rillbook/irrigation/settings/replay/lay-out-start.js';
import { replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { describe, expect, it } from 'vitest';
import { anyTimer, left, minutesOf, program, replayOf, stationRun } from './a-replay.js';

const timer = (changes: Partial<ControllerTraits>): { readonly traits: ControllerTraits } => ({ traits: { ...anyTimer, ...changes } });

describe('water windows that overlap', () => {
  // A 23:00 to 23:40; B set for 23:10. A pause from 23:50 cuts what is still to run.
  const overlapping = left(
    [program({ starts: [1380], stations: [stationRun(1, 40)] }), program({ name: 'B', starts: [1390], stations: [stationRun(2, 30)] })],
    { effectiveAt: '2026-06-01T00:00' },
  );
  const pauses = [{ from: '2026-06-01T23:50', until: '2026-06-02T12:00' }];

  it('one at once: B waits until A is through, 23:40, and has run 10 minutes at 23:50', () => {
    expect(minutesOf([overlapping], { days: 1, pauses, ...timer({ runsAtOnce: 1 }) }, 2)).toEqual([10]);
  });

  it('two at once: B runs from 23:10 to 23:40, whole', () => {
    expect(minutesOf([overlapping], { days: 1, pauses, ...timer({ runsAtOnce: 2 }) }, 2)).toEqual([30]);
  });

  it('nobody has said how many: one at once', () => {
    expect(minutesOf([overlapping], { days: 1, pauses }, 2)).toEqual([10]);
  });

  it('three starts stack up one behind the other: 23:00 + 40 + 40 = 00:20, when the third begins', () => {
    const three = ['A', 'B', 'C'].map((name, at) => program({ name, starts: [1380 + at], stations: [stationRun(at + 1, 40)] }));
    const facts = [left(three, { effectiveAt: '2026-06-01T00:00' })];
    // A 23:00-23:40; B 23:40-00:20; C 00:20-01:00.
    expect([1, 2, 3].map((station) => minutesOf(facts, { days: 1 }, station))).toEqual([[40], [20], [0]]);
    expect(minutesOf(facts, { days: 2 }, 3)).toEqual([0, 40]);
  });

  it('of two programs at one instant the first by name goes first, in whatever order they are listed', () => {
    const both = [
      program({ name: 'B', starts: [1410], stations: [stationRun(2, 30)] }),
      program({ name: 'A', starts: [1410], stations: [stationRun(1, 30)] }),
    ];
    for (const programs of [both, both.toReversed()]) {
      const facts = [left(programs, { effectiveAt: '2026-06-01T00:00' })];
      expect([1, 2].map((station) => minutesOf(facts, { days: 1 }, station))).toEqual([[30], [0]]);
    }
  });
});

describe('two programs on one station on one day', () => {
  const both = left([program(), program({ name: 'B', starts: [305], stations: [stationRun(1, 25)] })]);

  it('one behind the other give 10 + 25 minutes in two runs', () => {
    const found = replayController(replayOf([both], { days: 1 })).stations.get(1);
    expect(found).toMatchObject({ minutes: [35], runs: [2], totalMinutes: 35, totalRuns: 2, programs: ['A', 'B'] });
  });

  it('side by side the valve is open once: 05:00 to 05:30 are 30 minutes', () => {
    expect(minutesOf([both], { days: 1, ...timer({ runsAtOnce: 2 }) })).toEqual([30]);
  });
});

describe('starts', () => {
  it('the same start twice in a program is one start', () => {
    expect(minutesOf([left([program({ starts: [300, 300, 900] })])])).toEqual([20, 20, 20]);
  });

  it('a program that starts again while it still runs waits for itself: 2 x 90 minutes from 22:30 end at 01:30', () => {
    const long = program({ days: { kind: 'odd' }, starts: [1350, 1380], stations: [stationRun(1, 90)] });
    expect(minutesOf([left([long], { effectiveAt: '2026-06-01T00:00' })], { days: 2 })).toEqual([90, 90]);
  });

  it('a run past midnight belongs to each day with its part, also on the last day and from the day before', () => {
    // 31 May is odd: 23:30 + 75 minutes = 30 + 45. 1 June is odd as well.
    const late = program({ days: { kind: 'odd' }, starts: [1410], stations: [stationRun(1, 75)] });
    expect(minutesOf([left([late])], { days: 4 })).toEqual([45 + 30, 45, 30, 45]);
  });
});

describe('days', () => {
  it('odd days: the 31st and the 1st follow each other; even days: two days pass between the 30th and the 2nd', () => {
    const around = { firstDay: dayNumberOfDate('2026-05-29'), days: 6 };
    // 29 30 31 1 2 3
    expect(minutesOf([left([program({ days: { kind: 'odd' } })])], around)).toEqual([10, 0, 10, 10, 0, 10]);
    expect(minutesOf([left([program({ days: { kind: 'even' } })])], around)).toEqual([0, 10, 0, 0, 10, 0]);
  });

  it('29 February is odd and 1 March too', () => {
    const facts = [left([program({ days: { kind: 'odd' } })], { effectiveAt: '2024-01-01T00:00' })];
    expect(minutesOf(facts, { firstDay: dayNumberOfDate('2024-02-28'), days: 3 })).toEqual([0, 10, 10]);
  });

  it('every 7 days counts on through months and years', () => {
    const every = program({ days: { kind: 'every', everyDays: 7, from: '2025-12-01' } });
    const facts = [left([every], { effectiveAt: '2025-11-01T00:00' })];
    const dates = (from: string, days: number) => {
      const minutes = minutesOf(facts, { firstDay: dayNumberOfDate(from), days }) ?? [];
      return minutes.flatMap((each, day) => (each === 10 ? [day + 1] : []));
    };
    // December: 1 8 15 22 29; 29 + 7 = 36 - 31 = 5 January: 5 12 19 26; 26 + 7 = 33 - 31 = 2 February.
    expect(dates('2025-12-01', 31)).toEqual([1, 8, 15, 22, 29]);
    expect(dates('2026-01-01', 31)).toEqual([5, 12, 19, 26]);
    expect(dates('2026-02-01', 28)).toEqual([2, 9, 16, 23]);
  });

  it('every n days does not run before its first day', () => {
    const every = program({ days: { kind: 'every', everyDays: 2, from: '2026-06-02' } });
    expect(minutesOf([left([every])])).toEqual([0, 10, 0]);
  });
});

describe('percent', () => {
  it('0 percent runs nothing, and is known', () => {
    const found = replayController(replayOf([left([program({ adjustPercent: 0 })])]));
    expect(found.stations.get(1)?.minutes ?? [0, 0, 0]).toEqual([0, 0, 0]);
    expect(found.unknown).toEqual([null, null, null]);
  });

  it('above what the timer holds counts as the most it holds: 250 of at most 200 percent', () => {
    const facts = [left([program({ adjustPercent: 250 })])];
    expect(minutesOf(facts, { days: 1, ...timer({ maxAdjustPercent: 200 }) })).toEqual([20]);
    expect(minutesOf(facts, { days: 1 })).toEqual([25]);
  });

  it.each([
    // June 80, July 120: 10 x 50 % x 80 % = 4, x 120 % = 6.
    [50, 200, [4, 6]],
    // The table stands apart from the largest percent adjust: 10 x min(150, 100) % x 120 % = 12.
    [150, 100, [8, 12]],
    [0, 200, [0, 0]],
  ])("%i percent, at most %i, times the month's own", (adjustPercent, maxAdjustPercent, minutes) => {
    const monthlyAdjustPercent = [0, 0, 40, 60, 70, 80, 120, 110, 90, 60, 30, 0];
    const found = minutesOf([left([program({ adjustPercent })])], {
      firstDay: dayNumberOfDate('2026-06-30'),
      days: 2,
      ...timer({ monthlyAdjustPercent, maxAdjustPercent }),
    });
    expect(found ?? [0, 0]).toEqual(minutes);
  });

  it('a month of 0 percent runs nothing', () => {
    const monthlyAdjustPercent = [...new Array<number>(11).fill(100), 0];
    const around = { firstDay: dayNumberOfDate('2025-11-30'), days: 2 };
    const facts = [left([program()], { effectiveAt: '2025-01-01T00:00' })];
    expect(minutesOf(facts, { ...around, ...timer({ monthlyAdjustPercent }) })).toEqual([10, 0]);
  });
});

describe('minutes', () => {
  it.each([
    // 7 x 65 % = 4.55
    [7, 65, 1, 5],
    [7, 65, 0.5, 4.5],
    [7, 65, 5, 5],
    // 3 x 40 % = 1.2: rounded to fives it is 0 and does not run.
    [3, 40, 5, 0],
    // 15 x 90 % = 13.5: half a step rounds up.
    [15, 90, 1, 14],
  ])('%d at %d percent in steps of %d are %d', (minutes, adjustPercent, minuteStep, expected) => {
    const facts = [left([program({ adjustPercent, stations: [stationRun(1, minutes)] })])];
    expect(minutesOf(facts, { days: 1, ...timer({ minuteStep }) }) ?? [0]).toEqual([expected]);
  });

  it('more than a station may be set to counts as the most: 150 of at most 99, at 50 percent 49.5', () => {
    const facts = [left([program({ adjustPercent: 50, stations: [stationRun(1, 150), stationRun(2, 80)] })])];
    expect(minutesOf(facts, { days: 1, ...timer({ maxMinutes: 99 }) })).toEqual([49.5]);
    expect(minutesOf(facts, { days: 1, ...timer({ maxMinutes: 99 }) }, 2)).toEqual([40]);
  });

  it('percent lengthens beyond what a station may be set to', () => {
    const facts = [left([program({ adjustPercent: 150, stations: [stationRun(1, 80)] })])];
    expect(minutesOf(facts, { days: 1, ...timer({ maxMinutes: 99, maxAdjustPercent: 200 }) })).toEqual([120]);
  });
});

describe('cycles', () => {
  const laid = (minutes: number, cycles: number, minuteStep: number | null, soakMinutes = 10) =>
    layOutStart([stationRun(1, minutes, cycles, soakMinutes)], 100, { minuteStep, maxMinutes: null }).map(({ begin, end }) => [begin, end]);

  it('leave a last short cycle where steps do not divide: 14 in 4 cycles are 4 + 4 + 4 + 2', () => {
    // Each soak is 10: 0-4, 14-18, 28-32, 42-44.
    expect(laid(14, 4, 1)).toEqual([
      [0, 4],
      [14, 18],
      [28, 32],
      [42, 44],
    ]);
  });

  it('leave one out where nothing is left for it: 5 in 4 cycles are 2 + 2 + 1', () => {
    expect(laid(5, 4, 1)).toEqual([
      [0, 2],
      [12, 14],
      [24, 25],
    ]);
  });

  it('are alike on a timer without steps: 14 in 4 cycles are 4 x 3.5', () => {
    expect(laid(14, 4, null, 0)).toEqual([
      [0, 3.5],
      [3.5, 7],
      [7, 10.5],
      [10.5, 14],
    ]);
  });

  it('of several stations go round: station 2 runs while 1 soaks', () => {
    const two = [stationRun(1, 8, 2, 6), stationRun(2, 4, 2, 6)];
    // Round one: 1 at 0-4, 2 at 4-6. Station 1 is ready again at 10: 10-14. Station 2 was ready at 12, the line is free at 14: 14-16.
    expect(layOutStart(two, 100, { minuteStep: 1, maxMinutes: null })).toEqual([
      { station: 1, begin: 0, end: 4 },
      { station: 2, begin: 4, end: 6 },
      { station: 1, begin: 10, end: 14 },
      { station: 2, begin: 14, end: 16 },
    ]);
  });
});

describe('a timer that sets its own times', () => {
  it('is no known program, unless a pause covers the whole day: then nothing ran', () => {
    const facts = [left([], { state: 'weather' })];
    const pauses = [{ from: '2026-06-01T12:00', until: '2026-06-03T00:00' }];
    expect(replayController(replayOf(facts, { pauses })).unknown).toEqual(['settings-from-weather', null, 'settings-from-weather']);
  });
});
