import { irrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { neededDepths } from '@rillbook/metering/volumes/needed-depths.js';
import type { NeedingZone } from '@rillbook/metering/volumes/needing-zone.js';
import type { WeatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import { wetMonthMoves } from '@rillbook/metering/volumes/wet-month.js';
import { describe, expect, it } from 'vitest';
import { standardNormals } from '../../../support/worlds/drawn-account.mjs';

const FIRST_DAY = 20_000;
const WARM_UP = 90;
const DAYS = 30;
const RAIN_SD = 0.15;
const ETO_SD = 0.08;
const zone: NeedingZone = { plantCoefficient: 0.6, rawMm: 18, plantRelativeSd: 0.2, storageRelativeSd: 0.25 };

/** 5 mm of reference evapotranspiration a day, 3 mm of which the plants use; rain every sixth day. */
const weather = (rainMm: number, changes: Partial<WeatherSeries> = {}): WeatherSeries => ({
  firstDay: FIRST_DAY - WARM_UP,
  etoMm: new Float64Array(WARM_UP + DAYS).fill(5),
  rainMm: Float64Array.from({ length: WARM_UP + DAYS }, (_, day) => (day % 6 === 0 ? rainMm : 0)),
  etoRelativeSd: new Float64Array(WARM_UP + DAYS).fill(ETO_SD),
  ...changes,
});
const found = (of: WeatherSeries, like = zone) => neededDepths(of, [{ firstDay: FIRST_DAY, days: DAYS, zones: [like] }], RAIN_SD)[0]![0]!;
const sdOf = ({ plantFactor, rootStorage, eto, rain }: ReturnType<typeof found>['moved']) =>
  Math.hypot(plantFactor, rootStorage, eto, rain);

/** Standard deviation of the need over draws of the same model. */
function drawnSd(of: WeatherSeries): number {
  const normal = standardNormals(20_261_130);
  const needs = Array.from({ length: 2000 }, () => {
    const [plant, storage, eto, rain] = [normal(), normal(), normal(), normal()];
    const moved = {
      eto: of.etoMm.map((mm) => mm * (1 + ETO_SD * eto)),
      rain: of.rainMm.map((mm) => Math.max(0, mm * (1 + RAIN_SD * rain))),
    };
    const rootZone = {
      plantCoefficient: zone.plantCoefficient * (1 + zone.plantRelativeSd * plant),
      readilyAvailableWater: (zone.rawMm * Math.max(0, 1 + zone.storageRelativeSd * storage)) as never,
    };
    return irrigationNeed(moved, rootZone, WARM_UP).irrigationMm.reduce((sum, day) => sum + day, 0);
  });
  const mean = needs.reduce((sum, need) => sum + need, 0) / needs.length;
  return Math.sqrt(needs.reduce((sum, need) => sum + (need - mean) ** 2, 0) / (needs.length - 1));
}

describe('a month that rain all but covered', () => {
  it.each([18.5, 20, 22])('is as unsure as draws of the same model say, with %s mm every sixth day', (rainMm) => {
    const { netMm, moved } = found(weather(rainMm));
    expect(netMm).toBeLessThan(0.15 * 90);
    // Half the difference alone would be a fraction of it, at 22 mm nearly none.
    expect(sdOf(moved) / drawnSd(weather(rainMm))).toBeGreaterThan(0.6);
    expect(sdOf(moved) / drawnSd(weather(rainMm))).toBeLessThan(1.3);
  });

  it('says of each input which way it moves the need', () => {
    const { plantFactor, rootStorage, eto, rain } = found(weather(22)).moved;
    expect([plantFactor, eto].every((each) => each > 0)).toBe(true);
    expect([rootStorage, rain].every((each) => each < 0)).toBe(true);
    // 90 mm of need without rain: 20 % of it by the plants, 8 % by ETo, 15 % by rain as far as it is used, 25 % of 18 mm by storage.
    expect(plantFactor / eto).toBeCloseTo(0.2 / 0.08, 9);
    expect(rain / eto).toBeCloseTo(-0.15 / 0.08, 9);
    expect(rootStorage / eto).toBeCloseTo((-0.25 * 18) / (0.08 * 90), 9);
  });

  it('is sure where rain is far above the need, or nothing is uncertain', () => {
    expect(sdOf(found(weather(0, { rainMm: new Float64Array(WARM_UP + DAYS).fill(30) })).moved)).toBe(0);
    const certain = { ...zone, plantRelativeSd: 0, storageRelativeSd: 0 };
    const of = weather(22, { etoRelativeSd: new Float64Array(WARM_UP + DAYS) });
    const month = { weather: of, firstDay: FIRST_DAY, days: DAYS, rainRelativeSd: 0 };
    const none = { plantFactor: 0, rootStorage: 0, eto: 0, rain: 0 };
    expect(wetMonthMoves(certain, month, { netMm: 0, moved: none })).toEqual(none);
  });

  it('keeps what slopes say where they say more, and in every month that is not wet', () => {
    const month = { weather: weather(22), firstDay: FIRST_DAY, days: DAYS, rainRelativeSd: RAIN_SD };
    const large = { plantFactor: 50, rootStorage: 0, eto: 0, rain: 0 };
    expect(wetMonthMoves(zone, month, { netMm: 0, moved: large })).toBe(large);
    const small = { plantFactor: 1e-3, rootStorage: 0, eto: 0, rain: 0 };
    expect(wetMonthMoves(zone, month, { netMm: 0.15 * 90, moved: small })).toBe(small);
    expect(wetMonthMoves(zone, month, { netMm: 0.1499 * 90, moved: small })).not.toBe(small);
  });

  it('counts the rain’s own doubt, and leaves days that are not known alone', () => {
    const more = found(weather(22, { rainSdMm: new Float64Array(WARM_UP + DAYS).fill(4) })).moved;
    expect(sdOf(more)).toBeGreaterThan(1.2 * sdOf(found(weather(22)).moved));
    const rainMm = weather(22).rainMm.map((mm, day) => (day === 100 ? Number.NaN : mm));
    expect(sdOf(found(weather(22, { rainMm })).moved)).toBeGreaterThan(0);
  });
});
