import { followSteadyFlow, noSteadyFlow } from '@rillbook/metering/detection/hourly/leaks/steady-flow.js';
import { followOffSchedule, noOffSchedule } from '@rillbook/metering/detection/hourly/runs/off-schedule-run.js';
import type { ObservedMeter } from '@rillbook/metering/detection/hourly/steps/observed-meter.js';
import { describe, expect, it } from 'vitest';
import { type Given, HOURS, handMeter, MINUTES } from './hand-meter.js';

const MONTH = 365.25 / 12;

describe('flow that never stops', () => {
  /** Litres of each hour, by the hour since the first midnight. */
  const hourly = (days: number, of: (hour: number) => number, more: Given = {}) =>
    handMeter({ days, litres: (day, hour) => of(day * HOURS + hour), ...more });

  function followed(meter: ObservedMeter) {
    const steady = noSteadyFlow(meter);
    const openedOn: number[] = [];
    for (let day = 0; day < meter.evidence.days; day++) if (followSteadyFlow(meter, steady, day)) openedOn.push(day);
    return { told: steady.told, openedOn };
  }

  it('is told after thirty hours, with its level, and is over after two hours without it', () => {
    // A litre a minute from ten on the first day; one hour without on the third, two on the fourth.
    const meter = hourly(5, (hour) => (hour >= 10 && hour < 77 && hour !== 60 ? 60 : 0));
    const { told, openedOn } = followed(meter);
    expect(openedOn).toEqual([1]);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ fromMinute: 600, openedMinute: 600 + 30 * 60, clearedMinute: 79 * 60, costs: true, zones: [] });
    expect(told[0]?.litres).toBeCloseTo(1440 * MONTH, 6);
    // A litre of the register over the 48 hours of the level.
    expect(told[0]?.sdLitres).toBeCloseTo((1440 * MONTH) / (60 * 48), 6);
    expect(told[0]?.details).toMatchObject({ litresPerMinute: 1, litresPerDay: 1440, lookAt: 'main and valves' });
    expect(told[0]?.details['litresSoFar']).toBe(79 * 60 - 600);
    expect(meter.steadyLPerMin).toBe(0);
    // What it accounts for ends with it.
    expect([9, 10, 47, 48].map((step) => meter.claimed[step])).toEqual([0, 60, 60, 0]);
    expect(meter.claimed.subarray(79).every((litres) => litres === 0)).toBe(true);
  });

  it('is not told below what the meter shows: 0.15 gpm are 34.07 L an hour', () => {
    expect(followed(hourly(3, () => 34)).told).toEqual([]);
    expect(followed(hourly(3, () => 34.1)).told).toHaveLength(1);
    // An hour has it from half of that on: a dip to 17 is none without.
    expect(followed(hourly(3, (hour) => (hour % 10 === 9 ? 17.1 : 40))).told).toHaveLength(1);
    expect(followed(hourly(3, (hour) => (hour % 10 === 9 ? 16.9 : 40))).told).toEqual([]);
  });

  it('is seen in twelve quiet hours at least, those of runs left out', () => {
    const meter = hourly(3, () => 60);
    for (let step = 0; step < meter.touched.length; step++) meter.touched[step] = step % 3 ? 1 : 0;
    expect(followed(meter).told[0]?.openedMinute).toBe(34 * 60);
  });

  it('goes on over hours that nobody knows, two days at most', () => {
    const unknown = (hours: number) =>
      followed(hourly(6, (hour) => (hour >= 20 && hour < 20 + hours ? Number.NaN : 60))).told[0]?.openedMinute;
    expect(unknown(40)).toBe(61 * 60);
    expect(unknown(48)).toBe(69 * 60);
    expect(unknown(49)).toBe((69 + 30) * 60);
  });

  it('on a mixed meter is beyond the usual night and what people use', () => {
    // Nights of 30 L an hour and days of 120; from the twelfth day 90 L an hour more.
    const people = (hour: number) => (hour % HOURS < 6 ? 30 : 120);
    const meter = (more: number) => {
      const made = hourly(16, (hour) => people(hour) + (hour >= 12 * HOURS ? more : 0), { kind: 'mixed' });
      made.indoor.set(Float64Array.from({ length: 16 * HOURS }, (_, hour) => people(hour)));
      made.indoorSd.fill(10);
      return made;
    };
    const [one] = followed(meter(90)).told;
    // Hours of the days before had more than the usual night too: it is told when a streak has a night.
    expect(one?.details).toMatchObject({ litresPerMinute: 1.5, lookAt: 'main, valves and indoor' });
    expect(one?.openedMinute).toBeGreaterThan(12 * MINUTES);
    expect(one?.openedMinute).toBeLessThanOrEqual(14 * MINUTES);
    expect(one?.evidence['usualNightLPerMin']).toBe(0.5);
    expect(followed(meter(0)).told).toEqual([]);
    expect(followed(meter(30)).told).toEqual([]);
  });
});

describe('a run off schedule', () => {
  // A zone of 10 L/min: ten minutes of every zone are 100 L; 600 L are a usual day.
  const USUAL = 600;
  const meterOf = (water: readonly (readonly [day: number, hour: number, litres: number])[], more: Given = {}) => {
    const days = more.days ?? 12;
    const at = new Map(water.map(([day, hour, litres]) => [day * HOURS + hour, litres]));
    const meter = handMeter({ days, flows: [10], litres: (day, hour) => at.get(day * HOURS + hour) ?? 0, ...more });
    meter.kinds.push(...Array.from({ length: days }, () => 'at rest' as const));
    return meter;
  };

  function followed(meter: ObservedMeter) {
    const off = noOffSchedule();
    const openedOn: number[] = [];
    for (let day = 0; day < meter.evidence.days; day++) if (followOffSchedule(meter, off, day, 0.5, USUAL)) openedOn.push(day);
    return { told: off.told, openedOn };
  }
  const openedOn = (...from: Parameters<typeof meterOf>) => followed(meterOf(...from)).openedOn;

  it('is told on its second night at the same time, with its schedule, and is over after twice its pause', () => {
    const meter = meterOf([
      [0, 22, 100],
      [2, 22, 120],
      [4, 22, 80],
    ]);
    const { told } = followed(meter);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ fromMinute: 22 * 60, openedMinute: 3 * MINUTES, clearedMinute: 9 * MINUTES, costs: true });
    // What came after the first, by the days since.
    expect(told[0]?.litres).toBeCloseTo((200 / 4) * MONTH, 9);
    expect(told[0]?.evidence).toEqual({
      dates: ['2026-06-01', '2026-06-03', '2026-06-05'],
      litres: [100, 120, 80],
      schedule: { clockMinute: 1320, minutes: 60, weekdays: [0, 2, 4], daysApart: 2 },
    });
    expect(told[0]?.details).toMatchObject({ times: 3, clockTime: '22:00', minutes: 60, litresEach: 100, litresPerMinute: 100 / 60 });
    expect([22, 70, 118].map((step) => meter.claimed[step])).toEqual([100, 120, 80]);
  });

  it('is at the same time within a step of an hour, about midnight too, and of alike litres', () => {
    expect(
      openedOn([
        [0, 22, 100],
        [1, 21, 100],
      ]),
    ).toEqual([1]);
    expect(
      openedOn([
        [0, 23, 100],
        [2, 0, 100],
      ]),
    ).toEqual([2]);
    expect(
      openedOn([
        [0, 22, 100],
        [1, 2, 100],
      ]),
    ).toEqual([]);
    expect(
      openedOn([
        [0, 22, 100],
        [1, 22, 75],
      ]),
    ).toEqual([1]);
    expect(
      openedOn([
        [0, 22, 100],
        [1, 22, 74],
      ]),
    ).toEqual([]);
    expect(
      openedOn([
        [0, 22, 100],
        [7, 22, 100],
      ]),
    ).toEqual([7]);
    expect(
      openedOn([
        [0, 22, 100],
        [9, 22, 100],
      ]),
    ).toEqual([]);
  });

  it('by day is told on the third day, on the second where both are as exact as a timer', () => {
    expect(
      openedOn([
        [0, 12, 100],
        [1, 12, 90],
      ]),
    ).toEqual([]);
    expect(
      openedOn([
        [0, 12, 100],
        [1, 12, 90],
        [2, 12, 100.1],
      ]),
    ).toEqual([2]);
    expect(
      openedOn([
        [0, 12, 100],
        [1, 12, 96],
      ]),
    ).toEqual([1]);
    expect(
      openedOn([
        [0, 12, 100],
        [1, 13, 96],
      ]),
    ).toEqual([]);
    // Twenty-five steps of the register.
    expect(
      openedOn(
        [
          [0, 12, 100],
          [1, 12, 100],
        ],
        { resolution: 4 },
      ),
    ).toEqual([1]);
    expect(
      openedOn(
        [
          [0, 12, 100],
          [1, 12, 100],
        ],
        { resolution: 4.1 },
      ),
    ).toEqual([]);
  });

  it('is told at once where it is as much as a watering: a quarter of a usual day by night, half of it by day', () => {
    expect(openedOn([[3, 22, 149]])).toEqual([]);
    expect(openedOn([[3, 22, 150]])).toEqual([3]);
    expect(openedOn([[3, 12, 299]])).toEqual([]);
    expect(openedOn([[3, 12, 300]])).toEqual([3]);
    const [once] = followed(meterOf([[1, 12, 300]])).told;
    expect(once).toMatchObject({ litres: 300, clearedMinute: 10 * MINUTES });
  });

  it('is no hand that waters by day, unless it is half as much again as its week', () => {
    const hand = { evidence: { handLitresPerDay: 30 } };
    expect(openedOn([[1, 12, 315]], hand)).toEqual([]);
    expect(openedOn([[1, 12, 316]], hand)).toEqual([1]);
    expect(openedOn([[1, 22, 315]], hand)).toEqual([1]);
  });

  it('is judged on no day that is not known, nor before clocks are', () => {
    const unknown = meterOf([[3, 12, 300]]);
    unknown.kinds[3] = 'not known';
    expect(followed(unknown).told).toEqual([]);
    expect(followed(Object.assign(meterOf([[3, 12, 300]]), { shiftsLearnt: false })).told).toEqual([]);
  });
});
