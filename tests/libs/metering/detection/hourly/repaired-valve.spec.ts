// A valve that passed nothing and is mended, on invented meters: what it passes again is its own water and nothing that nobody explains.
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { judgeHourly } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { describe, expect, it } from 'vitest';
import { simulatedMeter } from './simulated-meter.mjs';
import { worlds } from './worlds.js';

const FIRST_DAY = 20_190;
const DAYS = 150;
const BROKEN = 84;
const MENDED = 114;
const SEEDS = worlds(5000, 5001, 5002);
const ALARMS = ['unexplained use', 'zone flow changed', 'not delivering'];

const meter = (wish: Partial<Parameters<typeof simulatedMeter>[0]> & { seed: number }): MeterEvidence =>
  simulatedMeter({ firstDay: FIRST_DAY, days: DAYS, habits: false, missingShare: 0, pauses: false, sensor: false, ...wish }).evidence;

/** Two programs on one meter: what the second passes is added, its zones have names of their own. */
function together(one: MeterEvidence, other: MeterEvidence): MeterEvidence {
  const sum = (a: Float64Array, b: Float64Array) => a.map((value, at) => value + (b[at] ?? 0));
  const named = <Row extends { readonly zoneId: string }>(rows: readonly Row[]) =>
    rows.map((row) => ({ ...row, zoneId: `b-${row.zoneId}` }));
  const runs = [...one.runs, ...named(other.runs)].sort((a, b) => a.begin - b.begin);
  return {
    ...one,
    zones: [...one.zones, ...named(other.zones)],
    runs,
    programmedLitres: sum(one.programmedLitres, other.programmedLitres),
    neededLitres: sum(one.neededLitres, other.neededLitres),
    usage: one.usage && other.usage && { ...one.usage, litres: sum(one.usage.litres, other.usage.litres) },
  };
}

const told = (evidence: MeterEvidence) =>
  judgeHourly(evidence)
    .filter(({ kind, openedLocalDay }) => ALARMS.includes(kind) && openedLocalDay > FIRST_DAY + BROKEN)
    .map(({ kind, zoneIds, openedLocalDay, clearedLocalDay }) => ({
      kind,
      zoneIds,
      opened: openedLocalDay - FIRST_DAY,
      cleared: (clearedLocalDay ?? Infinity) - FIRST_DAY,
    }));

describe('a valve that passed nothing for a month and is mended', () => {
  it('is told as not delivering until the days on which it passes water again, and nothing else is told', () => {
    for (const seed of SEEDS) {
      const fault = { zone: { zone: seed % 2, fromDay: BROKEN, untilDay: MENDED, factor: 0 } };
      const [first, ...others] = told(meter({ seed, zones: 2, everyDays: 1 + (seed % 2), fault }));
      expect(others, `seed ${seed}`).toEqual([]);
      expect(first).toMatchObject({ kind: 'not delivering', zoneIds: [`z${(seed % 2) + 1}`] });
      expect(first?.cleared).toBeLessThan(MENDED + 3);
    }
  });

  it('tells no month of water from the one day on which its zone runs by itself', () => {
    for (const seed of SEEDS) {
      const fault = { zone: { zone: 0, fromDay: BROKEN, untilDay: MENDED, factor: 0 } };
      const alone = meter({ seed, zones: 1, everyDays: 1, startMinute: 60, shiftMinutes: 0, fault });
      const many = meter({ seed: seed + 1000, zones: 6, everyDays: 4, startMinute: 180, shiftMinutes: 0 });
      const passed = together(alone, many);
      const after = told(passed).filter(({ kind, opened }) => kind === 'unexplained use' && opened >= MENDED && opened < MENDED + 10);
      expect(after, `seed ${seed}`).toEqual([]);
    }
  });
});
