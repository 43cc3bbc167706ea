import { judgePlan } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import { keyPresses } from '@rillbook/irrigation/planning/judge/key-presses.js';
import { leastChange, percentChange } from '@rillbook/irrigation/planning/offers/least-change.js';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { inventedController } from '../../../support/planning/controllers.mjs';
import { aController, intakeInInches, noRule, zoneInInches } from './a-controller.js';

const program = (more: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri'] },
  starts: [120],
  adjustPercent: 100,
  stations: [{ station: 1, minutes: 20, cycles: 1, soakMinutes: 0 }],
  ...more,
});

describe('least change', () => {
  it('turns the percent to what costs least of all percents the timer has', () => {
    const input = aController([zoneInInches(1, 0.1, 1, { storageDays: 4 })], { present: [program()] });
    const offer = leastChange(input);
    const all = Array.from({ length: 40 }, (_, at) => judgePlan(input, [program({ adjustPercent: (at + 1) * 5 })]).cost);
    expect(offer).toMatchObject({ kind: 'percent', programs: [{ adjustPercent: 70 }] });
    expect(offer?.judgement.cost).toBeCloseTo(Math.min(...all), 6);
    expect(offer?.judgement.keyPresses).toBe(1);
  });

  it('leaves days as they are, uneven ones too, where turning the percent is enough', () => {
    const days = { kind: 'weekdays', weekdays: ['Mon', 'Tue', 'Thu'] } as const;
    const offer = leastChange(aController([zoneInInches(1, 0.1, 1, { storageDays: 6 })], { present: [program({ days })] }));
    expect(offer).toMatchObject({ kind: 'percent', programs: [{ days }], judgement: { keyPresses: 1, breaches: [], limits: [] } });
  });

  it('moves days too where a rule asks for it, and nothing else', () => {
    const rules = [{ ...noRule, daysPerWeek: 2 }];
    const input = aController([zoneInInches(1, 0.1, 1, { storageDays: 4 })], { present: [program()], rules });
    const offer = leastChange(input);
    expect(offer?.kind).toBe('percent and days');
    expect(offer?.judgement.breaches).toEqual([]);
    const [planned] = offer?.programs ?? [];
    expect(planned).toMatchObject({ name: 'A', starts: [120], stations: program().stations });
    expect(planned?.days).toMatchObject({ weekdays: { length: 2 } });
    expect(keyPresses([program()], offer?.programs ?? [])).toBeLessThanOrEqual(2);
  });

  it('keeps a rule that comes into force within the month on all of it: its days are not those of two broken weeks', () => {
    // September 2026 ends on a Wednesday: Thu and Sat, and Mon and Tue, are two days each of the weeks that the rule still meets.
    const days = { kind: 'weekdays' as const, weekdays: ['Mon' as const, 'Tue' as const, 'Thu' as const, 'Sat' as const] };
    const input = aController([zoneInInches(1, 0.1, 1, { storageDays: 4 })], {
      month: '2026-09',
      present: [program({ days })],
      rules: [{ ...noRule, daysPerWeek: 2, effectiveFrom: '2026-09-24' }],
    });
    expect(judgePlan(input, [program({ days })]).breaches).toMatchObject([{ kind: 'too many days a week' }]);
    expect(planController(input).full.programs[0]?.days).toMatchObject({ weekdays: { length: 2 } });
  });

  it('moves start times too where longer runs would end after the hours', () => {
    const present = [program({ starts: [345], stations: [{ station: 1, minutes: 15, cycles: 1, soakMinutes: 0 }] })];
    const rules = [{ ...noRule, daysPerWeek: 2 }];
    const offer = leastChange(aController([zoneInInches(1, 0.1, 1, { storageDays: 4 })], { present, rules }));
    expect(offer).toMatchObject({ kind: 'percent, days and starts', judgement: { breaches: [], limits: [] } });
    expect(offer?.programs[0]?.adjustPercent).toBeGreaterThan(100);
    expect(offer?.programs[0]?.stations).toEqual(present[0]?.stations);
    expect(offer?.judgement.keyPresses).toBeLessThanOrEqual(3);
  });

  it('stays below the minutes that a rule allows a day, though the plants need more', () => {
    // 0.3 in a day at 1 in/h are 18 minutes; 12 are set, and 15 are allowed: 125 %.
    const present = [program({ days: { kind: 'daily' }, stations: [{ station: 1, minutes: 12, cycles: 1, soakMinutes: 0 }] })];
    const zones = [zoneInInches(1, 0.3, 1, { storageDays: 4 })];
    const free = leastChange(aController(zones, { present }));
    expect(free).toMatchObject({ kind: 'percent', programs: [{ adjustPercent: 150 }] });
    const ruled = leastChange(aController(zones, { present, rules: [{ ...noRule, maxMinutes: 15 }] }));
    expect(ruled).toMatchObject({ kind: 'percent', programs: [{ adjustPercent: 125 }], judgement: { breaches: [], limits: [] } });
  });

  it('cuts only the program that leaves the hours, and leaves the others what they need', () => {
    const late = { starts: [330], stations: [{ station: 1, minutes: 60, cycles: 1, soakMinutes: 0 }] };
    const early = { name: 'B', starts: [60], stations: [{ station: 2, minutes: 40, cycles: 1, soakMinutes: 0 }] };
    const zones = [zoneInInches(1, 0.1, 1), zoneInInches(2, 0.26, 1, { storageDays: 4 })];
    const traits = { ...aController(zones).traits, programs: 2, startsPerProgram: 1 };
    const input = aController(zones, {
      traits,
      present: [program({ ...late, days: { kind: 'every', everyDays: 7, from: '2026-07-01' } }), program(early)],
    });
    const offer = percentChange(input);
    expect(offer?.judgement.limits).toEqual([]);
    expect(offer?.programs).toMatchObject([{ adjustPercent: 50 }, { adjustPercent: 90 }]);
  });

  it('never lets a longer run off: it leaves thirst that the full program quenches with cycles', () => {
    const clay = intakeInInches(1.6, 0.1, 0.2);
    const input = aController([zoneInInches(1, 0.2, 1.6, { intake: clay, storageDays: 3 })], {
      rules: [{ ...noRule, allowedDays: { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri'] } }],
      present: [program({ stations: [{ station: 1, minutes: 8, cycles: 1, soakMinutes: 0 }] })],
    });
    const plan = planController(input);
    expect(plan.leastChange?.judgement.ranOffLitres).toBe(0);
    expect(plan.leastChange?.judgement.unmetLitres).toBeGreaterThan(plan.full.judgement.unmetLitres * 10 + 1);
    expect(plan.full.programs[0]?.stations[0]?.cycles).toBeGreaterThan(1);
  });

  it('is what is set where nothing is better, and none where nobody knows what is set', () => {
    const zone = zoneInInches(1, (60 / 7 / 60) * 1, 1, { storageDays: 4 });
    expect(leastChange(aController([zone], { present: [program()] }))?.kind).toBe('as set');
    expect(leastChange(aController([zone]))).toBeNull();
  });
});

describe('what is impossible', () => {
  it('names the zone, what is missing, why, and what would free it', () => {
    const forbidden = { ...noRule, plants: ['turf'], allowedDays: { kind: 'none' as const } };
    const zones = [
      zoneInInches(1, 0.2, 1, { plants: 'turf', storageDays: 2 }),
      zoneInInches(2, 0.1, 1, { plants: 'shrubs', storageDays: 9 }),
    ];
    const plan = planController(aController(zones, { rules: [forbidden] }));
    expect(plan.impossible).toMatchObject([{ zoneId: 'zone 1', because: 'a rule forbids watering' }]);
    expect(plan.impossible[0]?.unmetLitres).toBeCloseTo(0.2 * 25.4 * 100 * 31, 6);
  });

  it('tells days from hours, and hours from programs', () => {
    const because = (input: Parameters<typeof planController>[0]) => planController(input).impossible[0]?.because;
    const thirsty = zoneInInches(1, 0.3, 1, { storageDays: 2 });
    expect(because(aController([thirsty], { rules: [{ ...noRule, daysPerWeek: 1 }] }))).toBe('the rules leave too few days or minutes');
    const many = Array.from({ length: 12 }, (_, at) => zoneInInches(at + 1, 0.3, 0.5, { storageDays: 2 }));
    expect(because(aController(many, { window: { from: 0, until: 240 } }))).toBe('the hours are too short for all zones');
    // Its zones want fewer minutes than the week has, but their soaks do not go together.
    const soaking = { ...inventedController(17, { mostZones: 8, mostPrograms: 2 }), window: { from: 0, until: 120 } };
    expect(because(soaking)).toBe('no way was found to lay starts and soaks into the hours');
    expect(because(aController([zoneInInches(1, 0.2, 1)], { flowLimitLPerMin: 5 }))).toBe('more flow than meter and main carry');
    expect(because(aController([zoneInInches(1, 0.2, 3, { intake: intakeInInches(3, 0.01, 0.01) })]))).toBe(
      'the soil takes less than the shortest run',
    );
  });

  it('names what the timer has not: the station, a program, a percent that is large enough', () => {
    const told = (traits: object, zones = [zoneInInches(1, 0.2, 1, { storageDays: 3 })]) => {
      const input = aController(zones);
      return planController({ ...input, traits: { ...input.traits, ...traits } });
    };
    const two = told({ stations: 4 }, [zoneInInches(1, 0.2, 1, { storageDays: 3 }), zoneInInches(9, 0.2, 1, { storageDays: 3 })]);
    expect(two.impossible).toMatchObject([
      { zoneId: 'zone 9', because: 'the timer has no such station', freedBy: 'a timer that holds more' },
    ]);
    // The other zone is planned all the same.
    expect(two.full.programs.flatMap(({ stations }) => stations.map(({ station }) => station))).toEqual([1]);
    expect(told({ programs: 0 }).impossible).toMatchObject([
      { because: 'the timer has too few programs', freedBy: 'a timer with more programs' },
    ]);
    const percent = told({ maxAdjustPercent: 1, adjustStepPercent: 5 });
    expect(percent.impossible).toMatchObject([{ because: 'the timer takes too small a percent', freedBy: 'a timer that holds more' }]);
  });

  it("names the timer's own percent of the month where that is 0, not the hours", () => {
    const still = aController([zoneInInches(1, 0.2, 1, { storageDays: 3 })]);
    const july = Array.from({ length: 12 }, (_, at) => (at === 6 ? 0 : 100));
    const plan = planController({ ...still, traits: { ...still.traits, monthlyAdjustPercent: july } });
    expect(plan.full.judgement.usedLitres).toBe(0);
    expect(plan.impossible).toMatchObject([{ because: 'the percent of the month is 0', freedBy: 'another percent of the month' }]);
  });
});

describe('when watering begins and ends', () => {
  const hours = (starts: readonly number[], window: { from: number; until: number }, minutes = 20) => {
    const days = { kind: 'daily' as const };
    const stations = [{ station: 1, minutes, cycles: 1, soakMinutes: 0 }];
    const input = aController([zoneInInches(1, 0.1, 1)], { window });
    const { beginsAt, endsAt, limits } = judgePlan(input, [program({ days, starts, stations })]);
    return { beginsAt, endsAt, late: limits.includes('outside the hours') };
  };
  const night = { from: 1320, until: 360 };

  it('takes what begins before the hours as the first run of the night, not as its last', () => {
    expect(hours([1230, 1353, 60], night)).toEqual({ beginsAt: 1230, endsAt: 80, late: true });
    expect(hours([1310], night)).toEqual({ beginsAt: 1310, endsAt: 1330, late: true });
    expect(hours([1330, 350], night)).toEqual({ beginsAt: 1330, endsAt: 370, late: true });
  });

  it('begins with the hours where all keeps to them, however long nothing runs between', () => {
    expect(hours([1320, 300], night)).toEqual({ beginsAt: 1320, endsAt: 320, late: false });
    expect(hours([600, 60], { from: 600, until: 120 })).toEqual({ beginsAt: 600, endsAt: 80, late: false });
  });

  it('has no end where something always runs, and none where nothing does', () => {
    const always = hours([0, 240, 480, 720, 960, 1200], { from: 60, until: 360 }, 240);
    expect(always.beginsAt).toBe(always.endsAt);
    expect(hours([], night)).toEqual({ beginsAt: null, endsAt: null, late: false });
  });
});
