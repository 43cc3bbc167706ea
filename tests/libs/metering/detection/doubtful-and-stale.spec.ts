import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { doubtfulReading, doubtfulSources } from '@rillbook/metering/detection/doubtful-reading.js';
import { judgeStale, type LastHeardOf } from '@rillbook/metering/detection/account/judge-stale.js';
import { judgeReading } from '@rillbook/metering/intervals/judge-reading.js';
import { describe, expect, it } from 'vitest';
import { aMeter, anInterval, aProperty } from '../a-property.js';

describe('doubtful reading', () => {
  const reading = (previousRegister: number, nextRegister: number) => {
    const expectation = { litresPerDay: 10_000, sdLitresPerDay: 1000 };
    const judged = judgeReading({ previousRegister, nextRegister, elapsedDays: 30, digits: 5, litresPerRegisterUnit: 1000, expectation });
    return doubtfulReading({ meterId: 'm1', date: '2026-06-30', previousDate: '2026-05-31', previousRegister, nextRegister, judged });
  };

  it('says what is probably meant', () => {
    expect(reading(45_000, 43_520)).toMatchObject({
      kind: 'doubtful reading',
      causeKey: 'doubtful reading meter:m1 2026-06-30',
      fromDate: '2026-05-31',
      untilDate: '2026-06-30',
      litres: null,
      says: { code: 'digits swapped', details: { likelyRegister: 45_320 } },
    });
    expect(reading(45_000, 44_000)).toMatchObject({ confidence: 1, says: { code: 'lower than last' } });
  });

  it('is sure where a register went back, and else as sure as three standard deviations make it', () => {
    const doubted = reading(45_000, 43_520);
    expect(doubted?.confidence).toBeCloseTo(0.99865, 5);
    expect(doubted).toMatchObject({
      causeFamily: 'doubtful reading meter:m1 2026-06-30',
      evidence: { meterId: 'm1', previousRegister: 45_000, nextRegister: 43_520, likelyRegister: 45_320, litres: null },
    });
  });

  it('is none for a good reading or a rollover', () => {
    expect(reading(45_000, 45_300)).toBeNull();
    expect(reading(99_900, 205)).toBeNull();
  });

  it('opens for sources that contradict each other', () => {
    const intervals = [anInterval('2026-06-01', '2026-07-01', 21_000), anInterval('2026-06-01', '2026-07-01', 42_000, { source: 'bills' })];
    expect(doubtfulSources(computeMonthAccount(aProperty({ meters: [aMeter(intervals)] })))).toMatchObject([
      {
        kind: 'doubtful reading',
        causeKey: 'doubtful reading meter:m1 2026-06-01 bills',
        causeFamily: 'doubtful reading meter:m1 2026-06-01 bills',
        meterId: 'm1',
        litres: 21_000,
        confidence: expect.closeTo(0.99865, 5),
        fromDate: '2026-06-01',
        untilDate: '2026-06-30',
        evidence: { litres: 42_000, betterLitres: 21_000 },
        says: { code: 'sources-contradict' },
      },
    ]);
    expect(doubtfulSources(computeMonthAccount(aProperty()))).toEqual([]);
  });
});

describe('stale', () => {
  const heard: LastHeardOf = {
    today: '2026-06-30',
    inUseSince: '2026-01-01',
    lastVisitOn: '2026-06-20',
    meters: [{ meterId: 'm1', lastMeteredOn: '2026-06-01' }],
    controllers: [{ controllerId: 'c1', lastSettingsOn: null }],
  };
  const never = { visitDays: null, meteredDays: null, settingsDays: null };

  it('names what has not been heard of, as one finding', () => {
    expect(judgeStale(heard, { visitDays: 45, meteredDays: 20, settingsDays: 90 })).toMatchObject({
      kind: 'stale',
      causeKey: 'stale',
      meterId: 'm1',
      controllerId: 'c1',
      says: { details: { meterIds: ['m1'], controllerIds: ['c1'], daysSinceVisit: null } },
    });
    expect(judgeStale(heard, { ...never, visitDays: 9 })?.says.details['daysSinceVisit']).toBe(10);
  });

  it('is none within the days allowed, on a new property, or where nothing is asked', () => {
    expect(judgeStale(heard, { visitDays: 10, meteredDays: 29, settingsDays: 180 })).toBeNull();
    expect(judgeStale({ ...heard, inUseSince: '2026-06-29' }, { ...never, settingsDays: 30 })).toBeNull();
    expect(judgeStale(heard, never)).toBeNull();
  });
});
