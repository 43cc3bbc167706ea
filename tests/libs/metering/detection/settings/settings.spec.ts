import type { RuleBreach } from '@rillbook/irrigation/rules/rule-breach.js';
import { mixedNeeds, mixedNeedsFinding, type SharedZone } from '@rillbook/metering/detection/settings/mixed-needs.js';
import { rainNotPausedFor } from '@rillbook/metering/detection/settings/rain-not-paused-for.js';
import { ruleFindings } from '@rillbook/metering/detection/settings/rule-finding.js';
import { seasonNotFollowed, withSeason } from '@rillbook/metering/detection/settings/season-not-followed.js';
import { describe, expect, it } from 'vitest';
import { monthlyMeter } from '../../../../support/worlds/monthly-meter.mjs';

const nothing = { allowedDays: null, daysPerWeek: null, blocked: null, maxMinutes: null, pauseHours: null };
const breach = (changes: Partial<RuleBreach>): RuleBreach => ({
  rule: 'stage 2',
  kind: 'blocked hours',
  program: 'A',
  stations: [1],
  times: 3,
  firstDate: '2026-06-02',
  lastDate: '2026-06-20',
  toKeep: nothing,
  ...changes,
});

describe('a season that settings did not follow', () => {
  const input = (then: number, now: number, changes = {}) => ({
    firstDay: 20_000,
    neededLitres: Float64Array.from({ length: 200 }, (_, day) => (day < 100 ? then : now)),
    changedDay: 20_050,
    lastDay: 20_199,
    ...changes,
  });

  it('fell or rose, by how much, and for how long nobody came', () => {
    expect(seasonNotFollowed(input(1000, 600))).toEqual({
      kind: 'over-programmed',
      unchangedDays: 150,
      needChange: expect.closeTo(-0.4, 12),
    });
    expect(seasonNotFollowed(input(1000, 1300))).toEqual({
      kind: 'under-programmed',
      unchangedDays: 150,
      needChange: expect.closeTo(0.3, 12),
    });
  });

  it('is said by the finding that it explains, and by no other', () => {
    const [over] = ruleFindings({ controllerId: 'c1', zoneOfStation: new Map() }, [breach({})]).map((each) => ({
      ...each,
      kind: 'over-programmed' as const,
    }));
    const season = seasonNotFollowed(input(1000, 600));
    expect(over && withSeason(over, season).says.details).toMatchObject({ rule: 'stage 2', unchangedDays: 150, needChangePercent: -40 });
    expect(over && withSeason(over, seasonNotFollowed(input(1000, 1300)))).toBe(over);
    expect(over && withSeason(over, null)).toBe(over);
  });

  it('is nothing where the need is much the same, settings are young, or need is not known', () => {
    expect(seasonNotFollowed(input(1000, 850))).toBeNull();
    expect(seasonNotFollowed(input(1000, 600, { changedDay: 20_160 }))).toBeNull();
    expect(seasonNotFollowed(input(Number.NaN, 600))).toBeNull();
    expect(seasonNotFollowed(input(0, 600))).toBeNull();
  });
});

describe('rain that was not paused for, by the settings alone', () => {
  // Five millimetres of reference ET a day, programs every second day, 30 mm on day 10: by hand, it lasts 30 / (0.8 · 5) = 7.5 days. On day 16
  // 24 mm are used, and 6 mm are 1.3 standard deviations of rain: 0.85 · 0.91 is no longer sure.
  const thresholds = { minConfidence: 0.8, minLitres: 1000, minMoney: 0 };
  const meter = monthlyMeter(1, { readings: 2 });
  const rained = (mm: number, day = 10) => ({
    ...meter,
    etoMm: new Float64Array(meter.days).fill(5),
    rainMm: Float64Array.from({ length: meter.days }, (_, at) => (at === day ? mm : 0)),
  });

  it('tells the days, the rain and the water, from the first covered day on which programs ran', () => {
    expect(rainNotPausedFor(rained(30), thresholds)).toMatchObject([
      {
        kind: 'watered in rain',
        fromDate: '2024-01-13',
        untilDate: '2024-01-15',
        litres: 2 * 18_000,
        openedLocalDay: meter.firstDay + 13,
        clearedLocalDay: meter.firstDay + 19,
        says: { code: 'watered in rain', details: { rainMm: 30, days: 2 } },
      },
    ]);
  });

  it('opens when enough water has run to be worth a look, and not before', () => {
    expect(rainNotPausedFor(rained(30), { ...thresholds, minLitres: 20_000 })).toMatchObject([{ openedLocalDay: meter.firstDay + 15 }]);
    expect(rainNotPausedFor(rained(30), { ...thresholds, minLitres: 40_000 })).toEqual([]);
  });

  it('is less sure than where a meter saw it, and is not told to who wants to be surer', () => {
    const [found] = rainNotPausedFor(rained(30), thresholds);
    expect(found?.confidence).toBeLessThanOrEqual(0.85);
    expect(found?.confidence).toBeGreaterThan(0.8);
    expect(rainNotPausedFor(rained(30), { ...thresholds, minConfidence: 0.9 })).toEqual([]);
  });

  it('is nothing after little rain, after a pause, or without weather', () => {
    expect(rainNotPausedFor(rained(5), thresholds)).toEqual([]);
    expect(rainNotPausedFor({ ...rained(30), programmedLitres: new Float64Array(meter.days) }, thresholds)).toEqual([]);
    expect(rainNotPausedFor({ ...rained(30), etoMm: new Float64Array(meter.days).fill(Number.NaN) }, thresholds)).toEqual([]);
  });

  it('is one spell while it rains on', () => {
    const evidence = rained(30);
    evidence.rainMm[14] = 20;
    const found = rainNotPausedFor(evidence, thresholds);
    expect(found).toHaveLength(1);
    expect(found[0]?.says.details).toMatchObject({ rainMm: 50, days: 4 });
  });
});

describe('plants whose needs do not match', () => {
  // A tenth at 0.8 among 0.3: mean 0.35. 0.45 · 1,200 mm · 200 m² = 108,000 L net; DU 0.75 makes 0.85 of it useful. By hand.
  const zone: SharedZone = {
    zoneId: 'z1',
    plants: [
      { cover: 10, plantFactor: 0.8 },
      { cover: 90, plantFactor: 0.3 },
    ],
    areaM2: 200,
    duLq: 0.75,
    leachingFraction: 0,
    etoOfYear: 1200,
  };

  it('cost what the zone gets for the few thirsty ones', () => {
    const mixed = mixedNeeds(zone);
    expect(mixed).toMatchObject({ thirstiestFactor: 0.8, coverFactor: expect.closeTo(0.35, 12), thirstyCover: expect.closeTo(0.1, 12) });
    expect(mixed?.litresPerYear).toBeCloseTo(108_000 / 0.85, 6);
    expect(mixed && mixedNeedsFinding(zone, mixed, 0.002, '2026-07-01')).toMatchObject({
      kind: 'mixed water needs',
      zoneIds: ['z1'],
      litres: expect.closeTo(108_000 / 0.85 / 12, 6),
      money: expect.closeTo((108_000 / 0.85 / 12) * 0.002, 6),
      says: { details: { zoneId: 'z1', litresPerYear: expect.closeTo(108_000 / 0.85, 6) } },
    });
  });

  it('are nothing where they nearly match, or the thirsty ones are the most', () => {
    const plants = (...pairs: readonly (readonly [number, number])[]) => ({
      ...zone,
      plants: pairs.map(([cover, plantFactor]) => ({ cover, plantFactor })),
    });
    expect(mixedNeeds(plants([10, 0.45], [90, 0.3]))).toBeNull();
    expect(mixedNeeds(plants([60, 0.8], [40, 0.3]))).toBeNull();
    expect(mixedNeeds(plants([100, 0.8]))).toBeNull();
    expect(mixedNeeds(plants([0, 0.8], [100, 0.3]))).toBeNull();
  });

  it('are refused without plants', () => {
    expect(() => mixedNeeds({ ...zone, plants: [] })).toThrow(expect.objectContaining({ code: 'PLANTS_OUT_OF_DOMAIN' }));
  });
});

describe('broken rules', () => {
  it('are one finding each, with their programs and zones', () => {
    const breaches = [
      breach({}),
      breach({ program: 'B', stations: [2, 3], firstDate: '2026-06-01' }),
      breach({ rule: 'shade', stations: [9] }),
    ];
    const found = ruleFindings(
      {
        controllerId: 'c1',
        zoneOfStation: new Map([
          [1, 'z1'],
          [2, 'z2'],
        ]),
      },
      breaches,
    );
    expect(found).toMatchObject([
      {
        causeKey: 'breaks a rule controller:c1 stage 2',
        zoneIds: ['z1', 'z2'],
        fromDate: '2026-06-01',
        untilDate: '2026-06-20',
        litres: null,
        says: { code: 'breaks a rule', details: { rule: 'stage 2', programs: ['A', 'B'] } },
      },
      { causeKey: 'breaks a rule controller:c1 shade', zoneIds: [] },
    ]);
  });
});
