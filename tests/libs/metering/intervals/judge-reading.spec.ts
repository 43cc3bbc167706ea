import { judgeReading, type ReadingPair } from '@rillbook/metering/intervals/judge-reading.js';
import { describe, expect, it } from 'vitest';

// A meter in cubic metres that passes 10 m3 a day, give or take one.
const pair = (previousRegister: number, nextRegister: number, changes: Partial<ReadingPair> = {}): ReadingPair => ({
  previousRegister,
  nextRegister,
  elapsedDays: 30,
  digits: 5,
  litresPerRegisterUnit: 1000,
  expectation: { litresPerDay: 10_000, sdLitresPerDay: 1000 },
  ...changes,
});

describe('a reading beside the one before it', () => {
  it('is ok near the expectation', () => {
    expect(judgeReading(pair(45_000, 45_310))).toEqual({ judgement: 'ok', litres: 310_000, likelyRegister: null, factor: null });
  });

  it('rolled over where that gives a plausible volume', () => {
    expect(judgeReading(pair(99_900, 205))).toMatchObject({ judgement: 'rollover', litres: 305_000 });
    expect(judgeReading(pair(99_900, 205, { expectation: null }))).toMatchObject({ judgement: 'rollover', litres: 305_000 });
  });

  it('is lower than last where it is not', () => {
    expect(judgeReading(pair(45_000, 44_000))).toEqual({ judgement: 'lower than last', litres: null, likelyRegister: null, factor: null });
    expect(judgeReading(pair(45_000, 44_000, { expectation: null, digits: null }))).toMatchObject({ judgement: 'lower than last' });
  });

  it('has digits swapped where neighbours changed places, lower or higher', () => {
    expect(judgeReading(pair(45_000, 43_520))).toMatchObject({ judgement: 'digits swapped', likelyRegister: 45_320, litres: null });
    expect(judgeReading(pair(45_000, 54_300))).toMatchObject({ judgement: 'digits swapped', likelyRegister: 45_300, litres: 9_300_000 });
  });

  it.each([10, 7.48052, 748.052])('has its unit mixed up by %d', (factor) => {
    const digits = 9;
    expect(judgeReading(pair(45_000, Math.round(45_300 * factor), { digits }))).toMatchObject({ judgement: 'unit mixed up', factor });
    expect(judgeReading(pair(45_000, 45_000 + 300 * factor, { digits }))).toMatchObject({ judgement: 'unit mixed up', factor });
    expect(judgeReading(pair(45_000, 45_000 + 300 / factor, { digits }))).toMatchObject({ judgement: 'unit mixed up', factor });
  });

  it('has one digit mistyped where neither a swap nor a unit fits', () => {
    expect(judgeReading(pair(45_000, 75_310))).toMatchObject({ judgement: 'digit mistyped', likelyRegister: 45_310 });
    expect(judgeReading(pair(45_000, 44_310))).toMatchObject({ judgement: 'digit mistyped', likelyRegister: 45_310, litres: null });
  });

  it('has lost its decimal point', () => {
    const digits = 9;
    expect(judgeReading(pair(450.25, 45_313, { digits, litresPerRegisterUnit: 100_000 }))).toMatchObject({
      judgement: 'unit mixed up',
      factor: 100,
      likelyRegister: 453.13,
    });
  });

  it('is mended by what is usual at that time of the year, where that is known', () => {
    const expectation = { litresPerDay: 30_000, sdLitresPerDay: 15_000 };
    const usual = { litresPerDay: 10_000, sdLitresPerDay: 3000 };
    expect(judgeReading(pair(45_000, 75_310, { expectation, usual }))).toMatchObject({ likelyRegister: 45_310 });
  });

  it('rolled over where nobody has said how many digits there are, from the last tenth of the number to the first', () => {
    expect(judgeReading(pair(99_900, 205, { digits: null }))).toMatchObject({ judgement: 'rollover', litres: 305_000 });
    expect(judgeReading(pair(99_900, 205, { digits: null, expectation: null }))).toMatchObject({ judgement: 'rollover' });
    expect(judgeReading(pair(99_900, 9205, { digits: null }))).not.toMatchObject({ judgement: 'rollover' });
    expect(judgeReading(pair(80_000, 205, { digits: null, expectation: null }))).toMatchObject({ judgement: 'lower than last' });
  });

  it('is implausibly high where nothing mends it', () => {
    expect(judgeReading(pair(45_000, 46_900))).toMatchObject({ judgement: 'implausibly high', litres: 1_900_000 });
  });

  it('is stuck when a meter that should move stands for more than a week', () => {
    expect(judgeReading(pair(45_000, 45_000))).toMatchObject({ judgement: 'stuck', litres: 0 });
    expect(judgeReading(pair(45_000, 45_000, { elapsedDays: 3 }))).toMatchObject({ judgement: 'ok' });
    expect(judgeReading(pair(45_000, 45_000, { expectation: { litresPerDay: 0, sdLitresPerDay: 500 } }))).toMatchObject({
      judgement: 'ok',
    });
  });

  it('is believed where nothing is expected', () => {
    expect(judgeReading(pair(45_000, 99_000, { expectation: null }))).toMatchObject({ judgement: 'ok', litres: 54_000_000 });
  });

  it('is refused by code where it cannot be', () => {
    expect(() => judgeReading(pair(45_000, 145_000))).toThrow(expect.objectContaining({ code: 'READING_OUT_OF_DOMAIN' }));
    expect(() => judgeReading(pair(45_000, 45_100, { elapsedDays: 0 }))).toThrow(
      expect.objectContaining({ code: 'READING_OUT_OF_DOMAIN' }),
    );
  });
});
