import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { whatIfYear } from '@rillbook/metering/what-if/what-if-year.js';
import { weatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import { describe, expect, it } from 'vitest';
import { aController, aMeter, aProperty, aZone, weather } from '../a-property.js';

const months = [
  { month: '2026-04', through: '2026-04-30' },
  { month: '2026-05', through: '2026-05-31' },
  { month: '2026-06', through: '2026-06-17' },
];
const day = (date: string): number => Number(date.slice(8));
const days = weather('2026-01-01', '2026-06-30', (date) => ({
  etoMm: date === '2026-05-11' ? null : 2 + day(date) / 9,
  rainMm: day(date) % 8 === 0 ? 1 + day(date) / 6 : 0,
}));
const zones = [
  aZone({ plantFactor: 0.8, duLq: 0.6, rawMm: 18 }),
  aZone({ id: 'z2', station: 2, plantFactor: 0.3, density: 0.9, shade: 0.7, rawMm: 35, areaM2: 240, leachingFraction: 0.1 }),
];

describe('whatIfYear', () => {
  it('needs for zones as they are what their accounts say', () => {
    const asked = whatIfYear(weatherSeries(days), months)(zones);
    months.forEach((month, at) => {
      const account = computeMonthAccount(aProperty({ ...month, days, zones, controllers: [aController([])], meters: [aMeter([])] }));
      for (const line of account.zones) {
        const litres = asked.zones.find(({ zoneId }) => zoneId === line.zoneId)!.litresByMonth[at];
        expect(litres).toBeGreaterThan(0);
        expect(litres).toBeCloseTo(line.neededLitres!, 6);
      }
      expect(asked.litresByMonth[at]).toBeCloseTo(account.property.needed.litres!, 6);
    });
    expect(asked.litres).toBeCloseTo(
      asked.litresByMonth.reduce<number>((sum, litres) => sum + litres!, 0),
      6,
    );
  });

  it('answers each question anew, and area and uniformity in proportion', () => {
    const ask = whatIfYear(weatherSeries(days), months);
    const [before] = ask(zones).zones;
    const [thirsty] = ask([aZone({ ...zones[0], plantFactor: 1 })]).zones;
    const [larger] = ask([aZone({ ...zones[0], areaM2: 250 })]).zones;
    const [even] = ask([aZone({ ...zones[0], duLq: 1 })]).zones;
    expect(thirsty!.litres!).toBeGreaterThan(before!.litres!);
    expect(larger!.litres).toBeCloseTo(2.5 * before!.litres!, 6);
    // 0.4 + 0.6 · 0.6 = 0.76 of the water, by the definition of the run time multiplier.
    expect(even!.litres).toBeCloseTo(0.76 * before!.litres!, 6);
    expect(ask(zones).zones[0]).toEqual(before);
  });

  it('has no number for a month without enough weather, nor for one without a complete day', () => {
    const ask = whatIfYear(weatherSeries(days.filter(({ date }) => date < '2026-05-12')), [
      ...months.slice(0, 2),
      { month: '2026-06', through: null },
    ]);
    const asked = ask(zones);
    expect(asked.litresByMonth[0]).toBeGreaterThan(0);
    expect(asked.litresByMonth.slice(1)).toEqual([null, null]);
    expect(asked.litres).toBeNull();
  });

  it('refuses what cannot be', () => {
    const ask = whatIfYear(weatherSeries(days), months);
    expect(() => ask([aZone({ leachingFraction: 1 })])).toThrowError(expect.objectContaining({ code: 'LEACHING_FRACTION_OUT_OF_DOMAIN' }));
    expect(() => whatIfYear(weatherSeries(days), [{ month: '2026-13', through: null }])).toThrowError(
      expect.objectContaining({ code: 'MONTH_INVALID' }),
    );
  });
});
