import { otherMeterOf } from '@rillbook/metering/detection/readings/other-meter.js';
import type { ReadingSeries, SeriesReading } from '@rillbook/metering/detection/readings/reading-series.js';
import { type PassedVolume, useSoFar } from '@rillbook/metering/detection/readings/use-so-far.js';
import { describe, expect, it } from 'vitest';

const series = (more: Partial<ReadingSeries> = {}): ReadingSeries => ({
  meterId: 'm1',
  digits: 6,
  litresPerRegisterUnit: 1000,
  readings: [],
  others: [],
  demandLitres: null,
  ...more,
});

/** Thirty days each, one after another from day 0, at these litres a day. */
const months = (...perDay: readonly number[]): PassedVolume[] =>
  perDay.map((each, at) => ({ fromLocalDay: 30 * at, toLocalDay: 30 * at + 30, litres: 30 * each }));
const YEAR = [1000, 1000, 1000, 3000, 1000, 1000, 1000, 1000, 1000, 900, 1000, 1100];
const perDay = (litres: number) => (from: number, until: number) => litres * (until - from);

describe('what a meter may pass, by hand', () => {
  it('after a year is its most, give or take a half, and usually what the last three intervals passed', () => {
    const { expectation, usual, followsDemand } = useSoFar(series(), months(...YEAR), [360, 390]);
    expect(expectation).toEqual({ litresPerDay: 3000, sdLitresPerDay: 1500 });
    // A third of the usual, and a twentieth of the most.
    expect(usual).toEqual({ litresPerDay: expect.closeTo(1000, 9), sdLitresPerDay: expect.closeTo(350 + 150, 9) });
    expect(followsDemand).toBe(false);
  });

  it('counts no days but the last 400', () => {
    // The month of 3,000 L/d ended on day 120, 399 days and then 400 before; nobody knows what the timer does.
    const unknown = series({ programmedLitres: () => null });
    expect(useSoFar(unknown, months(...YEAR), [519, 549]).expectation?.litresPerDay).toBe(3000);
    expect(useSoFar(unknown, months(...YEAR), [520, 550]).expectation?.litresPerDay).toBeCloseTo(1100, 9);
    // Of the last 400 days it tells 299 or fewer: not nearly a year.
    expect(useSoFar(series(), months(...YEAR), [520, 550]).expectation).toBeNull();
  });

  it('is not known from some months alone, but where a timer goes on that nobody knows', () => {
    const some = months(1000, 2000);
    expect(useSoFar(series(), some, [60, 90])).toEqual({ expectation: null, usual: null, followsDemand: false });
    expect(useSoFar(series({ programmedLitres: perDay(10) }), some, [60, 90]).expectation).toBeNull();
    expect(useSoFar(series({ programmedLitres: () => null }), some, [60, 90]).expectation?.litresPerDay).toBe(2000);
  });

  it('is what is in demand, give or take twice that, and usually the share of it that the meter has passed', () => {
    expect(useSoFar(series({ demandLitres: perDay(2000) }), months(1000, 1000, 1000), [90, 120])).toEqual({
      expectation: { litresPerDay: 2000, sdLitresPerDay: 4000 },
      usual: { litresPerDay: expect.closeTo(1000, 9), sdLitresPerDay: expect.closeTo(350 + 50, 9) },
      followsDemand: true,
    });
    // A meter that passes twice the demand goes on to do so.
    expect(useSoFar(series({ demandLitres: perDay(500) }), months(1000, 1000, 1000), [90, 120]).expectation?.litresPerDay).toBeCloseTo(
      1000,
      9,
    );
  });

  it('follows no demand that is not known of every interval, or is none', () => {
    const unknownOnce = (from: number, until: number) => (from === 30 ? null : 2000 * (until - from));
    expect(useSoFar(series({ demandLitres: unknownOnce }), months(1000, 1000, 1000), [90, 120]).followsDemand).toBe(false);
    expect(useSoFar(series({ demandLitres: perDay(0) }), months(1000, 1000, 1000), [90, 120]).followsDemand).toBe(false);
    expect(useSoFar(series({ demandLitres: perDay(2000) }), months(1000, 1000), [60, 90]).followsDemand).toBe(false);
  });
});

describe('another meter that was read', () => {
  const other = (...readings: readonly SeriesReading[]) => ({ meterId: 'm2', readings });
  const at = (localDay: number, register: number) => ({ localDay, register });
  // Ten a day: 1,300 on day 30.
  const course = other(at(0, 1000), at(30, 1300));
  const found = (reading: SeriesReading, ...others: readonly ReturnType<typeof other>[]) => otherMeterOf(reading, series({ others }));

  it.each([
    [60, 1300, 'm2'],
    [60, 1299, null],
    // Two of its steps beyond the last: 300 a month.
    [60, 1900, 'm2'],
    [60, 1901, null],
    // At the time of its own last reading: between that and the one before.
    [31, 1000, 'm2'],
    [31, 999, null],
    [120, 1300 + 2 * 900, 'm2'],
    [120, 1301 + 2 * 900, null],
  ])('on day %i with %i: %s', (localDay, register, whose) => {
    expect(found(at(localDay, register), course)).toBe(whose);
  });

  it('is not told where two could be meant, nor of one that was read once, went back, or was read later', () => {
    expect(found(at(60, 1600), course, { ...course, meterId: 'm3' })).toBeNull();
    expect(found(at(60, 1300), other(at(30, 1300)))).toBeNull();
    expect(found(at(60, 1100), other(at(0, 1300), at(30, 1000)))).toBeNull();
    expect(found(at(28, 1300), course)).toBeNull();
    expect(found(at(29, 1300), course)).toBe('m2');
  });
});
