// Water that flows only while something runs, found in the first run that has it, and pressure that wanders, which is not found: on invented meters
// whose flows, scatter and drift are known.
import { judgeHourly } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { followLevel } from '@rillbook/metering/detection/hourly/leaks/level-of-runs.js';
import { observe } from '@rillbook/metering/detection/hourly/observe.js';
import { describe, expect, it } from 'vitest';
import { simulatedMeter } from './simulated-meter.mjs';
import { worlds } from './worlds.js';

const FIRST_DAY = 20_190;
const BEGINS = 84;
const SEEDS = worlds(6101, 6102, 6103, 6104, 6105, 6106);

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
    expect(found.length).toBeGreaterThanOrEqual(0.65 * SEEDS.length);
  });

  it('does not take pressure that wanders for water', () => {
    const told = SEEDS.flatMap((seed) => openedAfter({ seed, everyDays: 2 }, 0));
    expect(told.length).toBeLessThanOrEqual(1);
  });

  it('is none where the days before do not agree: a third of a run missing on every second one is no step on the others', () => {
    const { evidence } = simulatedMeter({
      seed: 6103,
      firstDay: FIRST_DAY,
      days: 60,
      zones: 6,
      stepMinutes: 60,
      everyDays: 1,
      pauses: false,
    });
    const { meter, unexplained } = observe(evidence, evidence.usage as NonNullable<typeof evidence.usage>);
    const newest = meter.ranDays.at(-1) ?? 0;
    const before = unexplained.level.days.filter(({ day }) => day < newest);
    const levelOf = (shares: readonly number[]) => ({
      days: before.map((one, at) => ({ ...one, share: shares[at % shares.length] ?? 0 })),
      steps: unexplained.level.steps.map(() => []),
    });
    expect(followLevel(meter, levelOf([-0.387, 0.036]), newest)).toBeNull();
    // All of them a third below: then the newest is a step.
    expect(followLevel(meter, levelOf([-0.387]), newest)?.step).toBeGreaterThan(0.3);
  });
});
