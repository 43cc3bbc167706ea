import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { judgeHourly as judgeAll } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { describe, expect, it } from 'vitest';
import { healthyWish } from './healthy-wish.mjs';
import { simulatedMeter } from './simulated-meter.mjs';

const SITE_YEARS = 20;

/** Flows on record are off in these worlds, and that is told rightly. */
const judgeHourly = (evidence: MeterEvidence) => judgeAll(evidence).filter(({ kind }) => kind !== 'flow to be tested');

/** The evidence as it was at the end of a day. */
function until(evidence: MeterEvidence, days: number): MeterEvidence {
  const end = evidence.midnights[days] as number;
  const { usage } = evidence;
  const steps = usage ? Math.floor((end - usage.firstMinute) / usage.stepMinutes) : 0;
  return {
    ...evidence,
    days,
    midnights: evidence.midnights.slice(0, days + 1),
    rainMm: evidence.rainMm.slice(0, days),
    etoMm: evidence.etoMm.slice(0, days),
    programmedLitres: evidence.programmedLitres.slice(0, days),
    programmedIsEstimate: evidence.programmedIsEstimate.slice(0, days),
    neededLitres: evidence.neededLitres.slice(0, days),
    runs: evidence.runs.filter(({ begin }) => begin < end),
    usage: usage && { ...usage, litres: usage.litres.slice(0, steps) },
  };
}

const opening = ({ kind, openedLocalDay, fromDate }: Episode) => `${kind} ${fromDate} ${openedLocalDay.toFixed(4)}`;

describe('healthy meters', () => {
  it('open next to nothing in twenty years: runs, rain, hoses, crews, people, clocks that change, steps that are missing', () => {
    const told = Array.from({ length: SITE_YEARS }, (_, at) => judgeHourly(simulatedMeter(healthyWish(at + 1)).evidence)).flat();
    expect(told.length).toBeLessThanOrEqual(2);
  });

  it('open nothing in the weeks about each change of clocks', () => {
    // 2025-01-20 to 2025-05-20, and 2025-09-01 to 2025-12-20.
    for (const [firstDay, days] of [
      [20108, 120],
      [20332, 110],
    ] as const)
      for (const seed of [3001, 3002, 3003]) expect(judgeHourly(simulatedMeter({ seed, firstDay, days }).evidence)).toEqual([]);
  });

  it('open nothing where a fifth of the steps is missing', () => {
    for (const seed of [3011, 3012, 3013])
      expect(judgeHourly(simulatedMeter({ seed, firstDay: 20190, days: 150, missingShare: 0.2 }).evidence)).toEqual([]);
  });
});

describe('an online observer', () => {
  it.each([
    { name: 'steady flow', fault: { steady: { fromDay: 90, litresPerMinute: 6 } } },
    { name: 'zone flow', fault: { zone: { zone: 1, fromDay: 84, factor: 1.6 } } },
    {
      name: 'off-schedule run',
      fault: { offSchedule: { fromDay: 90, clockMinute: 1320, minutes: 30, everyDays: 2, litresPerMinute: 40 } },
    },
  ])('opens $name the same, whatever comes after: nothing is opened by later data', ({ fault }) => {
    const { evidence } = simulatedMeter({ seed: 3021, firstDay: 20190, days: 130, zones: 5, everyDays: 1, fault });
    const whole = judgeHourly(evidence);
    expect(whole.length).toBeGreaterThan(0);
    for (const days of [92, 96, 105]) {
      const then = judgeHourly(until(evidence, days)).map(opening);
      const before = whole.filter(({ openedLocalDay }) => openedLocalDay <= evidence.firstDay + days).map(opening);
      expect(then).toEqual(before);
    }
  });
});
