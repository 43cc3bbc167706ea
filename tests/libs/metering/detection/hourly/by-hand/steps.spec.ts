import { isAboutSettings, litresOfOtherSettings } from '@rillbook/metering/detection/hourly/steps/about-settings.js';
import { handLitresAWeek } from '@rillbook/metering/detection/hourly/steps/hand-litres.js';
import { learnIndoorProfile, profilePlace } from '@rillbook/metering/detection/hourly/steps/indoor-profile.js';
import { quantile, robustSpread } from '@rillbook/metering/detection/hourly/steps/robust-spread.js';
import { runMinutes } from '@rillbook/metering/detection/hourly/steps/run-minutes.js';
import { dateOfMinute, localDayOfMinute, stepDays } from '@rillbook/metering/detection/hourly/steps/step-days.js';
import { describe, expect, it } from 'vitest';
import { FIRST_DAY, HOURS, handMeter } from './hand-meter.js';

describe('a spread by ranks', () => {
  it('interpolates between ranks, and is not known of nothing', () => {
    expect([0, 0.25, 0.5, 0.9, 1].map((share) => quantile([30, 10, 20, 40], share))).toEqual([10, 17.5, 25, 37, 40]);
    expect(quantile([7], 0.9)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it('is 1.4826 median deviations, whatever a wild value says', () => {
    expect(robustSpread([1, 2, 3, 4, 1000])).toEqual({ median: 3, sd: 1.4826 });
    expect(robustSpread([5, 5, 5]).sd).toBe(0);
  });
});

describe('steps by local day', () => {
  it('begin with the first that begins in a day, and clocks go on past two when they change', () => {
    // The second day has 23 hours: from two on its clock shows an hour more.
    const calendar = { firstDay: FIRST_DAY, days: 2, midnights: Float64Array.of(0, 1440, 1440 + 23 * 60) };
    const usage = { firstMinute: -30, stepMinutes: 60, litres: new Float64Array(48), resolutionLitres: 1 };
    const { firstStep, clockMinute } = stepDays(calendar, usage);
    expect([...firstStep]).toEqual([1, 25, 48]);
    expect([...clockMinute].slice(0, 3)).toEqual([0, 30, 90]);
    expect([...clockMinute].slice(25, 29)).toEqual([30, 90, 210, 270]);
    expect(clockMinute[47]).toBe(1410);
  });

  it('have the share of the day, longer or shorter, and its date', () => {
    const calendar = { firstDay: FIRST_DAY, days: 3, midnights: Float64Array.of(0, 1440, 1440 + 1500, 4380) };
    expect([0, 720, 1440, 1440 + 750, 2940, 4380].map((minute) => localDayOfMinute(calendar, minute) - FIRST_DAY)).toEqual([
      0, 0.5, 1, 1.5, 2, 3,
    ]);
    expect(localDayOfMinute(calendar, -720) - FIRST_DAY).toBe(-0.5);
    expect([0, 1439, 1440, 2939, 2940].map((minute) => dateOfMinute(calendar, minute))).toEqual([
      '2026-06-01',
      '2026-06-01',
      '2026-06-02',
      '2026-06-02',
      '2026-06-03',
    ]);
  });
});

describe('minutes of zones in steps', () => {
  it('are what the run overlaps, and steps touched are those within five minutes of doubt and five of drain', () => {
    const meter = handMeter({
      flows: [10, 20],
      runs: [
        [1, 1, 350, 30],
        [2, 1, 380, 25],
      ],
    });
    // A fifth of an hour's step is 12 minutes of doubt.
    const { fromStep, steps, minutes, touched } = runMinutes(meter, 1);
    expect([fromStep, steps]).toEqual([24, 24]);
    expect([...minutes.subarray(5 * 2, 7 * 2)]).toEqual([10, 0, 20, 25]);
    expect(minutes.reduce((sum, each) => sum + each, 0)).toBe(55);
    expect([...touched].flatMap((each, step) => (each ? [step] : []))).toEqual([5, 6, 7]);
    expect(runMinutes(meter, 1)).toBe(runMinutes(meter, 1));
  });

  it('follow the clock that was learnt, and reach into the next day', () => {
    const meter = handMeter({ flows: [10], runs: [[1, 0, 1430, 20]] });
    meter.shiftMinutes[0] = -15;
    expect(runMinutes(meter, 0).minutes[23]).toBe(20);
    meter.shiftMinutes[0] = 5;
    expect([runMinutes(meter, 0).minutes[23], runMinutes(meter, 1).minutes[0]]).toEqual([5, 15]);
    // Nothing learnt yet: half an hour of doubt on either side.
    const doubtful = Object.assign(handMeter({ flows: [10], runs: [[1, 1, 385, 20]] }), { shiftsLearnt: false });
    expect([...runMinutes(doubtful, 1).touched].flatMap((each, step) => (each ? [step] : []))).toEqual([5, 6, 7]);
  });
});

describe('settings that changed about a day', () => {
  const meter = handMeter({
    days: 12,
    flows: [10, 5],
    runs: [
      [1, 0, 300, 20],
      [1, 3, 300, 20],
      [1, 5, 300, 30],
      [2, 3, 330, 10],
      [2, 5, 330, 10.4],
      [1, 11, 300, 30],
    ],
  });

  it('are told by other minutes on the nearest day of the zone, before or after, within eight days', () => {
    expect([0, 3, 5, 11, 7].map((day) => isAboutSettings(meter, day))).toEqual([false, true, true, false, false]);
    const far = handMeter({
      days: 12,
      flows: [10],
      runs: [
        [1, 1, 300, 20],
        [1, 10, 300, 30],
      ],
    });
    expect(isAboutSettings(far, 1)).toBe(false);
  });

  it('would have passed what the longer minutes are more', () => {
    // Ten minutes of ten litres, and 0.4 of five.
    expect(litresOfOtherSettings(meter, 3)).toBeCloseTo(102, 9);
    expect(litresOfOtherSettings(meter, 5)).toBe(0);
    expect(litresOfOtherSettings(meter, 0)).toBe(0);
  });
});

describe('what a hand waters in a week', () => {
  const programmed = Float64Array.of(200, 250, Number.NaN);
  const runs = [
    [1, 0, 300, 20],
    [1, 1, 300, 20],
    [1, 2, 300, 20],
  ] as const;

  it('is what people say of it', () => {
    expect(handLitresAWeek(handMeter({ flows: [10], evidence: { handLitresPerDay: 30, programmedLitres: programmed } }), 0)).toBe(210);
  });

  it('else programmed water that no valve puts out by the record, more than rounding', () => {
    const meter = handMeter({ flows: [10], runs, evidence: { programmedLitres: programmed } });
    meter.flows[0] = 40;
    expect([0, 1, 2].map((day) => handLitresAWeek(meter, day))).toEqual([0, 350, 0]);
    const rounded = handMeter({ flows: [10], runs, evidence: { programmedLitres: Float64Array.of(200.2, 200.3, 0) } });
    expect(handLitresAWeek(rounded, 0)).toBe(0);
    expect(handLitresAWeek(rounded, 1)).toBeCloseTo(2.1, 9);
    expect(handLitresAWeek(handMeter({ evidence: { programmedLitres: programmed } }), 1)).toBe(0);
  });
});

describe('indoor use by the hour', () => {
  it('has a place for each hour of weekdays and of weekends', () => {
    expect(profilePlace(FIRST_DAY, 0)).toBe(0);
    expect(profilePlace(FIRST_DAY + 4, 779)).toBe(12);
    expect(profilePlace(FIRST_DAY + 5, 780)).toBe(HOURS + 13);
    expect(profilePlace(FIRST_DAY + 6, 1500)).toBe(HOURS + 23);
    expect(profilePlace(FIRST_DAY, -5)).toBe(0);
  });

  it('is learnt from steps without runs; what is not seen takes the other days, else the night', () => {
    // A week: 2 L by night, 10 + day by day at noon; five o'clock always has a run. What a finding claims is no indoor use.
    const meter = handMeter({ days: 7, kind: 'mixed', litres: (day, hour) => (hour < 6 ? 2 : hour === 12 ? 10 + day : 4) });
    for (let day = 0; day < 7; day++) meter.touched[day * HOURS + 5] = 1;
    for (let step = 0; step < 7 * HOURS; step++) if (step % HOURS === 20) meter.claimed[step] = 1;
    const { litres, sd } = learnIndoorProfile(meter, 6)!;
    expect([litres[0], litres[5], litres[20], litres[21]]).toEqual([2, 2, 3, 4]);
    // Of 10, 11, 12, 13, 14 the highest counts as its 97.5 % quantile, 13.9.
    const kept = [10, 11, 12, 13, 13.9];
    const mean = kept.reduce((sum, each) => sum + each, 0) / 5;
    expect(litres[12]).toBeCloseTo(mean, 9);
    expect(sd[12]).toBeCloseTo(Math.sqrt(kept.reduce((sum, each) => sum + (each - mean) ** 2, 0) / 4), 9);
    // Two days of a weekend are too few: it takes the weekdays'.
    expect([litres[HOURS], litres[HOURS + 12], sd[HOURS + 12]]).toEqual([2, litres[12], sd[12]]);
    expect(learnIndoorProfile(meter, 2)).toBeNull();
  });
});
