import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import { type ReplayInput, replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program, SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';

const traits: ControllerTraits = {
  stations: 12,
  programs: 3,
  startsPerProgram: 4,
  maxMinutes: null,
  minuteStep: null,
  adjustScope: 'controller',
  adjustStepPercent: 10,
  maxAdjustPercent: 200,
  monthlyAdjustPercent: null,
  runsAtOnce: null,
  cycleSoak: true,
  rainSensor: null,
  rainSensorMm: null,
};
const program = (changes: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'daily' },
  starts: [300],
  adjustPercent: 100,
  stations: [{ station: 1, minutes: 10, cycles: 1, soakMinutes: 0 }],
  ...changes,
});
const fact = (effectiveAt: string, programs: readonly Program[], changes: Partial<SettingsFact> = {}): SettingsFact => ({
  effectiveAt,
  record: 'left',
  state: 'on',
  programs,
  ...changes,
});
const replay = (facts: readonly SettingsFact[], changes: Partial<ReplayInput> = {}) =>
  replayController({ firstDay: dayNumberOfDate('2026-06-01'), days: 7, facts, pauses: [], traits, clockChanges: [], ...changes });
const minutesOf = (facts: readonly SettingsFact[], changes: Partial<ReplayInput> = {}, station = 1) =>
  replay(facts, changes).stations.get(station)?.minutes;
const before = '2026-05-20T08:00';

describe('days and starts (1 June 2026 is a Monday)', () => {
  it.each([
    [{ kind: 'daily' } as const, [10, 10, 10, 10, 10, 10, 10]],
    [{ kind: 'weekdays', weekdays: ['Mon', 'Sun'] } as const, [10, 0, 0, 0, 0, 0, 10]],
    [{ kind: 'odd' } as const, [10, 0, 10, 0, 10, 0, 10]],
    [{ kind: 'even' } as const, [0, 10, 0, 10, 0, 10, 0]],
    [{ kind: 'every', everyDays: 3, from: '2026-05-31' } as const, [0, 0, 10, 0, 0, 10, 0]],
    [{ kind: 'every', everyDays: 2, from: '2026-06-04' } as const, [0, 0, 0, 10, 0, 10, 0]],
  ])('%o', (days, minutes) => {
    expect(minutesOf([fact(before, [program({ days })])])).toEqual(minutes);
  });

  it('each start runs', () => {
    const found = replay([fact(before, [program({ starts: [300, 720, 1350] })])]).stations.get(1);
    expect(found?.minutes).toEqual([30, 30, 30, 30, 30, 30, 30]);
    expect(found?.runs).toEqual([3, 3, 3, 3, 3, 3, 3]);
    expect(found?.programs).toEqual(['A']);
  });

  it('a run past midnight is divided between the days', () => {
    const stations = [{ station: 1, minutes: 90, cycles: 1, soakMinutes: 0 }];
    const days = { kind: 'weekdays', weekdays: ['Sun', 'Tue'] } as const;
    const found = replay([fact(before, [program({ days, starts: [1410], stations })])]).stations.get(1);
    expect(found?.minutes).toEqual([60, 30, 60, 0, 0, 0, 30]);
    expect(found?.runs).toEqual([0, 1, 0, 0, 0, 0, 1]);
  });

  it('programs wait for one another, unless the controller runs two at once', () => {
    const stations = [{ station: 1, minutes: 40, cycles: 1, soakMinutes: 0 }];
    const late = [
      program({ starts: [1380], stations }),
      program({ name: 'B', starts: [1380], stations: [{ ...stations[0]!, station: 2 }] }),
    ];
    expect(minutesOf([fact(before, late)], { days: 1 }, 2)).toEqual([40]);
    expect(minutesOf([fact('2026-06-01T08:00', late)], { days: 3 }, 2)).toEqual([null, 40, 40]);
    const first = replay([fact(before, late, { effectiveAt: '2026-06-01T00:00' })], { days: 2 }).stations.get(2);
    expect(first?.minutes).toEqual([20, 40]);
    const together = replay([fact('2026-06-01T00:00', late)], { days: 2, traits: { ...traits, runsAtOnce: 2 } }).stations.get(2);
    expect(together?.minutes).toEqual([40, 40]);
  });
});

describe('percent and cycles', () => {
  it('percent shortens and lengthens', () => {
    expect(minutesOf([fact(before, [program({ adjustPercent: 35 })])], { days: 1 })).toEqual([3.5]);
    expect(minutesOf([fact(before, [program({ adjustPercent: 130 })])], { days: 1 })).toEqual([13]);
  });

  it('rounds only to a given step', () => {
    const facts = [fact(before, [program({ adjustPercent: 135 })])];
    expect(minutesOf(facts, { days: 1, traits: { ...traits, minuteStep: 1 } })).toEqual([14]);
    expect(minutesOf(facts, { days: 1, traits: { ...traits, minuteStep: 5 } })).toEqual([15]);
  });

  it("multiplies with the month's own percent", () => {
    const monthlyAdjustPercent = [10, 20, 40, 60, 80, 100, 120, 110, 90, 60, 30, 10];
    const found = replay([fact(before, [program({ adjustPercent: 50 })])], {
      firstDay: dayNumberOfDate('2026-06-30'),
      days: 2,
      traits: { ...traits, monthlyAdjustPercent },
    });
    expect(found.stations.get(1)?.minutes).toEqual([5, 6]);
  });

  it('cycles split and never multiply', () => {
    const stations = [{ station: 1, minutes: 12, cycles: 3, soakMinutes: 45 }];
    const found = replay([fact(before, [program({ stations })])], { days: 2 }).stations.get(1);
    expect(found?.minutes).toEqual([12, 12]);
    expect(found?.runs).toEqual([1, 1]);
  });
});

describe('dated facts', () => {
  it('planned settings are never replayed', () => {
    const facts = [fact(before, [program()]), fact('2026-06-03T00:00', [program({ adjustPercent: 10 })], { record: 'planned' })];
    expect(minutesOf(facts)).toEqual([10, 10, 10, 10, 10, 10, 10]);
  });

  it('a change in mid-day counts for the starts after it', () => {
    const facts = [
      fact(before, [program({ starts: [300, 1200] })]),
      fact('2026-06-03T09:30', [program({ starts: [300, 1200], adjustPercent: 50 })], { record: 'found' }),
    ];
    expect(minutesOf(facts)).toEqual([20, 20, 15, 10, 10, 10, 10]);
  });

  it('of found and left at one minute, what was left is in force', () => {
    const left = fact('2026-06-02T00:00', [program({ adjustPercent: 50 })]);
    const found = fact('2026-06-02T00:00', [program({ adjustPercent: 150 })], { record: 'found' });
    expect(minutesOf([left, found], { days: 3 })).toEqual([null, 5, 5]);
  });

  it('sums hold no minute of a day that is not known, though the settings of its known part are told', () => {
    const daily = program({ starts: [1200] });
    const facts = [fact('2026-06-02T10:00', [daily]), fact('2026-06-05T10:00', [], { state: 'unknown', record: 'found' })];
    const { stations, unknown } = replay(facts, { days: 5 });
    const station = stations.get(1);
    expect(unknown.map((reason) => reason === null)).toEqual([false, false, true, true, false]);
    expect(station).toMatchObject({ minutes: [null, null, 10, 10, null], runs: [null, null, 1, 1, null], totalMinutes: 20, totalRuns: 2 });
    expect([...(station?.laidMinutes ?? [])]).toEqual([0, 10, 10, 10, 0]);
  });

  it("a run that ends at midnight is the first day's alone", () => {
    const late = replay([fact(before, [program({ days: { kind: 'weekdays', weekdays: ['Mon'] }, starts: [1430] })])], { days: 2 });
    expect(late.stations.get(1)).toMatchObject({ minutes: [10, 0], runs: [1, 0], programs: ['A'] });
  });

  it('a day is unknown before the first fact and while the state is unknown', () => {
    const facts = [fact('2026-06-02T10:00', [program()]), fact('2026-06-05T10:00', [], { state: 'unknown', record: 'found' })];
    const found = replay(facts);
    expect(found.stations.get(1)?.minutes).toEqual([null, null, 10, 10, null, null, null]);
    expect(found.unknown[0]).toBe('settings-not-known');
  });

  it('a controller that computes its own times has a reason of its own', () => {
    expect(replay([fact(before, [], { state: 'weather' })], { days: 2 }).unknown).toEqual([
      'settings-from-weather',
      'settings-from-weather',
    ]);
  });

  it('off is zero, and ends what runs', () => {
    const stations = [{ station: 1, minutes: 60, cycles: 1, soakMinutes: 0 }];
    const facts = [fact(before, [program({ stations })]), fact('2026-06-03T05:20', [], { state: 'off' })];
    const found = replay(facts, { days: 4 });
    expect(found.stations.get(1)?.minutes).toEqual([60, 60, 20, 0]);
    expect(found.unknown).toEqual([null, null, null, null]);
  });
});

describe('rain pauses', () => {
  it('stop starts, and end the run that they meet, for part of a day', () => {
    const stations = [{ station: 1, minutes: 60, cycles: 1, soakMinutes: 0 }];
    const pauses = [{ from: '2026-06-02T05:15', until: '2026-06-03T12:00' }];
    expect(minutesOf([fact(before, [program({ stations, starts: [300, 840] })])], { pauses, days: 4 })).toEqual([120, 15, 60, 120]);
  });

  it('one without an end is still on', () => {
    expect(minutesOf([fact(before, [program()])], { pauses: [{ from: '2026-06-03T00:00', until: null }] })).toEqual([
      10, 10, 0, 0, 0, 0, 0,
    ]);
  });
});

// Public time zone rules of America/Los_Angeles in 2026: clocks move at 02:00 on 8 March and 1 November.
describe('daylight saving', () => {
  const clockChanges = [
    { date: '2026-03-08', atMinute: 120, shiftMinutes: 60 },
    { date: '2026-11-01', atMinute: 120, shiftMinutes: -60 },
  ];
  const facts = [fact('2026-01-01T00:00', [program({ starts: [150] })])];

  it('a start that does not exist runs at the first instant after', () => {
    const pauses = [{ from: '2026-03-08T03:05', until: '2026-03-08T12:00' }];
    const found = replay(facts, { firstDay: dayNumberOfDate('2026-03-07'), days: 3, clockChanges, pauses });
    expect(found.stations.get(1)?.minutes).toEqual([10, 5, 10]);
  });

  it('a start that occurs twice runs once', () => {
    const twice = [fact('2026-01-01T00:00', [program({ starts: [90] })])];
    const found = replay(twice, { firstDay: dayNumberOfDate('2026-10-31'), days: 3, clockChanges });
    expect(found.stations.get(1)?.minutes).toEqual([10, 10, 10]);
    expect(found.stations.get(1)?.runs).toEqual([1, 1, 1]);
  });
});

describe('bad settings', () => {
  it.each([
    [program({ stations: [{ station: 1, minutes: 10, cycles: 0, soakMinutes: 0 }] }), 'SETTINGS_OUT_OF_DOMAIN'],
    [program({ stations: [{ station: 1, minutes: -1, cycles: 1, soakMinutes: 0 }] }), 'SETTINGS_OUT_OF_DOMAIN'],
    [program({ days: { kind: 'every', everyDays: 0, from: '2026-06-01' } }), 'PROGRAM_DAYS_INVALID'],
  ])('are refused by code', (bad, code) => {
    expect(() => replay([fact(before, [bad])])).toThrow(expect.objectContaining({ code }));
  });

  it.each([
    [0, -1],
    [0, 1.5],
    [0.5, 1],
    [Number.NaN, 1],
  ])('%d and %d days after it cannot be replayed', (firstDay, days) => {
    expect(() => replay([fact(before, [program()])], { firstDay, days })).toThrow(expect.objectContaining({ code: 'REPLAY_DAYS_INVALID' }));
  });

  it('a month table of eleven is refused', () => {
    const monthlyAdjustPercent = new Array<number>(11).fill(100);
    expect(() => replay([fact(before, [program()])], { traits: { ...traits, monthlyAdjustPercent } })).toThrow(
      expect.objectContaining({ code: 'MONTHLY_ADJUST_INVALID' }),
    );
  });
});
