import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { historyOf, lacksWeather, stationDays } from '@rillbook/agronomy/station-days/station-days.js';
import { dateOfDay, dayNumber } from '@rillbook/agronomy/weather/day-number.js';
import type { RecordedDay } from '@rillbook/agronomy/weather/recorded-day.js';
import { judgeWeatherDays } from '@rillbook/agronomy/weather/quality/judge-weather-days.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { station, summer, swing } from './station-record.js';

const FIRST = '2025-06-01';
const judge = (days: readonly RecordedDay[]) => judgeWeatherDays(days, station);
const next = (days: readonly RecordedDay[], distanceKm = 10) => ({ days: judge(days), distanceKm });
const on = (days: ReturnType<typeof stationDays>, date: string) => days.find((day) => day.date === date)!;

/** The neighbour: two degrees cooler, a quarter more wind, else like the station but for a little of its own. */
const cooler = summer(FIRST, 60, (at) => ({
  tmax: 30 + 3 * swing(at) + 0.4 * swing(at + 9),
  tmin: 13 + 2 * swing(at + 0.5) + 0.4 * swing(at + 8),
  wind: 1.25 * (2.1 + 0.6 * swing(at + 4)),
  rain: at === 20 ? 6 : 0,
}));
const whole = summer(FIRST, 60);
const HOLE = ['2025-06-21', '2025-06-22'];
const holed = whole.filter(({ date }) => !HOLE.includes(date));

describe('days of a station', () => {
  it('are its own where nothing is missing, and a neighbour changes nothing', () => {
    const days = stationDays(judge(whole), station, next(cooler));
    expect(days.map(({ date }) => date)).toEqual(whole.map(({ date }) => date));
    expect(days).toEqual(stationDays(judge(whole), station, null));
    expect(days.every(({ eto, rainFrom }) => eto.filling === null && rainFrom === 'station')).toBe(true);
    expect(lacksWeather(judge(whole))).toBe(false);
  });

  it('leave a refused value to the procedure for missing data', () => {
    const stuck = summer(FIRST, 60, (at) => (at > 9 && at < 20 ? { rhmax: 71, rhmin: 45, dewPoint: null } : {}));
    const day = on(stationDays(judge(stuck), station, null), '2025-06-15');
    expect(day.marks.map(({ value, reason }) => `${value} ${reason}`)).toEqual(['rhmax stuck', 'rhmin stuck']);
    expect(day.eto).toMatchObject({ method: 'penman-monteith', assumed: ['humidity'], filling: null });
    expect(day.eto.etoMm !== null && day.eto.relativeSd).toBeCloseTo(Math.hypot(0.08, 0.06), 12);
  });

  it("take the source's own value where a check doubts what it would be computed from", () => {
    const calm = summer(FIRST, 60, (at) => ({ givenEto: 6 + 0.5 * swing(at), ...(at > 9 && at < 14 ? { wind: 1.9 } : {}) }));
    const days = stationDays(judge(calm), station, null);
    const doubted = on(days, '2025-06-13');
    expect(doubted.marks.map(({ value, effect }) => `${value} ${effect}`)).toEqual(['wind doubted']);
    expect(doubted.eto).toMatchObject({ etoMm: calm[12]!.measured.givenEto, method: 'given', relativeSd: 0.1 });
    expect(on(days, '2025-06-20').eto).toMatchObject({ method: 'penman-monteith', relativeSd: 0.08 });
  });
});

describe('a hole', () => {
  const truth = stationDays(judge(whole), station, null);
  const filled = stationDays(judge(holed), station, next(cooler));

  it('is filled from the neighbour, near what was really there, and less sure', () => {
    expect(lacksWeather(judge(holed))).toBe(true);
    for (const date of HOLE) {
      const [day, real] = [on(filled, date), on(truth, date)];
      if (day.eto.etoMm === null || real.eto.etoMm === null) throw new Error('no value');
      expect(day.eto.filling?.from).toBe('neighbour');
      expect(Math.abs(day.eto.etoMm - real.eto.etoMm)).toBeLessThan(2 * day.eto.relativeSd * day.eto.etoMm);
      expect(day.eto.relativeSd).toBeGreaterThan(real.eto.relativeSd);
    }
    const { filling } = on(filled, HOLE[0]!).eto;
    if (filling?.from !== 'neighbour') throw new Error('not from the neighbour');
    const there = cooler[20]!.measured;
    expect(filling.values.tmax?.amount).toBeCloseTo(there.tmax! + 2, 0);
    expect(filling.values.wind?.amount).toBeCloseTo(there.wind! / 1.25, 1);
    expect(filling.values.tmax?.commonDays).toBeGreaterThan(50);
    // The days around keep what was measured.
    expect(on(filled, '2025-06-20')).toEqual(on(truth, '2025-06-20'));
  });

  it('is less sure by what each carried value may be off: the change of its evapotranspiration when that value alone is moved', () => {
    const blind = whole.map((day) => (HOLE.includes(day.date) ? { ...day, measured: { ...day.measured, tmax: null, tmin: null } } : day));
    const { eto } = on(stationDays(judge(blind), station, next(cooler)), HOLE[0]!);
    if (eto.filling?.from !== 'neighbour' || eto.etoMm === null) throw new Error('not from the neighbour');
    const { tmax, tmin } = eto.filling.values as Record<'tmax' | 'tmin', { amount: number; sd: number }>;
    const at = (high: number, low: number): number =>
      referenceEvapotranspiration({ ...blind[20]!.measured, tmax: high as never, tmin: low as never }, station).etoMm!;
    const whenAsTold = at(tmax.amount, tmin.amount);
    expect(eto.etoMm).toBeCloseTo(whenAsTold, 12);
    const changes = [at(tmax.amount + tmax.sd, tmin.amount), at(tmax.amount, tmin.amount - tmin.sd)].map((moved) => moved / whenAsTold - 1);
    expect(eto.relativeSd).toBeCloseTo(Math.hypot(0.08, ...changes), 12);
  });

  it('is never as sure as a measured day, however well the neighbour agrees', () => {
    const day = on(stationDays(judge(holed), station, next(whole)), HOLE[0]!);
    if (day.eto.filling?.from !== 'neighbour') throw new Error('not from the neighbour');
    const { tmax, rhmin, wind, solar } = day.eto.filling.values;
    // The two agree to the last digit: what is left is the floor of each value.
    expect([tmax?.sd, rhmin?.sd]).toEqual([0.5, 3]);
    expect([wind!.sd / wind!.amount, solar!.sd / solar!.amount]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.05, 12)]);
    const real = on(truth, HOLE[0]!).eto;
    if (real.etoMm === null || day.eto.etoMm === null) throw new Error('no value');
    expect(day.eto.etoMm).toBeCloseTo(real.etoMm, 9);
    expect(day.eto.relativeSd).toBeGreaterThan(1.02 * real.relativeSd);
  });

  it('takes the rain of the neighbour, less sure than what was measured here, and with it counts in an account', () => {
    // One shower in 60 days, which the station had not: too few wet days to tell how far a shower is off.
    expect(on(filled, HOLE[0]!)).toMatchObject({ rainMm: 6, rainFrom: 'neighbour', rainSdMm: 3 });
    expect(on(stationDays(judge(holed), station, next(cooler, 40)), HOLE[0]!)).toMatchObject({
      rainMm: 6,
      rainFrom: 'neighbour',
      rainSdMm: 6,
    });
    expect(on(filled, '2025-06-20')).toMatchObject({ rainMm: 0, rainFrom: 'station', rainSdMm: 0 });
  });

  it('is filled from normals where no neighbour tells, a few days in a month, never with rain', () => {
    const alone = stationDays(judge(holed), station, null);
    const day = on(alone, HOLE[0]!);
    // Of 58 dry days around: nothing is likely to have fallen.
    expect(day).toMatchObject({ rainMm: null, rainFrom: null, rainSdMm: 0, eto: { method: null, filling: { from: 'normals', days: 28 } } });
    const june = truth.filter(({ date }) => date.startsWith('2025-06') && !HOLE.includes(date));
    const mean = june.reduce((sum, { eto }) => sum + eto.etoMm!, 0) / june.length;
    expect(day.eto.etoMm).toBeCloseTo(mean, 10);
    // Six of thirty days are a fifth; seven are too many.
    const lacking = (count: number) => stationDays(judge(whole.filter((_, at) => at < 10 || at >= 10 + count)), station, null);
    expect(lacking(6).filter(({ eto }) => eto.etoMm === null)).toEqual([]);
    expect(lacking(7).filter(({ eto }) => eto.etoMm === null)).toHaveLength(7);
    expect(on(lacking(7), '2025-06-11').eto).toEqual({ etoMm: null, filling: null, reason: 'not-recorded' });
  });

  it('of the thermometer alone keeps the rest of the day as it was measured', () => {
    const blind = whole.map((day) => (HOLE.includes(day.date) ? { ...day, measured: { ...day.measured, tmax: null, tmin: null } } : day));
    const { filling } = on(stationDays(judge(blind), station, next(cooler)), HOLE[0]!).eto;
    expect(filling?.from === 'neighbour' && Object.keys(filling.values)).toEqual(['tmax', 'tmin']);
  });

  it('does not take what the neighbour itself doubts, and is not history', () => {
    const wrong = cooler.map((day) => (HOLE.includes(day.date) ? { ...day, measured: { ...day.measured, tmax: 75 as never } } : day));
    expect(on(stationDays(judge(holed), station, next(wrong)), HOLE[0]!).eto.filling?.from).toBe('normals');
    const history = historyOf(filled, judge(holed));
    expect(history).toHaveLength(58);
    const [{ tmax, tmin }] = [holed[30]!.measured];
    expect(history.find(({ date }) => date === holed[30]!.date)).toMatchObject({ tmax, tmin });
    const blind = holed.map((day, at) =>
      at === 30 ? { ...day, measured: { ...day.measured, tmax: null, tmin: null, givenEto: 5 as never } } : day,
    );
    const told = historyOf(stationDays(judge(blind), station, null), judge(blind));
    expect(told.find(({ date }) => date === holed[30]!.date)).toMatchObject({ etoMm: 5, tmax: null, tmin: null });
  });

  it('at the end is filled as far as the neighbour goes, and none at the beginning', () => {
    const late = whole.slice(10, 50);
    const days = stationDays(judge(late), station, next(cooler));
    expect([days[0]?.date, days.at(-1)?.date]).toEqual(['2025-06-11', '2025-07-30']);
    expect(days.at(-1)?.eto.filling?.from).toBe('neighbour');
  });
});

it('filling never makes a day surer than its own method, and never leaves a measured day', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 59 }), { minLength: 1, maxLength: 25 }), fc.boolean(), (gone, isNear) => {
      const own = whole.filter((_, at) => !gone.includes(at));
      const days = stationDays(judge(own), station, isNear ? next(cooler) : null);
      const measured = new Map(stationDays(judge(whole), station, null).map((day) => [day.date, day.eto]));
      for (const { date, eto } of days) {
        const real = measured.get(date)!;
        if (eto.etoMm === null || real.etoMm === null) continue;
        if (gone.includes(dayNumber(date) - dayNumber(FIRST))) expect(eto.relativeSd).toBeGreaterThanOrEqual(real.relativeSd);
        else expect(eto).toEqual(real);
      }
      expect(dateOfDay(dayNumber(FIRST))).toBe(FIRST);
    }),
    { numRuns: 30 },
  );
});
