import { litresBack } from '@rillbook/metering/detection/hourly/leaks/litres-back.js';
import { dayOf, indoorLitres, sdByFlows } from '@rillbook/metering/detection/hourly/leaks/litres-of-day.js';
import { beganAt, meanExcess } from '@rillbook/metering/detection/hourly/leaks/mean-excess.js';
import { quietHours, type QuietHour, visitQuietHours } from '@rillbook/metering/detection/hourly/leaks/quiet-hours.js';
import { comeRegularly } from '@rillbook/metering/detection/hourly/leaks/regular-counts.js';
import { smallestSteadyFlow } from '@rillbook/metering/detection/hourly/leaks/steady-limit.js';
import { spreadBefore } from '@rillbook/metering/detection/hourly/leaks/usual-spread.js';
import { moveUsualUse, noUsualUse } from '@rillbook/metering/detection/hourly/leaks/usual-use.js';
import { describe, expect, it } from 'vitest';
import { HOURS, handMeter } from './hand-meter.js';

const series = (length: number, of: (day: number) => number) => Float64Array.from({ length }, (_, day) => of(day));

describe('litres that nothing explains, as they usually are', () => {
  it('are not known by fewer than six days, the newest four not counted', () => {
    const still = { litres: series(20, () => 10), runLitres: series(20, () => 0) };
    expect(spreadBefore(still, 8)).toBeNull();
    expect(spreadBefore(still, 9)).toMatchObject({ target: 10, restSd: 0, runShare: 0 });
  });

  it('rest and runs apart: median and 1.4826 deviations, wider by two over their number', () => {
    // Even days at rest with 8, 10 or 12 L, odd ones with 400 L of runs and a tenth of them more; one of them lacks most of its runs.
    const litres = series(30, (day) => (day === 9 ? -300 : day % 2 ? 36 + (day % 3) * 4 : 8 + (day % 3) * 2));
    const runLitres = series(30, (day) => (day % 2 ? 400 : 0));
    const spread = spreadBefore({ litres, runLitres }, 29)!;
    const rested = 13;
    expect(spread.target).toBe(10);
    expect(spread.restSd).toBeCloseTo(1.4826 * 2 * (1 + 2 / rested), 9);
    expect(spread.runShare).toBeCloseTo(0.1, 9);
    // A hundredth of spread is not believed: 0.025, and 0.4 % by the root of the days since the middle of them.
    expect(spread.runSd).toBeCloseTo(Math.hypot(0.025, 0.004 * Math.sqrt(29 - 13)), 9);
  });

  it('of runs are 0.3 of them until six ran, and those of months ago count where none ran since', () => {
    const few = { litres: series(40, () => 0), runLitres: series(40, (day) => (day > 30 && day < 36 ? 100 : 0)) };
    expect(spreadBefore(few, 39)?.runSd).toBeCloseTo(Math.hypot(0.3 * (1 + 2 / 5), 0.004 * Math.sqrt(39 - 33)), 9);
    const long = { litres: series(200, () => 5), runLitres: series(200, (day) => (day < 10 ? 100 : 0)) };
    const { runShare, runSd } = spreadBefore(long, 199)!;
    expect(runShare).toBeCloseTo(0.05, 9);
    expect(runSd).toBeCloseTo(Math.hypot(0.025, 0.004 * Math.sqrt(199 - 4)), 9);
  });
});

describe('litres of a usual day', () => {
  const after = (meter: ReturnType<typeof handMeter>, days: number) => {
    const usual = noUsualUse();
    for (let day = 0; day < days; day++) moveUsualUse(meter, usual, day);
    return usual;
  };

  it('are the mean of the last 28 days but the newest two, known after seven', () => {
    const meter = handMeter({ days: 40 });
    meter.usedLitres.set(series(40, (day) => 100 + day));
    expect(after(meter, 9).ofLate).toBeNaN();
    expect(after(meter, 10).ofLate).toBe(103);
    // Before day 39: days 9 to 36.
    expect(after(meter, 40).ofLate).toBe(122.5);
    expect(after(meter, 40).ofYear).toBe(Infinity);
  });

  it('are a quarter of the highest month at least, and a fifth of ten minutes of every zone of an irrigation meter', () => {
    const use = series(60, (day) => (day < 30 ? 1000 : 10));
    const mixed = handMeter({ days: 60, kind: 'mixed', flows: [10, null] });
    mixed.usedLitres.set(use);
    expect(after(mixed, 60).ofLate).toBe(250);
    const dry = handMeter({ days: 20, flows: [100, 60, null] });
    dry.usedLitres.set(series(20, () => 1));
    expect(after(dry, 20).ofLate).toBe(320);
  });

  it('of a year are their mean once 300 are known', () => {
    const meter = handMeter({ days: 310 });
    meter.usedLitres.set(series(310, (day) => (day % 2 ? 10 : 30)));
    expect(after(meter, 302).ofYear).toBe(Infinity);
    expect(after(meter, 303).ofYear).toBe(20);
  });
});

describe('the begin and the mean of an excess', () => {
  const spread = { target: 10, restSd: 1, runShare: 0.1, runSd: 0.1 };
  const nothing = { litres: series(8, (day) => [10, 10, 10, 60, 70, Number.NaN, 60, 70][day]!), runLitres: series(8, () => 0) };

  it('is the day from which the sum over the root of days is largest', () => {
    expect(beganAt({ ...nothing, since: 0, atRest: true }, 7, spread)).toBe(3);
    expect(beganAt({ ...nothing, since: 4, atRest: true }, 7, spread)).toBe(4);
    // Days at rest say nothing where none of them has shown it.
    expect(beganAt({ ...nothing, since: 0, atRest: false }, 7, spread)).toBe(7);
    const running = { litres: nothing.litres, runLitres: series(8, (day) => (day < 6 ? 0 : 100)) };
    expect(beganAt({ ...running, since: 0, atRest: false }, 7, spread)).toBe(6);
  });

  it('is the mean of the days that are known, less what is usual', () => {
    expect(meanExcess(nothing, { since: 3, until: 7 }, spread)).toEqual({ mean: 55, days: 4 });
    expect(meanExcess({ ...nothing, runLitres: series(8, () => 50) }, { since: 6, until: 7 }, spread)).toEqual({ mean: 50, days: 2 });
    expect(meanExcess(nothing, { since: 5, until: 5 }, spread)).toEqual({ mean: 0, days: 1 });
  });
});

describe('quiet hours', () => {
  it('are each visited once: flow a minute, without hours of runs or of steps that are missing', () => {
    const meter = handMeter({ days: 2, kind: 'mixed', litres: (day, hour) => (day ? Number.NaN : hour * 6) });
    meter.touched[3] = 1;
    meter.usage.litres[4] = Number.NaN;
    meter.indoor.fill(12);
    meter.indoorSd.fill(3);
    const hours = quietHours(60);
    const seen: QuietHour[] = [];
    for (const day of [0, 0, 1]) visitQuietHours(meter, hours, day, (hour) => seen.push(hour));
    expect(seen).toHaveLength(HOURS - 2);
    expect(seen[5]).toEqual({ begin: 7 * 60, flow: 0.7, indoor: 0.2, indoorSd: 0.05 });
  });

  it('are made of whole steps', () => {
    expect(quietHours(15)).toEqual({ stepsPerHour: 4, hourMinutes: 60, next: 0 });
    expect(quietHours(25)).toEqual({ stepsPerHour: 2, hourMinutes: 50, next: 0 });
  });
});

it('steps of a register that come by chance vary as their mean, those of a flow hardly', () => {
  expect(comeRegularly([2, 3, 2, 3, 2, 3])).toBe(true);
  expect(comeRegularly([0, 6, 1, 5, 0, 3])).toBe(false);
  // Mean 4, variance 2.441 and 2.464: midway between 1/4 + 0.64 and 4 is 2.445.
  expect(comeRegularly([2, 4, 4, 6, 5.45, 2.55])).toBe(true);
  expect(comeRegularly([2, 4, 4, 6, 5.47, 2.53])).toBe(false);
  expect([comeRegularly([0, 0, 0]), comeRegularly([3]), comeRegularly([])]).toEqual([false, false, false]);
});

describe('litres of a day', () => {
  const runs = [
    [1, 0, 300, 60],
    [1, 1, 300, 60],
    [2, 1, 420, 30],
  ] as const;
  const withRuns = () => {
    const meter = handMeter({ days: 2, flows: [10, 4], runs, litres: (_, hour) => (hour === 5 ? 540 : 0) });
    for (const day of [0, 1]) meter.expected[day * HOURS + 5] = 300;
    return meter;
  };

  it('that a zone passes again are its own, as far as it lacked', () => {
    const meter = withRuns();
    expect(litresBack(meter, 0)).toBe(0);
    meter.factorOfDay.set([0.5, 1], 0);
    // Half of 600 L; 540 − 300 − 20 − 10 are beyond.
    expect(litresBack(meter, 0)).toBe(240);
    meter.indoor.fill(20);
    meter.claimed.fill(10);
    expect(litresBack(meter, 0)).toBe(210);
    meter.factorOfDay.set([0.8, 1.5], 0);
    expect(litresBack(meter, 0)).toBeCloseTo(120, 9);
    meter.expected.fill(900);
    expect(litresBack(meter, 0)).toBe(0);
  });

  it('are the rest beside runs, indoor use and findings, for the steps that are known', () => {
    const meter = withRuns();
    meter.indoor.fill(2);
    meter.claimed.fill(1);
    meter.touched[5] = 1;
    expect(dayOf(meter, 0)).toEqual([240 - 24 * 3, 300]);
    // A hose by itself is no leak's water of an irrigation meter; it began and ended there, and is seen from two steps of the register on.
    meter.usage.litres[12] = 53;
    expect(dayOf(meter, 0)).toEqual([240 - 24 * 3 + 3, 300]);
    expect(dayOf({ ...meter, evidence: { ...meter.evidence, kind: 'mixed' } }, 0)).toEqual([240 - 24 * 3 + 53, 300]);
    for (let step = 12; step < 24; step++) meter.usage.litres[step] = Number.NaN;
    expect(dayOf(meter, 0)).toEqual([2 * (240 - 12 * 3), 300]);
    meter.usage.litres.fill(Number.NaN);
    expect(dayOf(meter, 0)[0]).toBeNaN();
    expect(indoorLitres(meter, 1)).toBe(48);
  });

  it('doubt their runs by what the flows may be off, together', () => {
    const meter = withRuns();
    meter.flowCovariance.set([0.04, 0.01, 0.01, 0.09]);
    expect(sdByFlows(meter, 0)).toBeCloseTo(60 * 0.2, 9);
    expect(sdByFlows(meter, 1)).toBeCloseTo(Math.sqrt(60 ** 2 * 0.04 + 2 * 60 * 30 * 0.01 + 30 ** 2 * 0.09), 9);
  });
});

it('the smallest steady flow goes by size and by the coarser of two resolutions, and is not known without steps', () => {
  const usage = { firstMinute: 0, stepMinutes: 60, litres: new Float64Array(1), resolutionLitres: 30 };
  // Two steps an hour: 2 · 60 / 60.
  expect(smallestSteadyFlow({ sizeMm: null, resolutionLitres: 60, usage })).toBe(2);
  expect(smallestSteadyFlow({ sizeMm: null, resolutionLitres: 10, usage })).toBe(1);
  expect(smallestSteadyFlow({ sizeMm: null, resolutionLitres: null, usage: { ...usage, resolutionLitres: null } })).toBeCloseTo(0.5678, 4);
  expect(smallestSteadyFlow({ sizeMm: 40, resolutionLitres: 60, usage: null })).toBeNull();
});
