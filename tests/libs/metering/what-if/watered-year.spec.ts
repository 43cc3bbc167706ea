import { whatIfYear } from '@rillbook/metering/what-if/what-if-year.js';
import { wateredYear, type WateredZone } from '@rillbook/metering/what-if/watered-year.js';
import { weatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import { describe, expect, it } from 'vitest';
import { aZone, weather } from '../a-property.js';

const months = [
  { month: '2026-06', through: '2026-06-30' },
  { month: '2026-07', through: '2026-07-31' },
];
const DAYS = 61;
/** 5 mm a day, dry; 100 m2 with a flow of 25 L/min: 20 minutes put out 5 mm. */
const dry = weatherSeries(weather('2026-03-03', '2026-07-31'));
const watered = (minutesByDay: Float64Array, changes: Partial<WateredZone> = {}): WateredZone => ({
  ...aZone(),
  flowLPerMin: 25,
  minutesByDay,
  ...changes,
});
const daily = (minutes: number) => new Float64Array(DAYS).fill(minutes);

describe('wateredYear', () => {
  it('neither stresses nor loses where watering is the need, whatever uniformity and leaching ask', () => {
    const zone = aZone({ duLq: 0.6, leachingFraction: 0.1 });
    const [need] = whatIfYear(dry, months)([zone]).zones;
    const minutes = need!.litres! / DAYS / 25;
    for (const month of wateredYear(dry, months, watered(daily(minutes), { duLq: 0.6, leachingFraction: 0.1 }))) {
      expect(month.lostLitres).toBeCloseTo(0, 6);
      expect(month.shortShare).toBeCloseTo(0, 9);
    }
  });

  it('loses below the roots what the root zone has no room for', () => {
    // 10 mm a day on 5 mm of use: the 20 mm that are missing at first fill in 4 days, and from then on 5 mm x 100 m2 are lost daily.
    expect(wateredYear(dry, months, watered(daily(40))).map(({ lostLitres }) => lostLitres)).toEqual([
      expect.closeTo(26 * 500, 6),
      expect.closeTo(31 * 500, 6),
    ]);
  });

  it('counts the days that begin short of water, and what plants went without', () => {
    // Nothing is put out: the first day begins at RAW, all others below it; what is left of 20 mm shrinks by a quarter a day.
    const [june, july] = wateredYear(dry, months, watered(daily(0)));
    expect(june).toMatchObject({ month: '2026-06', stressDays: 29, lostLitres: 0 });
    expect(june!.shortShare).toBeCloseTo(1 - (5 + 15 * (1 - 0.75 ** 29)) / 150, 9);
    expect(july!.stressDays).toBe(31);
    expect(july!.shortShare).toBeGreaterThan(0.99);
  });

  it('knows nothing from the first day on whose weather or watering is not known', () => {
    const minutes = daily(20);
    minutes[40] = Number.NaN;
    const [june, july] = wateredYear(dry, months, watered(minutes));
    expect(june!.stressDays).toBe(0);
    expect(july).toEqual({ month: '2026-07', stressDays: null, shortShare: null, lostLitres: null });
    const unknown = weatherSeries(weather('2026-03-03', '2026-06-10'));
    expect(wateredYear(unknown, months, watered(daily(20)))[0]!.lostLitres).toBeNull();
  });

  it('refuses months that do not follow each other', () => {
    expect(() => wateredYear(dry, [months[0]!, { month: '2026-08', through: '2026-08-31' }], watered(daily(20)))).toThrowError(
      expect.objectContaining({ code: 'WATERED_MONTHS_OUT_OF_ORDER' }),
    );
  });
});
