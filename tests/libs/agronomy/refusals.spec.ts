import { etoOfPlace } from '@rillbook/agronomy/budgets/eto-of-place.js';
import { etoOfZone } from '@rillbook/agronomy/budgets/eto-zones.js';
import { dailyNormal, peakMonth, yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { establishmentOfCover } from '@rillbook/agronomy/plants/establishment/establishment-of-cover.js';
import { waterNeedOfCode } from '@rillbook/agronomy/plants/published/category-range.js';
import { cropRow } from '@rillbook/agronomy/plants/published/crop-row.js';
import { hydrozonePlantFactor } from '@rillbook/agronomy/plants/published/hydrozone-rules.js';
import { groupPlantFactor } from '@rillbook/agronomy/plants/published/landscape-group.js';
import { singlePlantDensity } from '@rillbook/agronomy/plants/published/single-plant-factor.js';
import { developedShare, stageCoefficient } from '@rillbook/agronomy/water-balance/canopy/growth-stages.js';
import { irrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { weightedCurveNumber } from '@rillbook/agronomy/water-balance/rain/curve-numbers.js';
import { consecutiveDates } from '@rillbook/agronomy/water-balance/season/consecutive-dates.js';
import { dayNumber } from '@rillbook/agronomy/weather/day-number.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

const ENDLESS = Number.POSITIVE_INFINITY;
const NONE = Number.NaN;
const mm = (value: number) => value as never;

const stages = { initialDays: 10, developmentDays: 20, midDays: 30, lateDays: 40 };
const normals = new Array<number>(12).fill(30);

const refused: readonly (readonly [string, () => unknown, string, object])[] = [
  ['a group nobody knows', () => groupPlantFactor('moss' as never), 'LANDSCAPE_GROUP_UNKNOWN', { group: 'moss' }],
  ['a crop nobody knows', () => cropRow('moss' as never), 'CROP_UNKNOWN', { crop: 'moss' }],
  ['a single plant nobody knows', () => singlePlantDensity('moss' as never), 'SINGLE_PLANT_UNKNOWN', { plant: 'moss' }],
  ['a code of need nobody knows', () => waterNeedOfCode('X'), 'WATER_NEED_CODE_UNKNOWN', { waterNeedCode: 'X' }],
  ['a hydrozone of nothing', () => hydrozonePlantFactor([]), 'HYDROZONE_EMPTY', {}],
  ['a hydrozone with less than nothing', () => hydrozonePlantFactor([0.5, -0.1]), 'PLANT_FACTOR_OUT_OF_DOMAIN', { plantFactor: -0.1 }],
  [
    'a cover below nothing',
    () => establishmentOfCover([{ coverPercent: -1, share: 0 }]),
    'COVER_OUT_OF_DOMAIN',
    { coverPercent: -1, share: 0 },
  ],
  [
    'a cover above all',
    () => establishmentOfCover([{ coverPercent: 101, share: 0 }]),
    'COVER_OUT_OF_DOMAIN',
    { coverPercent: 101, share: 0 },
  ],
  [
    'a share below nothing',
    () => establishmentOfCover([{ coverPercent: null, share: -0.1 }]),
    'COVER_OUT_OF_DOMAIN',
    { coverPercent: null, share: -0.1 },
  ],
  [
    'a share above one',
    () => establishmentOfCover([{ coverPercent: 50, share: 1.1 }]),
    'COVER_OUT_OF_DOMAIN',
    { coverPercent: 50, share: 1.1 },
  ],
  ['a day before the season', () => developedShare(-1, stages), 'GROWTH_STAGES_OUT_OF_DOMAIN', { seasonDay: -1, ...stages }],
  [
    'a stage below nothing',
    () => developedShare(1, { ...stages, initialDays: -1 }),
    'GROWTH_STAGES_OUT_OF_DOMAIN',
    { seasonDay: 1, ...stages, initialDays: -1 },
  ],
  [
    'a development below nothing',
    () => developedShare(1, { ...stages, developmentDays: -1 }),
    'GROWTH_STAGES_OUT_OF_DOMAIN',
    { seasonDay: 1, ...stages, developmentDays: -1 },
  ],
  [
    'a middle below nothing',
    () => developedShare(1, { ...stages, midDays: -1 }),
    'GROWTH_STAGES_OUT_OF_DOMAIN',
    { seasonDay: 1, ...stages, midDays: -1 },
  ],
  [
    'a late season below nothing',
    () => developedShare(1, { ...stages, lateDays: -1 }),
    'GROWTH_STAGES_OUT_OF_DOMAIN',
    { seasonDay: 1, ...stages, lateDays: -1 },
  ],
  [
    'an endless season',
    () => developedShare(1, { ...stages, lateDays: ENDLESS }),
    'GROWTH_STAGES_OUT_OF_DOMAIN',
    { seasonDay: 1, ...stages, lateDays: ENDLESS },
  ],
  [
    'areas of nothing',
    () => weightedCurveNumber([{ area: 0, curveNumber: 98 }]),
    'AREAS_OUT_OF_DOMAIN',
    { parts: [{ area: 0, curveNumber: 98 }] },
  ],
  [
    'an endless area',
    () => weightedCurveNumber([{ area: ENDLESS, curveNumber: 98 }]),
    'AREAS_OUT_OF_DOMAIN',
    { parts: [{ area: ENDLESS, curveNumber: 98 }] },
  ],
  [
    'an area below nothing',
    () =>
      weightedCurveNumber([
        { area: -1, curveNumber: 98 },
        { area: 5, curveNumber: 61 },
      ]),
    'AREAS_OUT_OF_DOMAIN',
    {
      parts: [
        { area: -1, curveNumber: 98 },
        { area: 5, curveNumber: 61 },
      ],
    },
  ],
  ['a month before January', () => dailyNormal(normals.map(mm), 0), 'MONTH_OUT_OF_DOMAIN', { month: 0 }],
  ['a month after December', () => dailyNormal(normals.map(mm), 13), 'MONTH_OUT_OF_DOMAIN', { month: 13 }],
  ['eleven normals', () => yearlyNormal(normals.slice(1).map(mm)), 'MONTHLY_NORMALS_INVALID', { months: 11 }],
  ['a normal below nothing', () => peakMonth(normals.with(4, -1).map(mm)), 'MONTHLY_NORMALS_INVALID', { months: 12 }],
  ['a place nobody knows', () => etoOfPlace('Atlantis' as never), 'PLACE_UNKNOWN', { place: 'Atlantis' }],
  ['a zone nobody knows', () => etoOfZone(19), 'ETO_ZONE_UNKNOWN', { etoZone: 19 }],
  ['a date that is none', () => dayOfYear('2026-6-1'), 'DATE_OUT_OF_DOMAIN', { date: '2026-6-1' }],
  ['a date with more behind it', () => dayOfYear('2026-06-011'), 'DATE_OUT_OF_DOMAIN', { date: '2026-06-011' }],
  ['a date with more before it', () => dayOfYear('12026-06-01'), 'DATE_OUT_OF_DOMAIN', { date: '12026-06-01' }],
  ['the day before the first', () => dayOfYear('2026-06-00'), 'DATE_OUT_OF_DOMAIN', { date: '2026-06-00' }],
  ['the 31st of a month of 30', () => dayOfYear('2026-11-31'), 'DATE_OUT_OF_DOMAIN', { date: '2026-11-31' }],
  ['the 32nd of a month of 31', () => dayOfYear('2026-12-32'), 'DATE_OUT_OF_DOMAIN', { date: '2026-12-32' }],
  ['the 29th of February of a century', () => dayOfYear('2100-02-29'), 'DATE_OUT_OF_DOMAIN', { date: '2100-02-29' }],
  ['the 30th of February', () => dayOfYear('2024-02-30'), 'DATE_OUT_OF_DOMAIN', { date: '2024-02-30' }],
  ['month nought', () => dayOfYear('2026-00-10'), 'DATE_OUT_OF_DOMAIN', { date: '2026-00-10' }],
  ['a number for a date that is none', () => dayNumber('2026-02-30'), 'DATE_OUT_OF_DOMAIN', { date: '2026-02-30' }],
  ['a number for words', () => dayNumber('today'), 'DATE_OUT_OF_DOMAIN', { date: 'today' }],
  [
    'a day twice',
    () => consecutiveDates([{ date: '2026-06-01' }, { date: '2026-06-01' }]),
    'SEASON_DATES_OUT_OF_ORDER',
    { date: '2026-06-01', at: 1 },
  ],
  [
    'a day left out',
    () => consecutiveDates([{ date: '2026-06-01' }, { date: '2026-06-03' }]),
    'SEASON_DATES_OUT_OF_ORDER',
    { date: '2026-06-03', at: 1 },
  ],
  [
    'a first day that is none',
    () => consecutiveDates([{ date: '2026-06-32' }]),
    'SEASON_DATES_OUT_OF_ORDER',
    { date: '2026-06-32', at: 0 },
  ],
];

it.each(refused)('%s is refused', (_, deed, code, details) => {
  expect(refusalOf(deed)).toEqual([code, details]);
});

describe('irrigation need', () => {
  const zone = { plantCoefficient: 0.8, readilyAvailableWater: mm(20) };
  const dry = { eto: [5, 5], rain: [0, 0] };

  it.each([
    [{ eto: [5], rain: [0, 0] }, 0],
    [dry, -1],
    [dry, 0.5],
    [dry, 3],
  ])('%j from day %d is no series', (weather, from) => {
    expect(refusalOf(() => irrigationNeed(weather, zone, from))).toEqual([
      'WEATHER_SERIES_OUT_OF_DOMAIN',
      { etoDays: weather.eto.length, rainDays: weather.rain.length, from },
    ]);
  });

  it.each([
    [-0.1, 20],
    [0.8, -1],
    [ENDLESS, 20],
    [NONE, 20],
  ])('coefficient %d with %d mm is no root zone', (plantCoefficient, readilyAvailableWater) => {
    const refusedZone = { plantCoefficient, readilyAvailableWater: mm(readilyAvailableWater) };
    expect(refusalOf(() => irrigationNeed(dry, refusedZone, 0))).toEqual([
      'ROOT_ZONE_OUT_OF_DOMAIN',
      { plantCoefficient, readilyAvailableWater },
    ]);
  });

  it.each([-1, ENDLESS, NONE])('names the day and series of %d mm', (value) => {
    expect(refusalOf(() => irrigationNeed({ eto: [5, value], rain: [0, 0] }, zone, 0))).toEqual([
      'WEATHER_SERIES_OUT_OF_DOMAIN',
      { name: 'eto', day: 1, value },
    ]);
    expect(refusalOf(() => irrigationNeed({ eto: [5, 5], rain: [value, 0] }, zone, 0))).toEqual([
      'WEATHER_SERIES_OUT_OF_DOMAIN',
      { name: 'rain', day: 0, value },
    ]);
  });

  it('needs nothing of plants that use nothing, and may be asked from the day after the last', () => {
    expect([...irrigationNeed(dry, { plantCoefficient: 0, readilyAvailableWater: mm(0) }, 0).irrigationMm]).toEqual([0, 0]);
    expect(irrigationNeed(dry, zone, 2).irrigationMm).toHaveLength(0);
  });
});

describe('the edges of stages, covers and the calendar', () => {
  it('coefficients at the ends of the stages (from 0.3 over 1.2 to 0.6)', () => {
    const at = (day: number) => stageCoefficient(day, stages, { initial: 0.3, mid: 1.2, end: 0.6 });
    expect([0, 10, 20, 30, 60, 80, 100, 101].map(at)).toEqual([0.3, 0.3, 0.75, 1.2, 1.2, expect.closeTo(0.9, 9), 0.6, 0.6]);
  });

  it('a season may have no stage of a kind', () => {
    expect(developedShare(0, { initialDays: 0, developmentDays: 0, midDays: 0, lateDays: 0 })).toBe(0);
    expect(developedShare(1, { initialDays: 0, developmentDays: 0, midDays: 0, lateDays: 0 })).toBe(1);
  });

  it('covers of nothing and all, shares of nothing and all', () => {
    expect(establishmentOfCover([{ coverPercent: 0, share: 0.5 }])).toBe(1);
    expect(establishmentOfCover([{ coverPercent: 100, share: 0 }])).toBe(0);
    expect(
      establishmentOfCover([
        { coverPercent: 75, share: 1 },
        { coverPercent: 25, share: 0 },
      ]),
    ).toBe(0.75);
    expect(
      establishmentOfCover([
        { coverPercent: null, share: 1 },
        { coverPercent: 40, share: 0.5 },
      ]),
    ).toBe(0.75);
  });

  it('days of the year: leap years by the rule of the calendar', () => {
    expect(['2026-01-01', '2026-02-28', '2024-02-29', '2024-03-01', '2026-03-01', '2000-12-31', '2100-12-31'].map(dayOfYear)).toEqual([
      1, 59, 60, 61, 60, 366, 365,
    ]);
    expect(['2026-04-30', '2026-06-30', '2026-09-30', '2026-11-30', '2026-01-31'].map(dayOfYear)).toEqual([120, 181, 273, 334, 31]);
  });

  it('a normal year sums, divides by its days and has a peak', () => {
    const peaked = normals.with(6, 62).map(mm);
    expect(yearlyNormal(peaked)).toBe(392);
    expect(dailyNormal(peaked, 7)).toBe(2);
    expect(peakMonth(peaked)).toBe(7);
    expect(yearlyNormal(new Array<number>(12).fill(0).map(mm))).toBe(0);
  });

  it('codes of need, and zones that are known from memory', () => {
    expect(['VL', 'LO', 'M', 'H', 'U', 'NA'].map(waterNeedOfCode)).toEqual(['very low', 'low', 'moderate', 'high', null, null]);
    expect([8, 9, 10, 11].map((zone) => etoOfZone(zone).known)).toEqual(['text', 'memory', 'memory', 'text']);
    expect(hydrozonePlantFactor([0, 0.3])).toBe(0.3);
  });
});
