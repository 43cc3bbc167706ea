import { controllersWithoutWater } from '@rillbook/metering/detection/hourly/delivery/controller-delivery.js';
import { followDelivery, noNoDelivery } from '@rillbook/metering/detection/hourly/delivery/no-delivery.js';
import { leastRunFlow, waterClusters } from '@rillbook/metering/detection/hourly/runs/water-clusters.js';
import { followRain, noWateredInRain } from '@rillbook/metering/detection/hourly/runs/watered-in-rain.js';
import type { DayKind, ObservedMeter } from '@rillbook/metering/detection/hourly/steps/observed-meter.js';
import { describe, expect, it } from 'vitest';
import { type Given, HOURS, handMeter, MINUTES } from './hand-meter.js';

/** Zone 1 for an hour from five on each of these days. */
const daily = (days: number, zone = 1, clock = 300) => Array.from({ length: days }, (_, day) => [zone, day, clock, 60] as const);

function withKinds(given: Given, kinds: readonly DayKind[]): ObservedMeter {
  const meter = handMeter({ days: kinds.length, flows: [10], runs: daily(kinds.length), ...given });
  meter.kinds.push(...kinds);
  for (let day = 0; day < kinds.length; day++) {
    meter.expected[day * HOURS + 5] = 600;
    meter.touched[day * HOURS + 5] = 1;
  }
  return meter;
}

describe('water in one piece outside of runs', () => {
  const at = (hours: Readonly<Record<number, number>>) =>
    handMeter({ days: 2, flows: [10], litres: (day, hour) => (day ? 0 : (hours[hour] ?? 0)) });

  it('is from the first hot step to the last, with the part-filled ones beside it', () => {
    const meter = at({ 9: 20, 10: 130, 11: 120, 12: 40, 15: 125 });
    expect(waterClusters(meter, 0, 2)).toEqual([
      { day: 0, fromStep: 10, untilStep: 12, litres: 310, clockMinute: 600, beganAlone: true, endedAlone: true },
      { day: 0, fromStep: 15, untilStep: 16, litres: 125, clockMinute: 900, beganAlone: true, endedAlone: true },
    ]);
    expect(waterClusters(meter, 0, 130 / 60)).toHaveLength(1);
    expect(waterClusters(meter, 0, 131 / 60)).toEqual([]);
    expect(waterClusters(meter, 1, 2)).toEqual([]);
  });

  it('did not begin or end alone beside a run, a step that is not known, or the ends of the day', () => {
    const meter = at({ 0: 130, 5: 130, 10: 130, 23: 130 });
    meter.touched[4] = 1;
    meter.usage.litres[11] = Number.NaN;
    expect(waterClusters(meter, 0, 2).map(({ fromStep, beganAlone, endedAlone }) => [fromStep, beganAlone, endedAlone])).toEqual([
      [0, false, true],
      [5, false, true],
      [10, true, false],
      [23, true, false],
    ]);
    meter.touched[5] = 1;
    expect(waterClusters(meter, 0, 2)).toHaveLength(3);
  });

  it('is two steps of the register at least, four deviations beyond people, and what no finding has', () => {
    const meter = at({ 10: 130, 12: 80 });
    meter.indoor.fill(5);
    meter.claimed.fill(5);
    expect(waterClusters(meter, 0, 2).map(({ litres }) => litres)).toEqual([120]);
    meter.indoorSd.fill(31);
    expect(waterClusters(meter, 0, 2)).toEqual([]);
    meter.indoorSd.fill(30);
    expect(waterClusters(meter, 0, 2)).toHaveLength(1);
    const coarse = handMeter({ days: 1, litres: (_, hour) => (hour === 8 ? 76 : hour === 10 ? 74 : 0), resolution: 38 });
    expect(waterClusters(coarse, 0, 0).map(({ fromStep }) => fromStep)).toEqual([8]);
  });

  it('is like a run from a quarter of the smallest zone, for a quarter of an hour; half of it beside people', () => {
    expect(leastRunFlow(handMeter({ flows: [40, 16, null] }), 0.5)).toBe(1);
    expect(leastRunFlow(handMeter({ flows: [40, 16, null], kind: 'mixed' }), 0.5)).toBe(8);
    expect(leastRunFlow(handMeter({ flows: [40, 16, null] }), 3)).toBe(3);
    expect(leastRunFlow(handMeter({ flows: [null] }), 0.5)).toBe(0.5);
  });
});

describe('watered in rain', () => {
  // Rain of 6 mm on days 2 and 3 together; days 3 to 6 need nothing, and the runs of days 4 and 5 pass water.
  const rainy = (more: Given = {}) =>
    withKinds(
      {
        litres: (day, hour) => (hour === 5 && day !== 6 ? 500 : 0),
        ...more,
        evidence: {
          rainMm: Float64Array.of(0, 0, 2, 4, 0, 3, 0, 0, 0, 0),
          neededLitres: Float64Array.of(9, 9, 9, 0, 0, 0, 0, 9, 9, 9),
          ...more.evidence,
        },
      },
      Array.from({ length: 10 }, () => 'ran'),
    );

  function followed(meter: ObservedMeter, until = 10) {
    const wet = noWateredInRain();
    for (let day = 0; day < until; day++) followRain(meter, wet, day);
    return wet.told;
  }

  it('is a storm of six millimetres in two days, no need on that day and the day before, and runs that passed', () => {
    const [one, ...others] = followed(rainy());
    expect(others).toEqual([]);
    // Day 4 has 6 mm before it; day 5 has 4.
    expect(one).toMatchObject({
      fromMinute: 4 * MINUTES,
      openedMinute: 5 * MINUTES,
      clearedMinute: 8 * MINUTES,
      litres: 500,
      zones: [0],
      costs: true,
    });
    expect(one?.evidence['days']).toEqual([{ date: '2026-06-05', rainBeforeMm: 6, litres: 500 }]);
    expect(one?.details).toMatchObject({ days: 1, rainMm: 6, litresOfStorm: 500 });
    expect(followed(rainy(), 7)[0]?.clearedMinute).toBeNull();
  });

  it('adds the days of one storm, and is another one after three days without', () => {
    const rainMm = Float64Array.of(0, 0, 2, 4, 2, 0, 0, 0, 7, 0);
    const neededLitres = new Float64Array(10);
    const told = followed(rainy({ litres: (_, hour) => (hour === 5 ? 500 : 0), evidence: { rainMm, neededLitres } }));
    expect(told.map(({ fromMinute, litres, details }) => [fromMinute / MINUTES, litres, details['days'], details['rainMm']])).toEqual([
      [4, 1000, 2, 6],
      [9, 500, 1, 7],
    ]);
  });

  it('is not told where it rained less, something was needed, the runs were held, or rain is not known', () => {
    expect(followed(rainy({ evidence: { rainMm: Float64Array.of(0, 0, 2, 3.9, 0, 0, 0, 0, 0, 0) } }))).toEqual([]);
    expect(followed(rainy({ evidence: { rainMm: Float64Array.of(0, 0, 2, 4, 0, 0, 0, Number.NaN, 9, 0) } }))).toHaveLength(1);
    expect(followed(rainy({ evidence: { neededLitres: Float64Array.of(9, 9, 9, 1, 0, 0, 0, 9, 9, 9) } }))).toEqual([]);
    expect(followed(rainy({ litres: (day, hour) => (hour === 5 && day !== 4 ? 500 : 299 / HOURS) }))).toEqual([]);
    const held = rainy();
    held.kinds[4] = 'skipped';
    expect(followed(held)).toEqual([]);
    expect(
      followed(rainy({ evidence: { rainMm: Float64Array.of(9, 9, 0, 0, 0, 0, 0, 0, 0, 0), neededLitres: new Float64Array(10) } }))[0]
        ?.fromMinute,
    ).toBe(2 * MINUTES);
  });
});

describe('controllers without water', () => {
  const two = (litres: (day: number, hour: number) => number, more: Given = {}) =>
    handMeter({
      days: 1,
      flows: [10, 20],
      controllers: ['c1', 'c2'],
      runs: [
        [1, 0, 300, 60],
        [2, 0, 420, 60],
      ],
      litres,
      ...more,
    });

  it('are those that pass less than a fifth where they run alone, though others pass theirs', () => {
    const passing = (second: number) => two((_, hour) => (hour === 5 ? 600 : hour === 7 ? second : 0));
    expect([...controllersWithoutWater(passing(239), 0)]).toEqual([[1, 1200]]);
    expect([...controllersWithoutWater(passing(240), 0)]).toEqual([]);
    const claimed = passing(300);
    claimed.indoor.fill(40);
    claimed.claimed.fill(30);
    expect([...controllersWithoutWater(claimed, 0).keys()]).toEqual([1]);
    expect([
      ...controllersWithoutWater(
        two(() => 0),
        0,
      ),
    ]).toEqual([
      [0, 600],
      [1, 1200],
    ]);
    expect([
      ...controllersWithoutWater(
        two(() => 0, { controllers: ['c1', 'c1'] }),
        0,
      ),
    ]).toEqual([]);
  });

  it('are judged by three tenths of their water alone, three steps of the register, and factors that are known', () => {
    // Zone 2 runs from five to seven; zone 1 from five to six or longer.
    const beside = (minutes: number) =>
      two(() => 0, {
        runs: [
          [1, 0, 300, minutes],
          [2, 0, 300, 120],
        ],
      });
    expect([...controllersWithoutWater(beside(60), 0).keys()]).toEqual([1]);
    expect([...controllersWithoutWater(beside(61), 0).keys()]).toEqual([]);
    expect([
      ...controllersWithoutWater(
        two(() => 0, { resolution: 200 }),
        0,
      ).keys(),
    ]).toEqual([0, 1]);
    expect([
      ...controllersWithoutWater(
        two(() => 0, { resolution: 201 }),
        0,
      ).keys(),
    ]).toEqual([1]);
    // Of 600 L 100 passed: 500 are missing, and three steps of 170 are more.
    const some = (resolution: number) => two((_, hour) => (hour === 5 ? 100 : hour === 7 ? 1200 : 0), { resolution });
    expect([...controllersWithoutWater(some(166), 0).keys()]).toEqual([0]);
    expect([...controllersWithoutWater(some(170), 0).keys()]).toEqual([]);
    // Zone 2 alone for one of four hours, and for three of ten.
    const longer = (first: number, second: number) =>
      two(() => 0, {
        runs: [
          [1, 0, 300, first],
          [2, 0, 300, second],
        ],
      });
    expect([...controllersWithoutWater(longer(180, 240), 0).keys()]).toEqual([]);
    expect([...controllersWithoutWater(longer(420, 600), 0).keys()]).toEqual([1]);
    const half = two(() => 0);
    half.factorOfDay.set([1, 0.5]);
    expect([...controllersWithoutWater(half, 0)]).toEqual([
      [0, 600],
      [1, 600],
    ]);
    expect([
      ...controllersWithoutWater(
        two(() => Number.NaN),
        0,
      ),
    ]).toEqual([]);
  });
});

describe('runs that pass no water', () => {
  function followed(meter: ObservedMeter) {
    const none = noNoDelivery();
    meter.kinds.forEach((_, day) => {
      followDelivery(meter, none, day);
    });
    return none.told;
  }

  it('are told on their third day without rain, and end with the first that passes', () => {
    const kinds: DayKind[] = ['ran', 'skipped', 'at rest', 'skipped', 'skipped', 'skipped', 'ran'];
    const [one, ...others] = followed(withKinds({}, kinds));
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      kind: 'not delivering',
      zones: [0],
      costs: false,
      fromMinute: MINUTES,
      openedMinute: 4 * MINUTES + 360,
      clearedMinute: 6 * MINUTES + 360,
      evidence: { runDays: 4, expectedLitres: 2400 },
    });
    expect(one?.litres).toBeCloseTo((2400 * 365.25) / 12 / 5, 6);
    expect(followed(withKinds({}, ['skipped', 'skipped', 'ran', 'skipped', 'skipped']))).toEqual([]);
  });

  it('are a rain sensor after three millimetres in three days, or rain that nobody knows', () => {
    const dry = (rain: readonly number[]) =>
      followed(withKinds({ evidence: { rainMm: Float64Array.from(rain) } }, ['skipped', 'skipped', 'skipped']));
    expect(dry([0, 0, 2.9])).toHaveLength(1);
    expect(dry([1, 1, 1])).toEqual([]);
    expect(dry([0, 0, Number.NaN])).toEqual([]);
  });

  it('of one of two controllers are told of its zones, and nothing is learnt from such days', () => {
    const [days, both] = [4, { flows: [10, 20], controllers: ['c1', 'c2'] }];
    const runs = [...daily(days), ...daily(days, 2, 420)];
    const meter = withKinds({ ...both, runs, litres: (day, hour) => (hour === 5 || (hour === 7 && day === 3) ? 600 : 0) }, [
      'ran',
      'ran',
      'ran',
      'ran',
    ]);
    const [one, ...others] = followed(meter);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ zones: [1], fromMinute: 0, evidence: { runDays: 3, expectedLitres: 3600 } });
    expect(one?.clearedMinute).not.toBeNull();
    expect([...meter.excused]).toEqual([1, 1, 1, 0]);
  });
});
