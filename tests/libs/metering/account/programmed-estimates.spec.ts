import type { AccountInput, AccountController } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { judgeAccount } from '@rillbook/metering/detection/account/judge-account.js';
import type { EarlierMonth } from '@rillbook/metering/detection/account/judge-input.js';
import { describe, expect, it } from 'vitest';
import { aController, aFact, aMeter, anInterval, aProgram, aProperty, aZone, plainTraits, weather } from '../a-property.js';

const account = (changes: Partial<AccountInput> = {}) => computeMonthAccount(aProperty(changes));
const byWeather = [aController([aFact([], { state: 'weather' })])];
const metering = (litres: number) => [aMeter([anInterval('2026-06-01', '2026-07-01', litres)])];
/** Needed 5 mm x 30 d x 100 m2; programmed 30 min x 20 L/min x 30 d. */
const NEEDED = 15_000;
const DAY_OF_PROGRAM = 600;
const estimate = { code: 'settings-from-weather', details: { zones: ['z1'], controllerId: 'c1' } };

describe('a timer that sets its own times', () => {
  it('is taken to give what the zone needs, 30 % to either side, and says that it is an estimate', () => {
    const { property, zones, notes } = account({ controllers: byWeather });
    expect(property.programmed).toMatchObject({ litres: expect.closeTo(NEEDED, 6), estimatedShare: expect.closeTo(1, 9), reason: null });
    expect(property.settingsGap).toMatchObject({ litres: expect.closeTo(0, 6), estimate });
    // Against the need only the timer's own error is left.
    expect(property.settingsGap.sdLitres).toBeCloseTo(0.3 * NEEDED, 6);
    expect(property.settingsGap.inputs[0]).toEqual({ input: 'settingsFromWeather', subjectId: 'c1', varianceShare: expect.closeTo(1, 9) });
    expect(zones[0]).toMatchObject({
      overLitres: expect.closeTo(0, 6),
      underLitres: expect.closeTo(0, 6),
      minutes: null,
      runs: null,
      estimate,
    });
    expect(notes).toContainEqual({ code: 'programmed-from-weather', details: { share: expect.closeTo(1, 9), controllerId: 'c1' } });
    expect(notes.some(({ code }) => code === 'volume-estimated')).toBe(false);
  });

  it('widens the unexplained gap by what the need and the timer may be off', () => {
    const { property } = account({ controllers: byWeather });
    expect(property.unexplainedGap).toMatchObject({ litres: expect.closeTo(21_000 - NEEDED, 6), estimate });
    const byProgram = account().property;
    expect(property.unexplainedGap.sdLitres ?? 0).toBeGreaterThan(3 * (byProgram.unexplainedGap.sdLitres ?? 0));
    expect(property.unexplainedGap.sdLitres).toBeCloseTo(Math.hypot(property.programmed.sdLitres ?? 0, property.metered.sdLitres ?? 0), 6);
    expect(byProgram.unexplainedGap.estimate).toBeNull();
    expect(property.landscapeGap.estimate).toBeNull();
  });

  it('needs no flow, unless a program ran before', () => {
    const zones = [aZone({ flowLPerMin: null })];
    expect(account({ controllers: byWeather, zones }).property.programmed.litres).toBeCloseTo(NEEDED, 6);
    const changed = [aController([aFact([aProgram({ 1: 30 })]), aFact([], { state: 'weather', effectiveAt: '2026-06-11T00:00' })])];
    expect(account({ controllers: changed, zones }).property.programmed.reason?.code).toBe('flow-not-known');
  });

  it('counts from the day on which it is set so: 10 days of program and 20 of need', () => {
    const changed = [aController([aFact([aProgram({ 1: 30 })]), aFact([], { state: 'weather', effectiveAt: '2026-06-11T00:00' })])];
    const { property } = account({ controllers: changed });
    const twentyDays = (NEEDED * 20) / 30;
    expect(property.programmed.litres).toBeCloseTo(10 * DAY_OF_PROGRAM + twentyDays, 6);
    expect(property.programmed.estimatedShare).toBeCloseTo(twentyDays / (10 * DAY_OF_PROGRAM + twentyDays), 9);
    expect(property.settingsGap.overLitres).toBeCloseTo(10 * (DAY_OF_PROGRAM - NEEDED / 30), 6);
  });

  it('gives nothing on a day that a pause covers', () => {
    const paused = [{ ...(byWeather[0] as AccountController), pauses: [{ from: '2026-06-04T00:00', until: '2026-06-07T00:00' }] }];
    expect(account({ controllers: paused }).property.programmed.litres).toBeCloseTo((NEEDED * 27) / 30, 6);
  });

  it('days of unknown settings beside it are filled in as ever, up to a fifth', () => {
    const unknown = [aController([aFact([], { state: 'weather', effectiveAt: '2026-06-04T00:00' })])];
    const { property } = account({ controllers: unknown });
    expect(property.programmed.litres).toBeCloseTo(NEEDED, 6);
    expect(property.settingsGap.sdLitres).toBeCloseTo(Math.hypot(0.3 * NEEDED, (0.3 * NEEDED * 3) / 30), 6);
  });
});

describe('findings and an estimate', () => {
  const judge = (changes: Partial<AccountInput>, history: readonly EarlierMonth[] = []) =>
    judgeAccount({
      account: account({ controllers: byWeather, ...changes }),
      history,
      thresholds: { minConfidence: 0.8, minLitres: 1000, minMoney: 5 },
      pricePerLitre: new Map([['m1', 0.003]]),
    }).map(({ kind }) => kind);

  it.each([3000, 12_000, 15_000, 18_000, 60_000])('settings are neither too much nor too little by it, at %d L metered', (litres) => {
    const found = judge({ meters: metering(litres) });
    expect(found).not.toContain('over-programmed');
    expect(found).not.toContain('under-programmed');
    expect(found).not.toContain('overwatered');
  });

  it('unexplained use opens beyond its wide uncertainty only: 18,000 L may be the timer, 40,000 L is not', () => {
    expect(judge({ meters: metering(18_000), allowance: null })).toEqual([]);
    expect(judge({ meters: metering(40_000), allowance: null })).toEqual(['unexplained use']);
  });

  it('a habit of earlier months is no reason to test flows', () => {
    const history = [1, 2, 3].map((month) => ({ month: `2026-0${month}`, meterId: 'm1', meteredLitres: 27_000, programmedLitres: 10_000 }));
    expect(judge({ meters: metering(40_500), allowance: null }, history)).toEqual(['unexplained use']);
  });
});

describe('a rain sensor', () => {
  // 20 mm on 10 June: no starts on the 10th and the 11th.
  const days = weather('2026-03-03', '2026-06-30', (date) => ({ rainMm: date === '2026-06-10' ? 20 : 0 }));
  const timer = (rainSensorMm: number | null) => [
    aController([aFact([aProgram({ 1: 30 })])], { traits: { ...plainTraits, rainSensor: true, rainSensorMm } }),
  ];
  const programmed = (controllers: readonly AccountController[], ofDays = days) => account({ controllers, days: ofDays }).property;

  it('of known threshold holds back two days of 30, 30 % unsure', () => {
    const { programmed: volume, unexplainedGap } = programmed(timer(6));
    expect(volume).toMatchObject({ litres: expect.closeTo(28 * DAY_OF_PROGRAM, 6), estimatedShare: 0 });
    expect(volume.sdLitres).toBeCloseTo(Math.hypot(0.05 * 28 * DAY_OF_PROGRAM, 0.3 * 2 * DAY_OF_PROGRAM), 6);
    expect(unexplainedGap.inputs.map(({ input, subjectId }) => [input, subjectId])).toContainEqual(['rainSensor', 'c1']);
  });

  it('of unknown threshold may or may not have: 29 days, and one to either side', () => {
    const { programmed: volume } = programmed(timer(null));
    expect(volume.litres).toBeCloseTo(29 * DAY_OF_PROGRAM, 6);
    expect(volume.sdLitres).toBeCloseTo(Math.hypot(0.05 * 29 * DAY_OF_PROGRAM, DAY_OF_PROGRAM), 6);
  });

  it('of unknown threshold is off by the same rain in every zone of its controller', () => {
    const both = [aController([aFact([aProgram({ 1: 30, 2: 30 })])], { traits: { ...plainTraits, rainSensor: true, rainSensorMm: null } })];
    const { programmed: volume } = account({ controllers: both, days, zones: [aZone(), aZone({ id: 'z2', station: 2 })] }).property;
    const flow = 0.05 * 29 * DAY_OF_PROGRAM;
    expect(volume.sdLitres).toBeCloseTo(Math.hypot(flow, flow, 2 * DAY_OF_PROGRAM), 6);
  });

  it('runs through a day of unknown rain, 30 % unsure', () => {
    const hole = weather('2026-03-03', '2026-06-30', (date) => (date === '2026-06-10' ? { rainMm: null } : {}));
    const { programmed: volume, unexplainedGap } = programmed(timer(6), hole);
    expect(volume.litres).toBeCloseTo(30 * DAY_OF_PROGRAM, 6);
    expect(volume.sdLitres).toBeCloseTo(Math.hypot(0.05 * 30 * DAY_OF_PROGRAM, 0.3 * 2 * DAY_OF_PROGRAM), 6);
    // The sensor's threshold is on record: what would help is the rain of that day.
    expect(unexplainedGap.inputs.map(({ input, subjectId }) => [input, subjectId])).toContainEqual(['filledWeather', null]);
    expect(unexplainedGap.inputs.map(({ input }) => input)).not.toContain('rainSensor');
  });

  it('changes nothing in a dry month', () => {
    const dry = weather('2026-03-03', '2026-06-30');
    expect(programmed(timer(6), dry)).toEqual(account().property);
    expect(programmed(timer(null), dry)).toEqual(account().property);
  });
});
