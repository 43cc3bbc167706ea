import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { judgeMonthly } from '@rillbook/metering/detection/monthly/judge-monthly.js';
import { describe, expect, it } from 'vitest';
import { monthlyMeter, type MonthlyWorld } from '../../../../support/worlds/monthly-meter.mjs';

const thresholds = { minConfidence: 0.9, minLitres: 757, minMoney: 1 };
const world = (changes: Partial<MonthlyWorld> = {}) => monthlyMeter(3, { noise: 0.005, ratio: 1.02, season: 0.5, ...changes });
const judge = (evidence: MeterEvidence) => judgeMonthly(evidence, thresholds);
const LEAK = { trouble: { fromReading: 14, share: 0.25 } } as const;
const endOf = ({ intervals }: MeterEvidence, at: number) => intervals[at]?.toLocalDay;

describe('flows that are not on record', () => {
  // What settings put out is known but for its level: here it is guessed at 0.4 of it.
  const indexed = (evidence: MeterEvidence): MeterEvidence => ({
    ...evidence,
    programmedLitres: new Float64Array(evidence.days).fill(Number.NaN),
    indexLitres: evidence.programmedLitres.map((litres) => 0.4 * litres),
    zones: evidence.zones.map((zone) => ({ ...zone, flowLPerMin: null })),
  });

  it('leave a leak to be found by the course of the settings, and are no flow to be tested', () => {
    expect(judge(indexed(world()))).toEqual([]);
    const evidence = indexed(world(LEAK));
    const [found] = judge(evidence).filter(({ kind }) => kind === 'unexplained use');
    expect(found?.openedLocalDay).toBe(endOf(evidence, 14));
    // A quarter of 1.02 of what ran: an index is never told as a ratio.
    const suspect = evidence.intervals[14]?.litres ?? 0;
    expect(found?.litres).toBeGreaterThan(0.15 * suspect);
    expect(found?.litres).toBeLessThan(0.25 * suspect);
    expect(found?.says.details).toMatchObject({ ratio: null, usualRatio: null, programmedLitres: null, litresPerMonth: found?.litres });
  });

  it('are told as a share of what usually passes where a meter does not deliver', () => {
    const [found] = judge(indexed(world({ trouble: { fromReading: 14, untilReading: 18, share: -0.7 } })));
    expect(found?.kind).toBe('not delivering');
    expect(found?.says.details['ratio']).toBeCloseTo(0.3, 1);
  });
});

describe('water by hand', () => {
  // 200 litres a day of a hose, all year, while the settings put out next to nothing in winter.
  const hosed = (evidence: MeterEvidence): MeterEvidence => ({
    ...evidence,
    intervals: evidence.intervals.map((interval) => ({
      ...interval,
      litres: interval.litres + 200 * (interval.toLocalDay - interval.fromLocalDay),
    })),
  });
  const wintry = (changes: Partial<MonthlyWorld> = {}) => hosed(world({ season: 1, ...changes }));

  it('is unexplained where nobody wrote it down, and is not where somebody did', () => {
    expect(judge(wintry()).map(({ kind }) => kind)).toContain('unexplained use');
    expect(judge({ ...wintry(), handLitresPerDay: 200 })).toEqual([]);
  });

  it('may as well come from another tap', () => {
    expect(judge({ ...world({ season: 1 }), handLitresPerDay: 200 })).toEqual([]);
  });
});

describe('readings of every week', () => {
  // Each month in four, divided as the settings ran.
  const weekly = (evidence: MeterEvidence): MeterEvidence => {
    const ran = (from: number, to: number) =>
      evidence.programmedLitres
        .subarray(Math.ceil(from - evidence.firstDay), Math.ceil(to - evidence.firstDay))
        .reduce((sum, own) => sum + own, 0);
    const intervals = evidence.intervals.flatMap((interval) => {
      const hour = interval.fromLocalDay % 1;
      const cuts = [0, 7, 14, 21].map((day) => Math.floor(interval.fromLocalDay) + day + hour);
      return cuts.map((from, at) => {
        const to = cuts[at + 1] ?? interval.toLocalDay;
        return {
          ...interval,
          fromLocalDay: from,
          toLocalDay: to,
          litres: (interval.litres * ran(from, to)) / ran(interval.fromLocalDay, interval.toLocalDay),
        };
      });
    });
    return { ...evidence, intervals };
  };

  it('tell of a leak with the second of them, and of nothing before', () => {
    expect(judge(weekly(world()))).toEqual([]);
    const evidence = weekly(world(LEAK));
    const [found, ...others] = judge(evidence);
    expect(others).toEqual([]);
    expect(found?.kind).toBe('unexplained use');
    expect(found?.openedLocalDay).toBeLessThanOrEqual(endOf(evidence, 4 * 14 + 1) ?? 0);
  });

  it('tell no leak of a run that settings found since had raised', () => {
    const evidence = weekly(world({ season: 0 }));
    // From the 60th week on twice as much is programmed; the run before it was so already.
    const since = Math.floor(evidence.intervals[60]?.fromLocalDay ?? 0);
    const raised = (day: number) => (day > since ? 2 : 1);
    const programmedLitres = evidence.programmedLitres.map((litres, day) => litres * raised(evidence.firstDay + day));
    const run = evidence.programmedLitres.find((litres) => litres > 0) ?? 0;
    const intervals = evidence.intervals.map((interval, at) => ({
      ...interval,
      litres: interval.litres * (at >= 60 ? 2 : 1) + (at === 59 ? run : 0),
    }));
    expect(judge({ ...evidence, programmedLitres, intervals }).map(({ kind }) => kind)).toContain('unexplained use');
    expect(judge({ ...evidence, programmedLitres, intervals, foundDays: [since] })).toEqual([]);
  });

  it('tell no week without water as a meter that does not deliver', () => {
    const evidence = weekly(world());
    const intervals = evidence.intervals.map((interval, at) => (at === 60 ? { ...interval, litres: 0 } : interval));
    expect(judge({ ...evidence, intervals })).toEqual([]);
  });
});

describe('a first reading that nobody can explain', () => {
  it('is no leak for good: three readings in proportion make a habit, and the next leak is found', () => {
    const evidence = world({ readings: 30, season: 0.6, trouble: { fromReading: 20, share: 0.25 } });
    const intervals = evidence.intervals.map((interval, at) => (at === 0 ? { ...interval, litres: 2.5 * interval.litres } : interval));
    const found = judge({ ...evidence, intervals });
    expect(found.map(({ kind, openedLocalDay }) => [kind, openedLocalDay])).toEqual([
      ['unexplained use', endOf(evidence, 0)],
      ['unexplained use', endOf(evidence, 20)],
    ]);
    expect(found[0]?.clearedLocalDay).not.toBeNull();
  });
});
