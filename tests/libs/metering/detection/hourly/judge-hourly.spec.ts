import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { FindingKind } from '@rillbook/metering/detection/finding-candidate.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import { judgeHourly } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { smallestSteadyFlow } from '@rillbook/metering/detection/hourly/leaks/steady-limit.js';
import { describe, expect, it } from 'vitest';
import { type Fault, simulatedMeter, type Wish } from './simulated-meter.mjs';
import { worlds } from './worlds.js';

/** 2025-04-12 is day 0, so that the fault begins on 2025-07-11, amid a month of unchanged minutes. */
const FIRST_DAY = 20190;
const FAULT_DAY = 90;
const BEGAN = FIRST_DAY + FAULT_DAY;
const SEEDS = worlds(1001, 1002, 1003, 1004);

function judged(wish: Partial<Wish> & { readonly seed: number }, fault?: Fault): readonly Episode[] {
  const { evidence } = simulatedMeter({ firstDay: FIRST_DAY, days: 115, sizeMm: 20, zones: 6, ...wish, ...(fault ? { fault } : {}) });
  // Flows on record are off in these worlds, and that is told rightly.
  return settleEpisodes(judgeHourly(evidence)).filter(({ kind }) => kind !== 'flow to be tested');
}

const ofKind = (episodes: readonly Episode[], kind: FindingKind) => episodes.filter((one) => one.kind === kind);

describe('steady flow', () => {
  it.each([15, 60])('is opened within two days of its start and not before, with its level, from steps of %i minutes', (stepMinutes) => {
    for (const seed of SEEDS) {
      const fromMinute = (seed * 97) % 1440;
      const [found, ...others] = judged({ seed, stepMinutes }, { steady: { fromDay: FAULT_DAY, fromMinute, litresPerMinute: 3 } });
      const began = BEGAN + fromMinute / 1440;
      expect(others).toEqual([]);
      expect(found?.kind).toBe('steady flow');
      expect(found?.openedLocalDay).toBeGreaterThan(began);
      expect(found?.openedLocalDay).toBeLessThanOrEqual(began + 2);
      expect(found?.says.details['litresPerMinute']).toBeCloseTo(3, 0);
      expect(found?.causeFamily).toBe(`excess meter:m${seed}`);
      expect(found?.clearedLocalDay).toBeNull();
    }
  });

  it('ends when it stops, within a day of the first hours without it', () => {
    const [found, ...others] = judged({ seed: 1001 }, { steady: { fromDay: FAULT_DAY, untilDay: FAULT_DAY + 10, litresPerMinute: 4 } });
    expect(others).toEqual([]);
    expect(found?.clearedLocalDay).toBeGreaterThan(BEGAN + 10);
    expect(found?.clearedLocalDay).toBeLessThan(BEGAN + 11);
  });

  it('is not opened below what the meter can show, and the limit says so', () => {
    const limit = smallestSteadyFlow(simulatedMeter({ seed: 1, days: 1, sizeMm: 40 }).evidence) as number;
    expect(limit).toBeCloseTo(1.5 * 3.785411784, 9);
    for (const seed of SEEDS) {
      const found = judged({ seed, sizeMm: 40 }, { steady: { fromDay: FAULT_DAY, litresPerMinute: 0.8 * limit } });
      expect(ofKind(found, 'steady flow')).toEqual([]);
    }
  });

  it('is seen on a coarse register by its steps, hour by hour', () => {
    // Two steps of 37.85 L an hour are 1.26 L/min; the size of 20 mm tests at 1.89 L/min.
    for (const seed of SEEDS) {
      const found = judged({ seed, resolutionLitres: 37.85 }, { steady: { fromDay: FAULT_DAY, litresPerMinute: 2.5 } });
      const [steady] = ofKind(found, 'steady flow');
      expect(steady?.openedLocalDay).toBeLessThanOrEqual(BEGAN + 2);
      expect(steady?.says.details['litresPerMinute']).toBeGreaterThan(1.89);
    }
  });

  it('on a mixed meter is what people do not use: found beside them, and not opened by them', () => {
    const found = SEEDS.map((seed) =>
      ofKind(judged({ seed, kind: 'mixed' }, { steady: { fromDay: FAULT_DAY, litresPerMinute: 5 } }), 'steady flow'),
    );
    for (const [one] of found) expect(one?.openedLocalDay).toBeLessThanOrEqual(BEGAN + 3);
    for (const seed of SEEDS) expect(ofKind(judged({ seed, kind: 'mixed' }), 'steady flow')).toEqual([]);
  });
});

describe('off-schedule run', () => {
  const offSchedule = { fromDay: FAULT_DAY, clockMinute: 22 * 60, minutes: 30, everyDays: 2, litresPerMinute: 40 };

  it('is opened by its second night at the same time, with the schedule that it seems to follow', () => {
    for (const seed of SEEDS) {
      const [found] = ofKind(judged({ seed, missingShare: 0 }, { offSchedule }), 'off-schedule run');
      expect(found?.openedLocalDay).toBeGreaterThan(BEGAN + 0.9);
      expect(found?.openedLocalDay).toBeLessThan(BEGAN + 3.1);
      expect(found?.evidence['schedule']).toMatchObject({ clockMinute: 1320, minutes: 30, daysApart: 2 });
    }
  });

  it('is not opened by one small run, by hoses, or by a crew that tests every zone by day', () => {
    const once = { ...offSchedule, minutes: 10, untilDay: FAULT_DAY + 1 };
    for (const seed of SEEDS) expect(ofKind(judged({ seed }, { offSchedule: once }), 'off-schedule run')).toEqual([]);
  });

  it('ends when it stays away', () => {
    const found = judged({ seed: 1003, missingShare: 0 }, { offSchedule: { ...offSchedule, untilDay: FAULT_DAY + 12 } });
    const [off] = ofKind(found, 'off-schedule run');
    expect(off?.clearedLocalDay).toBeGreaterThan(BEGAN + 12);
    expect(off?.clearedLocalDay).toBeLessThan(BEGAN + 18);
  });

  it('of once a week is one finding from its first time on, and one that never came again ends after a week and a day', () => {
    const weekly = { ...offSchedule, everyDays: 7, clockMinute: 720, minutes: 180, litresPerMinute: 150 };
    const [first, ...others] = ofKind(judged({ seed: 1003, missingShare: 0 }, { offSchedule: weekly }), 'off-schedule run');
    expect(others).toEqual([]);
    expect(first?.openedLocalDay).toBeLessThan(BEGAN + 1.2);
    expect(first).toMatchObject({ clearedLocalDay: null, says: { details: { times: expect.any(Number) } } });
    const [once] = ofKind(
      judged({ seed: 1003, missingShare: 0 }, { offSchedule: { ...weekly, untilDay: FAULT_DAY + 1 } }),
      'off-schedule run',
    );
    expect(once?.clearedLocalDay).toBe(BEGAN + 9);
  });
});

describe('watered in rain', () => {
  it('is opened once for a storm after which the schedule ran and nothing was needed', () => {
    for (const seed of SEEDS) {
      const { evidence } = simulatedMeter({ seed, firstDay: FIRST_DAY, days: 115, sensor: false, pauses: false, everyDays: 1 });
      const found = ofKind(judgeHourly(evidence), 'watered in rain');
      expect(found.length).toBeGreaterThan(0);
      for (const one of found) {
        const day = Math.floor(one.openedLocalDay) - 1 - FIRST_DAY;
        expect((evidence.rainMm[day - 1] as number) + (evidence.rainMm[day - 2] as number)).toBeGreaterThanOrEqual(6);
        expect(evidence.neededLitres[day]).toBeLessThan(1e-6);
        expect(evidence.neededLitres[day - 1]).toBeLessThan(1e-6);
      }
      expect(new Set(found.map(({ causeKey }) => causeKey)).size).toBe(found.length);
    }
  });

  it('is not opened where a pause or a sensor held the runs', () => {
    for (const seed of SEEDS) expect(ofKind(judged({ seed, sensor: seed % 2 === 0, pauses: true }), 'watered in rain')).toEqual([]);
  });
});

describe('not delivering', () => {
  it('is one episode of the meter when runs pass no water, from the third dry day of runs', () => {
    for (const seed of SEEDS) {
      const found = judged({ seed, sensor: false, everyDays: 1 }, { allZones: { fromDay: FAULT_DAY, factor: 0 } });
      const [none, ...others] = found.filter(({ openedLocalDay }) => openedLocalDay > BEGAN);
      expect(others).toEqual([]);
      expect(none).toMatchObject({ kind: 'not delivering', money: null, says: { code: 'not delivering runs' } });
      expect(none?.openedLocalDay).toBeGreaterThan(BEGAN + 2);
    }
  });

  it('is one episode when all zones are low at once: pressure or main', () => {
    for (const seed of SEEDS) {
      const found = judged({ seed, everyDays: 1 }, { allZones: { fromDay: FAULT_DAY, factor: 0.6 } });
      const [low, ...others] = found.filter(({ openedLocalDay }) => openedLocalDay > BEGAN);
      expect(others).toEqual([]);
      expect(low).toMatchObject({ kind: 'not delivering', says: { code: 'not delivering pressure' } });
      expect(low?.zoneIds).toHaveLength(6);
    }
  });
});

describe('unexplained use', () => {
  it('of three tenths of the usual day, spread over all runs, is found within two days where runs are daily', () => {
    const delays = SEEDS.map((seed) => {
      const found = judged(
        { seed, everyDays: 1, sizeMm: 150, pauses: false, sensor: false },
        { duringRuns: { fromDay: FAULT_DAY, share: 0.3 } },
      );
      return (
        (ofKind(found, 'unexplained use').find(({ openedLocalDay }) => openedLocalDay > BEGAN)?.openedLocalDay ??
          Number.POSITIVE_INFINITY) - BEGAN
      );
    });
    expect(delays.filter((delay) => delay <= 2).length).toBeGreaterThanOrEqual(0.75 * SEEDS.length);
  });
});

describe('where there is nothing to judge by', () => {
  it('nothing is opened without usage by steps, and no runs are judged while settings are not known', () => {
    const { evidence } = simulatedMeter({ seed: 1004, firstDay: FIRST_DAY, days: 60 });
    expect(judgeHourly({ ...evidence, usage: null })).toEqual([]);
    const unknown = { ...evidence, runs: [], programmedLitres: new Float64Array(60).fill(Number.NaN) };
    expect(judgeHourly(unknown)).toEqual([]);
  });

  it('refuses steps longer than an hour', () => {
    const { evidence } = simulatedMeter({ seed: 1004, days: 3, stepMinutes: 60 });
    const usage = { firstMinute: 0, stepMinutes: 120, litres: new Float64Array(3), resolutionLitres: 1 };
    expect(() => judgeHourly({ ...evidence, usage })).toThrow('USAGE_STEPS_OUT_OF_DOMAIN');
  });
});
