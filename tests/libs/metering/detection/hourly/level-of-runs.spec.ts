// Water that flows only while something runs, found in the first run that has it, and pressure that wanders, which is not found: on invented meters
// whose flows, scatter and drift are known.
import { judgeHourly } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { describe, expect, it } from 'vitest';
import { simulatedMeter } from './simulated-meter.mjs';

const FIRST_DAY = 20_190;
const BEGINS = 84;
const SEEDS = [6101, 6102, 6103, 6104, 6105, 6106];

function openedAfter(wish: Parameters<typeof simulatedMeter>[0], day: number): readonly number[] {
  const { evidence } = simulatedMeter({ firstDay: FIRST_DAY, days: 130, zones: 6, stepMinutes: 60, ...wish });
  return judgeHourly(evidence)
    .filter(({ kind, openedLocalDay }) => ['unexplained use', 'zone flow changed'].includes(kind) && openedLocalDay > FIRST_DAY + day)
    .map(({ openedLocalDay }) => openedLocalDay - FIRST_DAY - day)
    .sort((a, b) => a - b);
}

/** The first day from `BEGINS` on that has runs, by the evidence itself. */
function firstRun(wish: Parameters<typeof simulatedMeter>[0]): number {
  const { evidence } = simulatedMeter({ firstDay: FIRST_DAY, days: 130, zones: 6, stepMinutes: 60, ...wish });
  return evidence.midnights.findIndex(
    (midnight, day) => day >= BEGINS && evidence.runs.some(({ begin }) => begin >= midnight && begin < (evidence.midnights[day + 1] ?? 0)),
  );
}

describe('the level of runs', () => {
  it('shows in one run that each run passes 22 % more, where programs run every third day', () => {
    const found = SEEDS.filter((seed) => {
      const wish = { seed, everyDays: 3, fault: { duringRuns: { fromDay: BEGINS, share: 0.22 } } };
      const [first] = openedAfter(wish, firstRun(wish));
      return first !== undefined && first <= 1;
    });
    expect(found.length).toBeGreaterThanOrEqual(4);
  });

  it('does not take pressure that wanders for water', () => {
    const told = SEEDS.flatMap((seed) => openedAfter({ seed, everyDays: 2 }, 0));
    expect(told.length).toBeLessThanOrEqual(1);
  });
});
