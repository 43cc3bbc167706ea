import { judgeMonthly } from '@rillbook/metering/detection/monthly/judge-monthly.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { describe, expect, it } from 'vitest';
import { monthlyMeter, type MonthlyWorld } from '../../../../support/worlds/monthly-meter.mjs';

const thresholds = { minConfidence: 0.8, minLitres: 1000, minMoney: 0 };
// Months that scatter little: what is tested is what is said, not how often.
const quiet = { noise: 0.005, ratio: 1.02 } as const;

const world = (changes: Partial<MonthlyWorld> = {}) => monthlyMeter(3, { ...quiet, ...changes });
const judge = (evidence: MeterEvidence, of: Partial<typeof thresholds> = {}) => judgeMonthly(evidence, { ...thresholds, ...of });
/** Which interval ends at an instant, counted from 0. */
const at = ({ intervals }: MeterEvidence, localDay: number | null) => intervals.findIndex(({ toLocalDay }) => toLocalDay === localDay);
const told = (evidence: MeterEvidence) =>
  judge(evidence).map(({ kind, openedLocalDay, clearedLocalDay }) => [
    kind,
    at(evidence, openedLocalDay),
    clearedLocalDay === null ? null : at(evidence, clearedLocalDay),
  ]);

describe('a habit that lasts', () => {
  it('is nothing to tell', () => {
    expect(told(world())).toEqual([]);
    expect(told(world({ season: 1 }))).toEqual([]);
    expect(told(world({ source: 'bills', runsKnown: false }))).toEqual([]);
    expect(told(world({ indoorLitresPerDay: 1500, season: 1 }))).toEqual([]);
  });

  it('is nothing to tell either before it is a habit, as far as the flows on record may be off', () => {
    for (const ratio of [0.75, 0.9, 1.1, 1.35]) expect(told(world({ readings: 2, ratio })), String(ratio)).toEqual([]);
  });
});

describe('unexplained use', () => {
  it('opens with the first reading of a break, since the interval in which it began, and ends with the first without it', () => {
    const evidence = world({ trouble: { fromReading: 14, untilReading: 17, share: 0.4 } });
    expect(told(evidence)).toEqual([['unexplained use', 14, 17]]);
    const [found] = judge(evidence);
    const begun = evidence.intervals[14];
    expect(found).toMatchObject({
      kind: 'unexplained use',
      causeKey: 'excess meter:m1',
      causeFamily: 'excess meter:m1',
      meterId: 'm1',
      zoneIds: ['z1'],
      fromDate: new Date((begun?.fromLocalDay ?? 0) * 86_400_000).toISOString().slice(0, 10),
    });
    // 0.4 of 1.02 of 9,000 L a day, over a mean month.
    expect(found?.litres).toBeGreaterThan(0.9 * 0.4 * 1.02 * 9000 * 30.44);
    expect(found?.litres).toBeLessThan(1.1 * 0.4 * 1.02 * 9000 * 30.44);
    expect(found?.money).toBeCloseTo((found?.litres ?? 0) * 0.002, 6);
    expect(found?.says.details).toMatchObject({ meterId: 'm1', usualRatio: expect.closeTo(1.02, 1), ratio: expect.closeTo(1.43, 1) });
  });

  it('stays one episode where a step never ends', () => {
    const evidence = world({ readings: 48, trouble: { fromReading: 14, share: 0.4 } });
    expect(told(evidence)).toEqual([['unexplained use', 14, null]]);
  });

  it('opens anew where a further cause comes to it that is half as large at least, and says what it was before', () => {
    const evidence = world({ readings: 40, trouble: { fromReading: 14, share: 0.2 } });
    const withMore = (factor: number) => ({
      ...evidence,
      intervals: evidence.intervals.map((interval, index) => ({ ...interval, litres: interval.litres * (index >= 24 ? factor : 1) })),
    });
    expect(told(withMore(1.25))).toEqual([
      ['unexplained use', 14, 24],
      ['unexplained use', 24, null],
    ]);
    const [first, second] = judge(withMore(1.25));
    // 1.2 · 1.25 = 1.5 of the usual water: 0.5 of it is not explained, where it was 0.2.
    expect((second?.litres ?? 0) / (first?.litres ?? 0)).toBeCloseTo(0.5 / 0.2, 0);
    expect(second?.says.details['outgrownLitresPerMonth']).toBeCloseTo(first?.litres ?? 0, 6);
    expect(first?.says.details['outgrownLitresPerMonth']).toBeUndefined();
    expect(told(withMore(1.06))).toEqual([['unexplained use', 14, null]]);
  });

  it('does not open anew where the season alone brings more water through what is broken, or less', () => {
    for (const season of [0.5, 0.9])
      for (const trouble of [
        { fromReading: 14, share: 0.3 },
        { fromReading: 14, litresPerDay: 2500 },
      ])
        expect(told(world({ readings: 40, season, trouble })).filter(([kind]) => kind === 'unexplained use')).toHaveLength(1);
  });

  it('knows nothing of what comes later: earlier inputs alone tell the same of their time', () => {
    const evidence = world({ noise: 0.04, trouble: { fromReading: 14, untilReading: 20, share: 0.15 } });
    const whole = judge(evidence);
    for (let count = 1; count <= evidence.intervals.length; count += 1) {
      const intervals = evidence.intervals.slice(0, count);
      const now = intervals.at(-1)?.toLocalDay ?? 0;
      const then = judge({ ...evidence, intervals });
      const openThen = (found: typeof whole) =>
        found
          .filter(({ openedLocalDay }) => openedLocalDay <= now)
          .map(({ kind, openedLocalDay, fromDate }) => [kind, openedLocalDay, fromDate]);
      expect(openThen(then)).toEqual(openThen(whole));
    }
  });

  it('sees a small leak in winter, when next to nothing is programmed', () => {
    const winter = Array.from({ length: 24 }, (_, index) => index).find((index) => {
      const { intervals, firstDay, programmedLitres } = world({ season: 1 });
      const { fromLocalDay, toLocalDay } = intervals[index] ?? { fromLocalDay: 0, toLocalDay: 0 };
      const ran = programmedLitres.slice(fromLocalDay - firstDay, toLocalDay - firstDay).reduce((sum, litres) => sum + litres, 0);
      return index > 11 && ran < 20_000;
    });
    expect(winter).toBeDefined();
    const evidence = world({ season: 1, trouble: { fromReading: winter ?? 0, litresPerDay: 250 } });
    expect(told(evidence)[0]?.slice(0, 2)).toEqual(['unexplained use', winter]);
  });

  it('sees a leak that grows by little from reading to reading', () => {
    const evidence = monthlyMeter(3, { readings: 44, ...quiet });
    const growing = evidence.intervals.map((interval, index) => ({
      ...interval,
      litres: interval.litres * (1 + 0.012 * Math.max(0, index - 20)),
    }));
    const [found, ...anew] = judge({ ...evidence, intervals: growing });
    expect(found?.says.details['outgrownLitresPerMonth']).toBeUndefined();
    // Once it has doubled somebody is told anew, and the former is over with that reading.
    expect(anew).toHaveLength(1);
    expect(anew[0]?.openedLocalDay).toBe(found?.clearedLocalDay);
    expect(anew[0]?.litres ?? 0).toBeGreaterThan(2 * Number(anew[0]?.says.details['outgrownLitresPerMonth']));
    expect(found?.kind).toBe('unexplained use');
    expect(at(evidence, found?.openedLocalDay ?? null)).toBeLessThanOrEqual(20 + 8);
  });

  it('opens only where it is worth a look', () => {
    const evidence = world({ trouble: { fromReading: 14, share: 0.4 } });
    expect(judge(evidence, { minLitres: 1_000_000 })).toEqual([]);
    expect(judge(evidence, { minMoney: 1000 })).toEqual([]);
  });
});

describe('not delivering', () => {
  it('opens where less than half comes through once, or less than seven tenths twice', () => {
    expect(told(world({ trouble: { fromReading: 14, untilReading: 18, share: -0.6 } }))).toEqual([['not delivering', 14, 18]]);
    expect(told(world({ trouble: { fromReading: 14, untilReading: 18, share: -0.4 } }))).toEqual([['not delivering', 15, 18]]);
  });

  it('costs nothing', () => {
    expect(judge(world({ trouble: { fromReading: 14, share: -0.6 } }))).toMatchObject([{ money: null, says: { code: 'not delivering' } }]);
  });

  it('is not a meter that passes a little less for good: the ratio is learnt anew, and a leak after it is found', () => {
    const evidence = world({ readings: 40, trouble: { fromReading: 14, share: -0.15 } });
    expect(told(evidence)).toEqual([]);
    const leaking = evidence.intervals.map((interval, index) => ({ ...interval, litres: interval.litres * (index >= 30 ? 1.12 : 1) }));
    expect(told({ ...evidence, intervals: leaking })[0]?.[1]).toBeLessThanOrEqual(31);
  });
});

describe('flow to be tested', () => {
  it.each([0.5, 0.8, 1.25, 1.6, 2.5])('is one episode, and at its end no leak, where the ratio is %d from the start', (ratio) => {
    const found = judge(world({ ratio }));
    expect(found.filter(({ clearedLocalDay }) => clearedLocalDay === null)).toMatchObject([
      { kind: 'flow to be tested', causeKey: 'flow to be tested meter:m1', money: null },
    ]);
    expect(found.at(-1)?.says.details['usualRatio']).toBeCloseTo(ratio, 1);
    // Far beyond what flows on record may be off, the first month alone cannot tell a break from wrong flows.
    expect(found.length).toBeLessThanOrEqual(ratio > 2 ? 2 : 1);
  });

  it('leaves leaks to be found beside it', () => {
    expect(told(world({ ratio: 1.3, trouble: { fromReading: 14, untilReading: 18, share: 0.3 } }))).toEqual([
      ['flow to be tested', 2, null],
      ['unexplained use', 14, 18],
    ]);
  });

  it('ends when flows on record have been mended', () => {
    const evidence = world({ readings: 40, ratio: 1.3 });
    const mendedOn = (evidence.intervals[20]?.fromLocalDay ?? 0) - evidence.firstDay;
    const programmedLitres = evidence.programmedLitres.map((litres, day) => (day > mendedOn ? 1.3 * litres : litres));
    const found = judge({ ...evidence, programmedLitres });
    expect(found.filter(({ clearedLocalDay }) => clearedLocalDay === null)).toEqual([]);
    expect(found).toMatchObject([{ kind: 'flow to be tested', fromDate: '2024-01-01' }]);
  });

  it('is not said of a ratio near 1', () => {
    expect(told(world({ ratio: 1.06 }))).toEqual([]);
  });
});

describe('overwatered', () => {
  const blind = { programmedKnown: false };

  it('opens where settings are not known and the meter passes far more than the need', () => {
    const evidence = world({ ...blind, ratio: 2 });
    expect(told(evidence)).toEqual([['overwatered', 0, null]]);
    expect(judge(evidence)).toMatchObject([{ causeKey: 'excess meter:m1', says: { details: { because: 'settings-not-known' } } }]);
  });

  it('allows for how little is known of need', () => {
    expect(told(world({ ...blind, ratio: 1.5 }))).toEqual([]);
  });

  it('opens anew where far more is added, and says what it was, also later; not where little is', () => {
    const evidence = world({ ...blind, ratio: 2, trouble: { fromReading: 14, share: 1 } });
    expect(told(evidence)).toEqual([
      ['overwatered', 0, 14],
      ['overwatered', 14, null],
    ]);
    const [first, second] = judge(evidence);
    expect(second?.says.details['outgrownLitresPerMonth']).toBeCloseTo(first?.litres ?? 0, 6);
    expect(told(world({ ...blind, ratio: 2, trouble: { fromReading: 14, share: 0.2 } }))).toEqual([['overwatered', 0, null]]);
  });

  it('ends when settings are known: others judge then', () => {
    const evidence = world({ ratio: 2 });
    const since = evidence.intervals[10]?.fromLocalDay ?? 0;
    const programmedLitres = evidence.programmedLitres.map((litres, day) =>
      evidence.firstDay + day < Math.floor(since) ? Number.NaN : litres,
    );
    expect(told({ ...evidence, programmedLitres })[0]).toEqual(['overwatered', 0, 10]);
  });
});

describe('what is judged', () => {
  it('is a mixed meter whose indoor share nobody stated, too: the share is learnt beside the ratio', () => {
    const unstated = (trouble: object) => judge({ ...world({ indoorLitresPerDay: 1500, ...trouble }), indoorLitresPerDay: null });
    expect(unstated({})).toEqual([]);
    const [found, ...others] = unstated({ trouble: { fromReading: 14, share: 1 } });
    expect(others).toEqual([]);
    expect(found?.kind).toBe('unexplained use');
  });

  it('is not hourly usage', () => {
    const evidence = world({ trouble: { fromReading: 14, share: 1 } });
    expect(judge({ ...evidence, intervals: evidence.intervals.map((interval) => ({ ...interval, source: 'usage' as const })) })).toEqual(
      [],
    );
  });

  it('tells one leak of two readings a month, too', () => {
    const evidence = world({ trouble: { fromReading: 14, untilReading: 17, share: 0.4 } });
    const halves = evidence.intervals.flatMap((interval) => {
      const middle = Math.floor((interval.fromLocalDay + interval.toLocalDay) / 2) + 10 / 24;
      const sum = (from: number, to: number) =>
        evidence.programmedLitres
          .slice(Math.ceil(from - evidence.firstDay), Math.ceil(to - evidence.firstDay))
          .reduce((all, litres) => all + litres, 0);
      const share = sum(interval.fromLocalDay, middle) / sum(interval.fromLocalDay, interval.toLocalDay);
      return [
        { ...interval, toLocalDay: middle, litres: share * interval.litres },
        { ...interval, fromLocalDay: middle, litres: (1 - share) * interval.litres },
      ];
    });
    expect(judge({ ...evidence, intervals: halves })).toMatchObject([{ kind: 'unexplained use' }]);
  });
});

describe('settings that water other zones more', () => {
  // Two zones: the flow of one is on record as it is, that of the other is a third too low. In the second year it gets all the water.
  const shifting = (runsKnown: boolean) => {
    const evidence = world({ readings: 30 });
    const [zone] = evidence.zones;
    if (!zone) throw new Error('the world has a zone');
    const zones = [zone, { ...zone, zoneId: 'z2', station: 2, flowRelativeSd: 0.3 }];
    const since = evidence.intervals[15]?.fromLocalDay ?? 0;
    const begins = evidence.midnights[Math.floor(since) - evidence.firstDay] ?? 0;
    const runs = runsKnown ? evidence.runs.map((run) => ({ ...run, zoneId: run.begin > begins + 1440 ? 'z2' : 'z1' })) : [];
    const intervals = evidence.intervals.map((interval, at) => ({ ...interval, litres: interval.litres * (at >= 15 ? 1.33 : 1) }));
    return { ...evidence, zones, runs, intervals };
  };

  it('have another ratio, which is learnt: no leak', () => {
    expect(told(shifting(true)).filter(([kind]) => kind === 'unexplained use')).toEqual([]);
  });

  it('look like a leak only where nobody knows what ran', () => {
    expect(told(shifting(false))).toMatchObject([['unexplained use', 15, null]]);
  });
});
