import { judgePlan, judgeWithinLimits } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import { keyPresses } from '@rillbook/irrigation/planning/judge/key-presses.js';
import type { PlanInput, ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { Program, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import { millimetres } from '@rillbook/units/length.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { describe, expect, it } from 'vitest';
import { aController } from '../a-controller.js';

/** Ten litres a minute and a hundred a day: ten minutes every day, 3,100 L in July. */
const zone = (more: Partial<ZoneToPlan> = {}): ZoneToPlan => ({
  zoneId: 'zone 1',
  station: 1,
  plants: null,
  method: null,
  needLitresPerDay: 100,
  flowLPerMin: 10,
  storageDays: null,
  intake: null,
  fillMinutes: 0,
  ...more,
});

const run = (minutes: number, more: Partial<StationRun> = {}): StationRun => ({ station: 1, minutes, cycles: 1, soakMinutes: 0, ...more });

const program = (stations: readonly StationRun[], more: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'daily' },
  starts: [60],
  adjustPercent: 100,
  stations,
  ...more,
});

/** As set: no key is pressed. */
const judge = (of: ZoneToPlan, programs: readonly Program[], more: Partial<PlanInput> = {}) =>
  judgePlan(aController([of], { present: programs, ...more }), programs);

describe('a plan judged, by hand', () => {
  it('that gives what is needed costs its 31 waterings', () => {
    expect(judge(zone(), [program([run(10)])])).toEqual({
      zones: [{ zoneId: 'zone 1', station: 1, usedLitres: 3100, neededLitres: 3100, unmetLitres: 0, wastedLitres: 0, ranOffLitres: 0 }],
      usedLitres: 3100,
      neededLitres: 3100,
      unmetLitres: 0,
      wastedLitres: 0,
      ranOffLitres: 0,
      keyPresses: 0,
      cost: 31,
      beginsAt: 60,
      endsAt: 70,
      breaches: [],
      limits: [],
    });
  });

  it('that gives two fifths is short of 1,860 L; what lacks beyond a quarter counts twice, beyond a half eight times', () => {
    const { unmetLitres, wastedLitres, cost } = judge(zone(), [program([run(4)])]);
    expect([unmetLitres, wastedLitres]).toEqual([expect.closeTo(1860, 6), 0]);
    // 0.6 + (0.6 - 0.25) + 6 (0.6 - 0.5) of the need, at three a litre.
    expect(cost).toBeCloseTo(3 * 1.55 * 3100 + 31, 6);
  });

  it('that gives half too much loses it, at one a litre', () => {
    const { unmetLitres, wastedLitres, cost } = judge(zone(), [program([run(15)])]);
    expect([unmetLitres, wastedLitres, cost]).toEqual([0, expect.closeTo(1550, 6), expect.closeTo(1581, 6)]);
  });

  it('loses at each start what fills a slow line, and no more than what ran', () => {
    const slow = zone({ fillMinutes: 2 });
    const twice = judge(slow, [program([run(7)], { starts: [60, 120] })]);
    expect(twice).toMatchObject({ usedLitres: 4340, unmetLitres: 0, wastedLitres: expect.closeTo(40 * 31, 6) as number });
    const never = judge(slow, [program([run(1)])]);
    expect(never).toMatchObject({ usedLitres: 310, unmetLitres: expect.closeTo(3100, 6), wastedLitres: expect.closeTo(310, 6) });
  });

  it('lets run off what stands above what the soil holds', () => {
    // 1 mm a minute on soil that takes half of it and holds 5 mm: ten minutes without a pause. [IA 2005, RTmax = 60 ASA / (PR - IR)]
    const intake = { precipitationRate: millimetresPerHour(60), intakeRate: millimetresPerHour(30), surfaceAccumulation: millimetres(5) };
    const thirsty = zone({ needLitresPerDay: 150, intake });
    const ranOff = (of: StationRun) => judge(thirsty, [program([of])]).ranOffLitres / 31;
    expect(ranOff(run(10))).toBeCloseTo(0, 9);
    // Twenty minutes leave 10 mm: 5 mm, five minutes, run off.
    expect(judge(thirsty, [program([run(20)])])).toMatchObject({ unmetLitres: 0, ranOffLitres: 1550, wastedLitres: 1550 });
    // Ten minutes of soak take all that stands; four take 2 mm of it.
    expect(ranOff(run(20, { cycles: 2, soakMinutes: 10 }))).toBeCloseTo(0, 9);
    expect(ranOff(run(20, { cycles: 2, soakMinutes: 4 }))).toBeCloseTo(30, 9);
  });

  it('runs off whole from a soil that takes nothing and holds nothing', () => {
    const sealed = { precipitationRate: millimetresPerHour(60), intakeRate: millimetresPerHour(0), surfaceAccumulation: millimetres(0) };
    expect(judge(zone({ intake: sealed }), [program([run(10)])])).toMatchObject({ ranOffLitres: 3100, unmetLitres: 3100 });
  });

  it('of every third day is short and loses at once where the roots bridge two', () => {
    // Thirty minutes meet twenty that lack: ten are lost; the third day finds nothing. 31 / 3 rounds in July.
    const days = { kind: 'every' as const, everyDays: 3, from: '2026-07-01' };
    expect(judge(zone({ storageDays: 2 }), [program([run(30)], { days })])).toMatchObject({
      usedLitres: expect.closeTo(3100, 6),
      unmetLitres: expect.closeTo(3100 / 3, 6),
      wastedLitres: expect.closeTo(3100 / 3, 6),
    });
    // Roots that bridge less than a day bridge one.
    expect(judge(zone({ storageDays: 0.2 }), [program([run(10)])])).toMatchObject({ unmetLitres: 0, wastedLitres: 0 });
  });

  it('counts no zone that it does not water as watered: nothing begins and nothing ends', () => {
    expect(judge(zone(), [])).toMatchObject({ usedLitres: 0, unmetLitres: 3100, beginsAt: null, endsAt: null, limits: [] });
  });

  it('takes the percent of its month', () => {
    const traits = { ...aController([]).traits, monthlyAdjustPercent: [10, 20, 30, 40, 50, 60, 150, 80, 90, 100, 110, 120] };
    expect(judge(zone(), [program([run(10)])], { traits }).usedLitres).toBeCloseTo(4650, 6);
  });
});

describe('limits that a plan does not keep', () => {
  const { traits } = aController([]);
  const limitsOf = (programs: readonly Program[], held: Partial<ControllerTraits> = {}, more: Partial<PlanInput> = {}) => {
    const input = aController([zone(), zone({ zoneId: 'zone 2', station: 2, flowLPerMin: 15 })], {
      traits: { ...traits, ...held },
      ...more,
    });
    const { limits } = judgePlan(input, programs);
    expect(judgeWithinLimits(input, programs) === null).toBe(limits.length > 0);
    return limits;
  };
  const one = program([run(10)]);

  it.each<[string, Partial<ControllerTraits>, Partial<ControllerTraits>, readonly Program[]]>([
    ['more programs than it holds', { programs: 1 }, { programs: 2 }, [one, { ...one, name: 'B', starts: [120] }]],
    ['more starts than it holds', { startsPerProgram: 1 }, { startsPerProgram: 2 }, [{ ...one, starts: [60, 60, 120] }]],
    ['minutes above the longest', { maxMinutes: 9 }, { maxMinutes: 10 }, [one]],
    ['percent above the largest', { maxAdjustPercent: 125 }, { maxAdjustPercent: 130 }, [{ ...one, adjustPercent: 130 }]],
    ['stations it has not', { stations: 1 }, { stations: 2 }, [program([run(10, { station: 2 })])]],
  ])('%s: told of one too many, not of what it just holds nor of what nobody knows', (limit, less, just, programs) => {
    expect(limitsOf(programs, less)).toEqual([limit]);
    expect(limitsOf(programs, just)).toEqual([]);
    expect(limitsOf(programs, Object.fromEntries(Object.keys(less).map((key) => [key, null])))).toEqual([]);
  });

  it('more flow than meter and main carry: what runs at one time, not what follows', () => {
    const two = [one, program([run(10, { station: 2 })], { name: 'B', starts: [65] })];
    expect(limitsOf(two, { runsAtOnce: 2 }, { flowLimitLPerMin: 24 })).toEqual(['more flow than meter and main carry']);
    expect(limitsOf(two, { runsAtOnce: 2 }, { flowLimitLPerMin: 25 })).toEqual([]);
    expect(limitsOf(two, { runsAtOnce: 2 }, { flowLimitLPerMin: null })).toEqual([]);
    const following = [one, program([run(10, { station: 2 })], { name: 'B', starts: [70] })];
    expect(limitsOf(following, { runsAtOnce: 2 }, { flowLimitLPerMin: 15 })).toEqual([]);
    expect(limitsOf(following, { runsAtOnce: 2 }, { flowLimitLPerMin: 14 })).toEqual(['more flow than meter and main carry']);
  });

  it('outside the hours: to the minute', () => {
    expect(limitsOf([{ ...one, starts: [350] }])).toEqual([]);
    expect(limitsOf([{ ...one, starts: [351] }])).toEqual(['outside the hours']);
  });
});

describe('keys', () => {
  const now = [program([run(10), run(20, { station: 2 })], { starts: [60, 120] })];
  const [set] = now as [Program];

  it.each<[string, number, readonly Program[]]>([
    ['as it is set', 0, now],
    ['other days', 1, [{ ...set, days: { kind: 'odd' } }]],
    ['another percent', 1, [{ ...set, adjustPercent: 90 }]],
    ['one start later', 1, [{ ...set, starts: [60, 130] }]],
    ['both starts later', 2, [{ ...set, starts: [70, 130] }]],
    ['a start more', 1, [{ ...set, starts: [60, 120, 180] }]],
    ['a start less', 1, [{ ...set, starts: [60] }]],
    ['other minutes', 1, [{ ...set, stations: [run(12), run(20, { station: 2 })] }]],
    ['cycles, and the soak between them', 2, [{ ...set, stations: [run(10, { cycles: 2, soakMinutes: 30 }), run(20, { station: 2 })] }]],
    ['a station less', 1, [{ ...set, stations: [run(10)] }]],
    ['a station more', 1, [{ ...set, stations: [...set.stations, run(5, { station: 3 })] }]],
    ['nothing: the fewer of two starts and two stations', 2, []],
  ])('%s: %i', (_what, presses, wanted) => {
    expect(keyPresses(now, wanted)).toBe(presses);
  });

  it('for a program that nobody knows: its days, starts and stations, not the percent that it has from the beginning', () => {
    expect(keyPresses(null, now)).toBe(1 + 2 + 2);
    expect(keyPresses([], [{ ...set, adjustPercent: 80 }])).toBe(1 + 2 + 2 + 1);
  });

  it('for a program that is no longer wanted: its one start, or the only station that runs', () => {
    expect(keyPresses([{ ...set, starts: [60] }], [])).toBe(1);
    expect(keyPresses([{ ...set, stations: [run(10), run(0, { station: 2 })] }], [])).toBe(1);
  });
});
