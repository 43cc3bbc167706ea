import { rainOfDay } from '@rillbook/agronomy/station-days/rain-of-day.js';
import { dateOfDay, dayNumber } from '@rillbook/agronomy/weather/day-number.js';
import { judgeWeatherDays } from '@rillbook/agronomy/weather/quality/judge-weather-days.js';
import { describe, expect, it } from 'vitest';
import { recorded, station } from './station-record.js';

const FIRST = dayNumber('2025-02-01');
const HOLE = FIRST + 50;

/** Judged days of rain alone, by day number; null is a day that nobody measured. */
const rainDays = (count: number, rainOf: (at: number) => number | null) =>
  new Map(
    judgeWeatherDays(
      Array.from({ length: count }, (_, at) => recorded(dateOfDay(FIRST + at), { rain: rainOf(at) })),
      station,
    ).map((day) => [dayNumber(day.date), day]),
  );

/** Every fifth day 10 mm; and half as much again, or none, at the other station in turn. */
const wetAt = (at: number) => at % 5 === 0;
const own = rainDays(101, (at) => (FIRST + at === HOLE ? null : wetAt(at) ? (at % 10 === 0 ? 15 : 6) : 0));
const there = (atHole: number, distanceKm = 30) => ({
  days: rainDays(101, (at) => (FIRST + at === HOLE ? atHole : wetAt(at) ? 10 : 0)),
  distanceKm,
});

describe('rain that a station did not measure', () => {
  it('is the neighbour’s, off as far as wet days were on the days both measured', () => {
    // 18 wet days in common within 45 days, in turn 5 mm more and 4 mm less than 10: by hand √((8·25 + 10·16) / 18) = 4.47 mm of 10.
    const { rainMm, rainFrom, rainSdMm } = rainOfDay(HOLE, own, there(20));
    expect([rainMm, rainFrom]).toEqual([20, 'neighbour']);
    expect(rainSdMm).toBeCloseTo(2 * Math.sqrt((8 * 25 + 10 * 16) / 18), 9);
  });

  it('on a dry day is off by what fell here on days that were dry there, and never less than the floor', () => {
    expect(rainOfDay(HOLE, own, there(0)).rainSdMm).toBe(0.2);
    const drizzle = rainDays(101, (at) => (FIRST + at === HOLE ? null : wetAt(at) ? 10 : at % 5 === 1 ? 4 : 0));
    // 72 days dry there within 45 days, 18 of them with 4 mm here.
    expect(rainOfDay(HOLE, drizzle, there(0)).rainSdMm).toBeCloseTo(Math.sqrt((18 * 16) / 72), 9);
  });

  it('is never surer than a quarter of it, however well the two agree', () => {
    const same = rainDays(101, (at) => (FIRST + at === HOLE ? null : wetAt(at) ? 10 : 0));
    expect(rainOfDay(HOLE, same, there(8)).rainSdMm).toBe(2);
  });

  it('counts from a near neighbour without common days, and from a farther one not', () => {
    const alone = rainDays(10, () => null);
    const near = { days: there(12).days, distanceKm: 15 };
    expect(rainOfDay(HOLE, alone, near)).toEqual({ rainMm: 12, rainFrom: 'neighbour', rainSdMm: 6 });
    expect(rainOfDay(HOLE, alone, { days: there(0).days, distanceKm: 15 })).toEqual({ rainMm: 0, rainFrom: 'neighbour', rainSdMm: 1 });
    expect(rainOfDay(HOLE, alone, { ...near, distanceKm: 15.1 })).toEqual({ rainMm: null, rainFrom: null, rainSdMm: 5 });
  });

  it('needs twenty common days from a farther one', () => {
    const common = (days: number) => rainDays(50 + days, (at) => (at < 50 ? null : FIRST + at === HOLE ? null : 0));
    expect(rainOfDay(HOLE, common(21), there(3)).rainFrom).toBe('neighbour');
    expect(rainOfDay(HOLE, common(20), there(3)).rainFrom).toBeNull();
  });

  it('takes a farther neighbour’s shower for all or nothing where fewer than five wet days are common', () => {
    const few = (wet: number) => ({
      days: rainDays(101, (at) => (FIRST + at === HOLE ? 9 : at >= 51 && at < 51 + wet ? 7 + at / 100 : 0)),
      distanceKm: 30,
    });
    const dry = rainDays(101, (at) => (FIRST + at === HOLE ? null : at >= 51 && at < 56 ? 7 + at / 100 : 0));
    expect(rainOfDay(HOLE, dry, few(4)).rainSdMm).toBe(9);
    expect(rainOfDay(HOLE, dry, few(5)).rainSdMm).toBe(9 / 4);
  });

  it('may have been what fell on the days around where no neighbour tells it', () => {
    // Of the 90 days around, ten had 15 mm and ten 6 mm less those outside the 45: 8 and 10.
    const { rainMm, rainSdMm } = rainOfDay(HOLE, own, null);
    expect(rainMm).toBeNull();
    expect(rainSdMm).toBeCloseTo(Math.sqrt((8 * 225 + 10 * 36) / 90), 9);
  });

  it('is doubted by half where the same amount comes on four days in a row', () => {
    const stuck = rainDays(20, (at) => (at > 4 && at < 9 ? 8 : 0));
    expect(rainOfDay(FIRST + 6, stuck, null)).toEqual({ rainMm: 8, rainFrom: 'station', rainSdMm: 4 });
    expect(rainOfDay(FIRST + 9, stuck, null)).toEqual({ rainMm: 0, rainFrom: 'station', rainSdMm: 0 });
    const told = rainOfDay(
      FIRST + 6,
      rainDays(20, (at) => (at === 6 ? null : 0)),
      { days: stuck, distanceKm: 5 },
    );
    expect(told.rainSdMm).toBeCloseTo(Math.hypot(4, 4), 12);
  });
});
