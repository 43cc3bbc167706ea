import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import type { RecordedDay } from '@rillbook/agronomy/weather/recorded-day.js';
import { isSound, type JudgedDay, judgeWeatherDays } from '@rillbook/agronomy/weather/quality/judge-weather-days.js';
import { etoOfJudgedDay } from '@rillbook/agronomy/station-days/eto-of-judged-day.js';
import { judgeStationDays } from '@rillbook/agronomy/station-days/judge-station-days.js';
import { doubtedSd } from '@rillbook/agronomy/weather/quality/doubted-sd.js';
import { weatherMark } from '@rillbook/agronomy/weather/quality/weather-mark.js';
import { degrees } from '@rillbook/units/angle.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recorded, station, summer, swing } from './station-record.js';

const FIRST = '2025-06-01';
const told = (judged: readonly JudgedDay[]): string[] =>
  judged.flatMap(({ date, marks }) => marks.map((mark) => `${date} ${mark.value} ${mark.reason} ${mark.effect}`));
const judge = (days: readonly RecordedDay[]): string[] => told(judgeWeatherDays(days, station));
const changed = (at: number, values: Parameters<typeof recorded>[1], count = 40): RecordedDay[] =>
  summer(FIRST, count, (place) => (place === at ? values : {}));

describe('a day that passes every check', () => {
  it('is unmarked, and used whole', () => {
    const days = summer(FIRST, 90);
    const judged = judgeWeatherDays(days, station);
    expect(told(judged)).toEqual([]);
    expect(judged.map(({ usable }) => usable)).toEqual(days.map(({ measured }) => measured));
  });

  it('knows nothing of what was not measured', () => {
    expect(judge(summer(FIRST, 40, () => ({ rhmax: null, rhmin: null, dewPoint: null, wind: null, solar: null, rain: null })))).toEqual([]);
    expect(judgeWeatherDays([], station)).toEqual([]);
    expect(() => judgeWeatherDays([recorded('2025-06-01', {}), { ...recorded('2025-06-01', {}), date: '2025-06-31' }], station)).toThrow(
      DomainError,
    );
  });
});

describe('a sound value', () => {
  it('was measured, and its own mark neither doubts nor refuses it', () => {
    // 101 % is a sensor a little out of calibration, which is kept; 92 °C is no day.
    const [damp] = judgeWeatherDays([recorded(FIRST, { tmax: 30, tmin: 15, rhmax: 101 })], station);
    expect(told([damp!])).toEqual([`${FIRST} rhmax above-saturation kept`]);
    expect([isSound(damp!, 'rhmax'), isSound(damp!, 'tmax')]).toEqual([true, true]);
    const [hot] = judgeWeatherDays([recorded(FIRST, { tmax: 92, tmin: 12, wind: null })], station);
    expect([isSound(hot!, 'tmax'), isSound(hot!, 'tmin'), isSound(hot!, 'wind')]).toEqual([false, true, false]);
    const doubted: JudgedDay = { ...damp!, marks: [weatherMark('tmax', 'jump')] };
    expect([isSound(doubted, 'tmax'), isSound(doubted, 'tmin')]).toEqual([false, true]);
  });
});

describe('range', () => {
  it('refuses what nature does not make, on its day alone', () => {
    expect(judge(changed(5, { tmax: 92 }))).toEqual(['2025-06-06 tmax impossible refused']);
    expect(judge(changed(5, { tmax: 10, tmin: 12, dewPoint: 9 }))).toEqual([
      '2025-06-06 tmin impossible refused',
      '2025-06-06 tmax impossible refused',
    ]);
    const [day] = judgeWeatherDays([recorded(FIRST, { tmax: 92, tmin: 12 })], station);
    expect(day?.usable).toMatchObject({ tmax: null, tmin: 12 });
    expect(day?.measured.tmax).toBe(92);
  });

  // ASCE-EWRI (2005), Appendix D, from memory: humidity a little above 100 % is a matter of calibration, not of another air.
  it('keeps a humidity a little above saturation, and refuses one far above', () => {
    expect(judge(changed(5, { rhmax: 102 }))).toEqual(['2025-06-06 rhmax above-saturation kept']);
    expect(judge(changed(5, { rhmax: 106 }))).toEqual(['2025-06-06 rhmax impossible refused']);
  });

  it('refuses a stated reference ET that the other values of the day contradict, and computes the day', () => {
    const stated = (givenEto: (at: number) => number) => summer('2025-06-01', 20, (at) => ({ givenEto: givenEto(at), wind: null }));
    // What the station's own values give is some 6.5 mm: near it the stated value is believed, as wind would have to be assumed.
    const near = judgeStationDays(
      stated(() => 6),
      station,
    );
    expect(near.flatMap(({ marks }) => marks)).toEqual([]);
    // Inches where millimetres are meant, a logger that reports nothing, a sum of a week.
    const days = judgeStationDays(
      stated((at) => (at === 3 ? 6 / 25.4 : at === 4 ? 0 : at === 5 ? 42 : 6)),
      station,
    );
    expect(told(days)).toEqual([
      '2025-06-04 givenEto far-from-computed refused',
      '2025-06-05 givenEto far-from-computed refused',
      '2025-06-06 givenEto impossible refused',
    ]);
    expect(days[5]!.usable.givenEto).toBeNull();
    const eto = days.map((day) => etoOfJudgedDay(day, station));
    expect(eto.map((one) => one.etoMm !== null && one.method).slice(2, 7)).toEqual([
      'given',
      'penman-monteith',
      'penman-monteith',
      'penman-monteith',
      'given',
    ]);
  });

  it('doubts what is far from the same month of the station, once it knows the month', () => {
    const years = ['2023', '2024', '2025'].flatMap((year) => summer(`${year}-06-01`, 30));
    const hot = recorded('2025-07-01', {});
    const odd = years.map((day) => (day.date === '2025-06-01' ? recorded(day.date, { tmax: 47, tmin: 15 }) : day));
    expect(judge([...odd, hot])).toEqual(['2025-06-01 tmax unusual-for-station doubted']);
    expect(judge(odd.slice(60))).toEqual([]);
  });
});

describe('step', () => {
  it('refuses a day that is far from both its neighbours, and not the day after', () => {
    expect(judge(changed(10, { tmax: 12.5, tmin: 12, dewPoint: 11 }))).toEqual(['2025-06-11 tmax spike refused']);
  });

  it('doubts a change that stays', () => {
    const fell = summer(FIRST, 20, (at) => (at < 10 ? {} : { tmax: 9 + swing(at), tmin: 4 + swing(at), dewPoint: 1 + swing(at) }));
    expect(judge(fell)).toEqual(['2025-06-11 tmax jump doubted']);
  });

  it('says nothing across a hole', () => {
    const fell = summer(FIRST, 20, (at) => (at < 10 ? {} : { tmax: 9 + swing(at), tmin: 4 + swing(at), dewPoint: 1 + swing(at) }));
    expect(judge(fell.filter((_, at) => at !== 9))).toEqual([]);
  });

  it('doubts days far from those around, and not the good day after them', () => {
    const hot = (places: readonly number[]) => summer(FIRST, 20, (at) => (places.includes(at) ? { tmin: 39, dewPoint: 13, tmax: 57 } : {}));
    const marked = (days: readonly RecordedDay[]) => judge(days).filter((line) => line.includes('tmax'));
    expect(marked(hot([10, 11]))).toEqual(['2025-06-11 tmax jump doubted', '2025-06-12 tmax jump doubted']);
    expect(marked(hot([10, 11, 12]))).toHaveLength(3);
    expect(marked(hot([10]).filter((_, at) => at !== 9))).toEqual(['2025-06-11 tmax jump doubted']);
    expect(marked(hot([10]).filter((_, at) => at < 5 || at > 9))).toEqual(['2025-06-11 tmax jump doubted']);
    expect(marked(hot([0]))).toEqual(['2025-06-01 tmax jump doubted']);
  });
});

describe('persistence', () => {
  it('doubts four equal days and refuses six, each day of the run', () => {
    const same = (count: number) => judge(summer(FIRST, 30, (at) => (at >= 10 && at < 10 + count ? { rhmax: 71, rhmin: 40 } : {})));
    expect(same(3)).toEqual([]);
    expect(same(4)).toHaveLength(8);
    expect(same(5).every((line) => line.endsWith('same-for-days doubted'))).toBe(true);
    expect(same(6)).toHaveLength(12);
    expect(same(6).every((line) => line.endsWith('stuck refused'))).toBe(true);
  });

  it('marks a constant series, whatever is measured and however long', () => {
    const sensors = fc.constantFrom('tmax', 'tmin', 'rhmax', 'rhmin', 'dewPoint', 'wind', 'solar');
    const usual = { tmax: 31, tmin: 15, rhmax: 88, rhmin: 33, dewPoint: 13, wind: 2, solar: 26 };
    fc.assert(
      fc.property(sensors, fc.integer({ min: 6, max: 60 }), (value, count) => {
        const judged = judgeWeatherDays(
          summer(FIRST, count, () => ({ [value]: usual[value] })),
          station,
        );
        for (const { marks, usable } of judged) {
          expect(marks).toContainEqual({ value, check: 'persistence', reason: 'stuck', effect: 'refused' });
          expect(usable[value]).toBeNull();
        }
      }),
    );
  });

  it('leaves dry days, saturated nights, heights and what a source states itself alone', () => {
    expect(judge(summer(FIRST, 30, () => ({ rhmax: 100, rain: 0, givenEto: 5, windHeight: 10 })))).toEqual([]);
  });

  it('doubts equal rain and uses it all the same', () => {
    const wet = judgeWeatherDays(
      summer(FIRST, 12, (at) => ({ rain: at < 7 ? 5 : 0 })),
      station,
    );
    expect(told(wet)).toEqual(Array.from({ length: 7 }, (_, at) => `2025-06-0${at + 1} rain same-for-days doubted`));
    expect(wet[0]?.usable.rain).toBe(5);
  });

  it('begins anew after a day that is missing', () => {
    const days = summer(FIRST, 12, () => ({ wind: 1.5 })).filter((_, at) => at % 4 !== 3);
    expect(judge(days)).toEqual([]);
  });
});

describe('solar radiation against the clear sky', () => {
  // FAO-56, Example 18: 6 July at 50.8° north, Ra 41.09 and Rso 30.90 MJ/m²/d at 100 m.
  const uccle = { latitude: degrees(50.8), elevation: station.elevation };
  const on = (solar: number): string[] => told(judgeWeatherDays([recorded('2025-07-06', { solar })], uccle));

  it('doubts more than a clear sky lets through, and refuses more than there is', () => {
    expect(extraterrestrialRadiation(uccle.latitude, 187)).toBeCloseTo(41.09, 1);
    expect(on(30.9)).toEqual([]);
    expect(on(30.9 * 1.09)).toEqual([]);
    expect(on(30.9 * 1.11)).toEqual(['2025-07-06 solar above-clear-sky doubted']);
    expect(on(41.5)).toEqual(['2025-07-06 solar above-atmosphere refused']);
  });

  it('refuses darkness by day, and doubts a month without a clear day', () => {
    expect(on(1)).toEqual(['2025-07-06 solar below-overcast refused']);
    const dim = judge(summer(FIRST, 40, (at) => ({ solar: 15 + 3 * swing(at) })));
    // The first and last four days have fewer than twenty around them.
    expect(dim).toHaveLength(32);
    expect(dim[0]).toBe('2025-06-05 solar never-clear doubted');
    expect(judge(summer(FIRST, 40, (at) => ({ solar: at === 20 ? 28 : 15 + 3 * swing(at) }))).length).toBeLessThan(20);
  });

  it('refuses light in the polar night, and leaves a sensor its zero', () => {
    // 21 December at 80° north: the sun stays below the horizon, Ra is 0.
    const polar = { latitude: degrees(80), elevation: station.elevation };
    const night = (solar: number) => told(judgeWeatherDays([recorded('2025-12-21', { solar })], polar));
    expect(extraterrestrialRadiation(polar.latitude, 355)).toBe(0);
    expect(night(20)).toEqual(['2025-12-21 solar above-atmosphere refused']);
    expect(night(0.4)).toEqual([]);
    expect(night(0)).toEqual([]);
  });

  it('doubts less where nobody stated the elevation', () => {
    const [low] = judgeWeatherDays([recorded('2025-07-06', { solar: 34.2 })], { ...uccle, elevation: null });
    expect(low?.marks).toEqual([]);
  });
});

describe('humidity at dawn', () => {
  // The record of a dry valley in Nevada, 1 July 2015 (USBR AgriMet): Tmin 66.65 °F, Tdew 49.84 °F. 9.3 °C apart is dry, not broken.
  const gap = celsiusFromFahrenheit(66.65) - celsiusFromFahrenheit(49.84);

  it('keeps dry surroundings as a remark, and doubts what is drier still', () => {
    expect(gap).toBeCloseTo(9.34, 2);
    const dry = (below: number) =>
      judge(
        summer(FIRST, 40, (at) => ({ dewPoint: 15 + 2 * swing(at + 0.5) - below, rhmax: 60 + 3 * swing(at), rhmin: 20 + 3 * swing(at) })),
      );
    expect(dry(gap)).toHaveLength(32);
    expect(dry(gap)[0]).toBe('2025-06-05 dewPoint dry-at-dawn kept');
    expect(dry(11)[31]).toBe('2025-07-06 dewPoint very-dry-at-dawn doubted');
  });

  it('takes the highest humidity where there is no dew point', () => {
    // 48 % at 15 °C: a dew point some 11 °C below.
    const low = judge(summer(FIRST, 40, (at) => ({ dewPoint: null, rhmax: 46 + 3 * swing(at), rhmin: 20 + 3 * swing(at) })));
    expect(low[0]).toBe('2025-06-05 rhmax very-dry-at-dawn doubted');
  });

  it('doubts a dew point far above the lowest temperature', () => {
    expect(judge(changed(5, { tmin: 7.5 }))).toEqual(['2025-06-06 dewPoint dew-point-above-lowest doubted']);
  });
});

describe('marks and the day', () => {
  it('do not depend on the order in which the days come', () => {
    const days = summer(FIRST, 60, (at) => (at % 17 === 0 ? { tmax: 12, dewPoint: 11 } : at > 30 && at < 40 ? { wind: 0 } : {}));
    const expected = judgeWeatherDays(days, station);
    expect(told(expected).length).toBeGreaterThan(5);
    fc.assert(
      fc.property(fc.shuffledSubarray(days, { minLength: 60 }), (shuffled) => {
        expect(judgeWeatherDays(shuffled, station)).toEqual(expected);
      }),
      { numRuns: 20 },
    );
  });

  it('widen by each doubted input once, and only by what is used', () => {
    const [day] = judgeWeatherDays(changed(5, { solar: 38, tmin: 7.5 }).slice(5, 6), station);
    expect(day?.marks.map(({ reason }) => reason)).toEqual(['above-clear-sky', 'dew-point-above-lowest']);
    expect(doubtedSd(day!, false)).toBeCloseTo(Math.hypot(0.1, 0.06), 12);
    expect(doubtedSd(day!, true)).toBe(0);
    const equal = judgeWeatherDays(
      summer(FIRST, 4, () => ({ rhmin: 40, rhmax: 80 })),
      station,
    );
    expect(equal[0]?.marks).toHaveLength(2);
    // The dew point was measured too, and stands in the equation in their place.
    expect(doubtedSd(equal[0]!, false)).toBe(0);
  });
});
