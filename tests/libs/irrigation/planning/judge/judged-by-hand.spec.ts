import { feltThirst } from '@rillbook/irrigation/planning/demand/felt-thirst.js';
import { brokenLimits } from '@rillbook/irrigation/planning/judge/broken-limits.js';
import { hoursOfRuns } from '@rillbook/irrigation/planning/judge/hours-of-runs.js';
import { judgeZone } from '@rillbook/irrigation/planning/judge/judge-zone.js';
import { planRuns } from '@rillbook/irrigation/planning/judge/plan-runs.js';
import { openHours } from '@rillbook/irrigation/planning/layout/water-window.js';
import { offerToEnter } from '@rillbook/irrigation/planning/offers/offer-to-enter.js';
import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { dayOfProgram, priceOfProgram } from '@rillbook/irrigation/planning/offers/start-effect.js';
import type { Program, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { aController, intakeInInches, zoneInInches } from '../a-controller.js';

const run = (station: number, minutes: number, more: Partial<StationRun> = {}): StationRun => ({
  station,
  minutes,
  cycles: 1,
  soakMinutes: 0,
  ...more,
});
const program = (stations: readonly StationRun[], more: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'weekdays', weekdays: ['Mon', 'Thu'] },
  starts: [120],
  adjustPercent: 100,
  stations,
  ...more,
});
const WEIGHTS = { thirst: 3, waste: 1, keyPress: 10, watering: 1 };
/** 10 L/min that need 10 minutes a day. */
const zone = (more = {}) => ({ ...zoneInInches(1, 0, 1), needLitresPerDay: 100, flowLPerMin: 10, ...more });

it('thirst counts a litre once, from a quarter of the need on twice, from half of it on eight times', () => {
  expect([0, 25, 26, 50, 51, 100].map((unmet) => feltThirst(unmet, 100))).toEqual([0, 25, 27, 75, 83, 475]);
});

describe('a zone in a month of such days', () => {
  const judged = (programs: readonly Program[], more = {}) =>
    judgeZone(zone(more), planRuns(programs, aController([]).traits, '2026-07'), 28, WEIGHTS);

  it('is met where each watering bridges the days to the next, and pays for its waterings', () => {
    // Mon to Thu are three days of ten minutes, Thu to Mon four: 35 minutes twice are the week's 70.
    const { zone: of, cost } = judged([program([run(1, 35)])]);
    expect(of).toMatchObject({ usedLitres: 2800, neededLitres: 2800, ranOffLitres: 0 });
    expect([of.unmetLitres, of.wastedLitres, cost]).toEqual([0, 0, 8].map((each) => expect.closeTo(each, 6)));
  });

  it('leaves unmet what roots do not bridge, and loses below them what they do not hold', () => {
    // Three days of storage: of the four days to Monday one is unmet, and 35 minutes are 5 too much.
    const { zone: of, cost } = judged([program([run(1, 35)])], { storageDays: 3 });
    expect([of.unmetLitres, of.wastedLitres]).toEqual([400, 400].map((each) => expect.closeTo(each, 6)));
    expect(cost).toBeCloseTo(3 * 400 + 400 + 8, 6);
  });

  it('is dry where nothing runs: felt eight times from half of it on', () => {
    const { zone: of, cost } = judged([program([run(2, 35)])]);
    expect([of.usedLitres, of.unmetLitres, cost]).toEqual([0, 2800, 3 * feltThirst(2800, 2800)].map((each) => expect.closeTo(each, 6)));
  });

  it('wastes what fills its line at each start, and not at each cycle', () => {
    const { zone: of, cost } = judged([program([run(1, 20, { cycles: 2 })], { starts: [120, 240] })], { fillMinutes: 3 });
    // Two starts of 20 minutes on two days, of which 3 fill the line: 68 of 70 minutes reach the week's roots.
    expect(of.usedLitres).toBe(3200);
    expect([of.wastedLitres, of.unmetLitres]).toEqual([480, 80].map((each) => expect.closeTo(each, 6)));
    expect(cost).toBeCloseTo(3 * 80 + 480 + 8, 6);
    expect(judged([program([run(1, 2)])], { fillMinutes: 3 }).zone).toMatchObject({ usedLitres: 160, wastedLitres: 160 });
  });

  it('lets run off what its soil does not take', () => {
    // Eight minutes fill the ground; 4 more at 1.6 in/h leave 1.5 of it: 3.75 minutes.
    const { zone: of } = judged([program([run(1, 12)])], { intake: intakeInInches(1.6, 0.1, 0.2) });
    expect(of.ranOffLitres).toBeCloseTo(3.75 * 10 * 2 * 4, 6);
    expect(of.wastedLitres).toBeCloseTo(of.ranOffLitres, 6);
  });
});

describe('what timer, window, meter and main carry', () => {
  const input = aController([zone(), { ...zone(), zoneId: 'zone 2', station: 2, flowLPerMin: 25 }], { flowLimitLPerMin: 30 });
  const limits = (programs: readonly Program[], more: Partial<typeof input> = {}, late = false) => {
    const of = { ...input, ...more };
    return brokenLimits(of, programs, planRuns(programs, of.traits, '2026-07'), late);
  };
  const traits = (more: Partial<typeof input.traits>) => ({ traits: { ...input.traits, ...more } });

  it('is kept to the last minute, percent and start, and broken by one more', () => {
    const two = program([run(1, 20), run(2, 20)], { starts: [120, 240, 240] });
    const held = { programs: 1, startsPerProgram: 2, maxMinutes: 20, maxAdjustPercent: 100, stations: 2 };
    expect(limits([two], traits(held))).toEqual([]);
    expect(limits([two, { ...two, name: 'B', starts: [400] }], traits(held))).toEqual(['more programs than it holds']);
    expect(limits([two], traits({ ...held, startsPerProgram: 1 }))).toEqual(['more starts than it holds']);
    expect(limits([two], traits({ ...held, maxMinutes: 19 }))).toEqual(['minutes above the longest']);
    expect(limits([{ ...two, adjustPercent: 105 }], traits(held))).toEqual(['percent above the largest']);
    expect(limits([two], traits({ ...held, stations: 1 }))).toEqual(['stations it has not']);
    expect(limits([two], traits(held), true)).toEqual(['outside the hours']);
    const unknown = { programs: null, startsPerProgram: null, maxMinutes: null, maxAdjustPercent: null, stations: null };
    expect(limits([two, two, two], { ...traits(unknown), flowLimitLPerMin: null })).toEqual([]);
  });

  it('is the flow of all that runs at once: one ends as the other begins', () => {
    const side = { runsAtOnce: 2 };
    const both = [program([run(1, 20)]), program([run(2, 20)], { name: 'B' })];
    expect(limits(both, traits(side))).toEqual(['more flow than meter and main carry']);
    expect(limits(both, { ...traits(side), flowLimitLPerMin: 35 })).toEqual([]);
    expect(limits([both[0]!, { ...both[1]!, starts: [140] }], traits(side))).toEqual([]);
    expect(limits([both[0]!, { ...both[1]!, starts: [139] }], traits(side))).toEqual(['more flow than meter and main carry']);
  });
});

describe('when watering begins and ends', () => {
  const night = openHours({ from: 1320, until: 360 }, [], []);
  const at = (...runs: readonly (readonly [number, number])[]) =>
    hoursOfRuns(
      runs.map(([begin, end]) => ({ begin, end })),
      night,
    );

  it('is the first and the last minute of the night, over midnight', () => {
    expect(at([1330, 1400], [1500, 1790])).toEqual({ beginsAt: 1330, endsAt: 350, isWithin: true });
    expect(at([1320, 1800])).toEqual({ beginsAt: 1320, endsAt: 360, isWithin: true });
    expect(at([1320, 1801])).toMatchObject({ endsAt: 361, isWithin: false });
    expect(hoursOfRuns([], night)).toBeNull();
  });

  it('outside the hours begins after the longest time of the day in which nothing runs', () => {
    // From 20:00 to 20:30, and from 23:00 to 1:00.
    expect(at([1200, 1230], [1380, 1500])).toEqual({ beginsAt: 1200, endsAt: 60, isWithin: false });
    expect(at([1200, 1230], [300, 420])).toEqual({ beginsAt: 1200, endsAt: 420, isWithin: false });
  });
});

describe('a day of a program', () => {
  const input = aController([zone({ fillMinutes: 3 }), { ...zone(), zoneId: 'zone 2', station: 2, intake: intakeInInches(1.6, 0.1, 0.2) }]);
  const day = (of: Program) => dayOfProgram(input, input.traits, of);

  it('gives each zone its minutes of all starts, less what fills its line, at the percent', () => {
    expect(day(program([run(1, 20)], { starts: [120, 240, 240], adjustPercent: 50 }))).toMatchObject([{ used: 20, reaching: 14 }]);
    expect(day(program([run(1, 2), run(2, 0)]))).toMatchObject([{ used: 2, reaching: 0 }]);
    expect(day(program([run(2, 8)]))).toMatchObject([{ used: 8, reaching: 8, zone: { station: 2 } }]);
  });

  it('is not to be where anything runs off', () => {
    expect(day(program([run(1, 20), run(2, 9)]))).toBeNull();
    expect(priceOfProgram(null, [7], WEIGHTS, 28)).toBe(Infinity);
  });

  it('costs what stays unmet, what is wasted and its waterings, over the month', () => {
    // 70 minutes once a week, 67 of which reach roots that hold all of it.
    expect(priceOfProgram(day(program([run(1, 70)])), [7], WEIGHTS, 28)).toBeCloseTo(4 * (3 * 30 + 30 + 1), 6);
    expect(priceOfProgram(day(program([run(1, 38)])), [3, 4], WEIGHTS, 28)).toBeCloseTo(4 * (60 + 2), 6);
  });
});

it('a crew is sent with the least change where all else betters it by a tenth at most', () => {
  const [full, leastChange] = [{ judgement: { cost: 100 } }, { judgement: { cost: 110 } }];
  const plan = (change: unknown) => ({ full, leastChange: change }) as unknown as ControllerPlan;
  expect(offerToEnter(plan(leastChange))).toBe(leastChange);
  expect(offerToEnter(plan({ judgement: { cost: 110.1 } }))).toBe(full);
  expect(offerToEnter(plan(null))).toBe(full);
});
