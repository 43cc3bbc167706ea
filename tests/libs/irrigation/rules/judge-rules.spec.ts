import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { judgeRules } from '@rillbook/irrigation/rules/judge-rules.js';
import type { RuledPlace, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { ReplayInput } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { anyTimer, left, program, replayOf, stationRun } from '../settings/a-replay.js';
import { aRule, place } from './a-rule.js';

// Four weeks from Monday, 1 June 2026.
const judge = (
  programs: readonly Program[],
  rule: Partial<WateringRule>,
  at: Partial<RuledPlace> = {},
  changes: Partial<ReplayInput> = {},
) => judgeRules(replayOf([left(programs)], { days: 28, ...changes }), [aRule(rule)], place(at));
const kinds = (found: ReturnType<typeof judge>) => found.map(({ kind }) => kind);
const midnight = (date: string) => dayNumberOfDate(date) * 1440;

describe('days', () => {
  it('names rule, program, station, how often, when, and the days that are allowed', () => {
    const allowedDays = { kind: 'weekdays', weekdays: ['Mon', 'Thu'] } as const;
    const two = program({ name: 'B', days: { kind: 'weekdays', weekdays: ['Mon', 'Thu'] }, starts: [600] });
    expect(judge([program(), two], { name: 'two days', allowedDays })).toEqual([
      {
        rule: 'two days',
        kind: 'day not allowed',
        program: 'A',
        stations: [1],
        times: 20,
        firstDate: '2026-06-02',
        lastDate: '2026-06-28',
        toKeep: { allowedDays, daysPerWeek: null, blocked: null, maxMinutes: null, pauseHours: null },
      },
    ]);
  });

  it('none means that nothing may be watered', () => {
    expect(judge([program()], { allowedDays: { kind: 'none' } })).toMatchObject([
      { kind: 'must not be watered', times: 28, toKeep: { allowedDays: { kind: 'none' } } },
    ]);
  });

  it('of the month may be odd or even, and an address without other words waters on its own', () => {
    expect(judge([program({ days: { kind: 'odd' } })], { allowedDays: { kind: 'odd' } })).toEqual([]);
    expect(judge([program({ days: { kind: 'odd' } })], { allowedDays: { kind: 'even' } })).toMatchObject([{ times: 14 }]);
    expect(judge([program({ days: { kind: 'odd' } })], { addressParity: 'odd' }, { addressNumber: 15 })).toEqual([]);
    expect(kinds(judge([program({ days: { kind: 'even' } })], { addressParity: 'odd' }, { addressNumber: 15 }))).toEqual([
      'day not allowed',
    ]);
  });

  it('a week are counted from Monday, over all programs of the controller', () => {
    const one = program({ days: { kind: 'weekdays', weekdays: ['Mon', 'Wed'] } });
    const two = program({ name: 'B', days: { kind: 'weekdays', weekdays: ['Fri', 'Sat'] } });
    expect(judge([one], { daysPerWeek: 2 })).toEqual([]);
    expect(judge([one, two], { daysPerWeek: 2 })).toMatchObject([
      { kind: 'too many days a week', program: 'B', times: 8, toKeep: { daysPerWeek: 2 } },
    ]);
    expect(judge([program({ days: { kind: 'every', everyDays: 3, from: '2026-06-01' } })], { daysPerWeek: 3 })).toEqual([]);
  });

  it('a week is from Monday to Sunday: of Monday, Tuesday and Sunday the Sunday is one too many', () => {
    const days = { kind: 'weekdays', weekdays: ['Sun', 'Mon', 'Tue'] } as const;
    expect(judge([program({ days })], { daysPerWeek: 2 })).toMatchObject([{ times: 4, firstDate: '2026-06-07', lastDate: '2026-06-28' }]);
  });

  it('stations are named in their order, whatever the order in which they run', () => {
    const stations = [stationRun(3, 10), stationRun(1, 10), stationRun(2, 10)];
    expect(judge([program({ stations })], { allowedDays: { kind: 'none' } })).toMatchObject([{ stations: [1, 2, 3], times: 28 }]);
  });
});

describe('hours', () => {
  it('are broken by a run that reaches into them, not by one that ends there', () => {
    const rule = { blockedFrom: 480, blockedUntil: 1020 };
    expect(judge([program({ starts: [470] })], rule)).toEqual([]);
    expect(judge([program({ starts: [475] })], rule)).toMatchObject([
      { kind: 'blocked hours', toKeep: { blocked: { from: 480, until: 1020 } } },
    ]);
    expect(judge([program({ starts: [1020] })], rule)).toEqual([]);
  });

  it('without an end last to midnight, without a beginning from it', () => {
    expect(judge([program({ starts: [1430] })], { blockedFrom: 1200 })).toMatchObject([
      { toKeep: { blocked: { from: 1200, until: 1440 } } },
    ]);
    expect(judge([program({ starts: [0] })], { blockedUntil: 240 })).toMatchObject([{ toKeep: { blocked: { from: 0, until: 240 } } }]);
    expect(judge([program({ starts: [240] })], { blockedFrom: 1200 })).toEqual([]);
  });

  it('may reach over midnight', () => {
    const rule = { blockedFrom: 1320, blockedUntil: 240 };
    for (const [start, blamed] of [
      [1310, false],
      [1315, true],
      [0, true],
      [235, true],
      [240, false],
    ] as const)
      expect(judge([program({ starts: [start] })], rule).length > 0, String(start)).toBe(blamed);
  });

  it('are met by a program that waits for another', () => {
    const long = program({ starts: [420], stations: [stationRun(1, 55)] });
    const short = program({ name: 'B', starts: [430], stations: [stationRun(2, 10)] });
    expect(judge([long, short], { blockedFrom: 480, blockedUntil: 1020 })).toMatchObject([{ program: 'B', stations: [2] }]);
  });

  it('are those of the wall clock, also after it was moved', () => {
    const clockChanges = [{ date: '2026-06-08', atMinute: 120, shiftMinutes: 60 }];
    expect(judge([program({ starts: [470] })], { blockedFrom: 480, blockedUntil: 1020 }, {}, { clockChanges })).toEqual([]);
    expect(judge([program({ starts: [485] })], { blockedFrom: 480, blockedUntil: 1020 }, {}, { clockChanges })).toMatchObject([
      { times: 28 },
    ]);
  });
});

describe('minutes', () => {
  it('are those of a station on a day, by all programs, starts and cycles, as the percent makes them', () => {
    const rule = { maxMinutes: 15 };
    expect(judge([program({ stations: [stationRun(1, 15, 3, 30)] })], rule)).toEqual([]);
    expect(judge([program({ starts: [300, 1200] })], rule)).toMatchObject([{ kind: 'too many minutes', toKeep: { maxMinutes: 15 } }]);
    expect(judge([program({ adjustPercent: 150 })], rule)).toEqual([]);
    expect(kinds(judge([program({ adjustPercent: 151 })], rule))).toEqual(['too many minutes']);
  });
});

describe('rain', () => {
  const rule = { hoursAfterRain: 48, rainMm: 5 };
  const rainOn = (date: string, mm: number) => [{ mm, endedFrom: midnight(date), endedUntil: midnight(date) + 1440 }];

  it('forbids what is surely within the hours, where its own hour is not known', () => {
    // It may have ended at any time of the 10th: 48 hours after its first minute are over on the 12th.
    expect(judge([program()], rule, { rain: rainOn('2026-06-10', 8) })).toMatchObject([
      { kind: 'too soon after rain', times: 1, firstDate: '2026-06-11', toKeep: { pauseHours: 48 } },
    ]);
  });

  it('counts from what the rule says is rain', () => {
    expect(judge([program()], rule, { rain: rainOn('2026-06-10', 4) })).toEqual([]);
    expect(judge([program()], { hoursAfterRain: 48 }, { rain: rainOn('2026-06-10', 0.2) })).toHaveLength(1);
    expect(judge([program()], { hoursAfterRain: 48 }, { rain: rainOn('2026-06-10', 0) })).toEqual([]);
  });

  it('is kept by a pause', () => {
    const pauses = [{ from: '2026-06-10T12:00', until: '2026-06-12T12:00' }];
    expect(judge([program()], rule, { rain: rainOn('2026-06-10', 8) }, { pauses })).toEqual([]);
  });
});

describe('a rule applies', () => {
  const none = { allowedDays: { kind: 'none' } } as const;
  const stations = [
    { station: 1, plants: 'turf cool-season', method: 'spray' },
    { station: 2, plants: 'shrubs', method: 'drip' },
    { station: 3, plants: null, method: null },
  ] as const;
  const all = [program({ stations: [stationRun(1, 5), stationRun(2, 5), stationRun(3, 5), stationRun(4, 5)] })];

  it('to its plants and not to exempt methods; what is not known is not exempt', () => {
    expect(judge(all, { ...none, plants: ['turf cool-season'] }, { stations })).toMatchObject([{ stations: [1, 3, 4] }]);
    expect(judge(all, { ...none, exemptMethods: ['drip', 'bubbler'] }, { stations })).toMatchObject([{ stations: [1, 3, 4] }]);
  });

  it('to its water and its addresses', () => {
    expect(judge(all, { ...none, water: ['potable'] }, { water: 'recycled' })).toEqual([]);
    expect(judge(all, { ...none, water: ['potable'] }, { water: null })).toHaveLength(1);
    expect(judge(all, { ...none, addressParity: 'odd' }, { addressNumber: 4 })).toEqual([]);
    expect(judge(all, { ...none, addressParity: 'odd' }, { addressNumber: 5 })).toHaveLength(1);
    expect(judge(all, { ...none, addressParity: 'odd' })).toEqual([]);
  });

  it('from its first day to its last', () => {
    expect(judge([program()], { ...none, effectiveFrom: '2026-06-05', effectiveUntil: '2026-06-06' })).toMatchObject([
      { times: 2, firstDate: '2026-06-05', lastDate: '2026-06-06' },
    ]);
  });

  it('to what runs: not to a controller that is off', () => {
    expect(judgeRules(replayOf([left([program()], { state: 'off' })]), [aRule(none)], place())).toEqual([]);
    expect(judgeRules(replayOf([left([program()])], { traits: { ...anyTimer, maxMinutes: 0 } }), [aRule(none)], place())).toEqual([]);
  });
});
