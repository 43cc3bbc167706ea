import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { inferSchedule } from '@rillbook/metering/detection/hourly/infer-schedule.js';
import { comeRegularly } from '@rillbook/metering/detection/hourly/leaks/regular-counts.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import { settleHourly } from '@rillbook/metering/detection/hourly/settle-hourly.js';
import { describe, expect, it } from 'vitest';
import { randomFrom, simulatedMeter } from './simulated-meter.mjs';

const FIRST_DAY = 20190;

function episode(given: Partial<Episode>): Episode {
  return {
    kind: 'unexplained use',
    causeKey: 'k',
    causeFamily: 'excess meter:m',
    meterId: 'm',
    controllerId: null,
    zoneIds: [],
    fromDate: '2025-07-01',
    untilDate: '2025-07-31',
    litres: 1000,
    sdLitres: 10,
    money: null,
    confidence: 1,
    evidence: {},
    says: { code: 'x', details: {} },
    openedLocalDay: 100,
    clearedLocalDay: null,
    ...given,
  };
}

/** Minutes of the last day's runs, from the first begin to the last end. */
function lastMinutes(runs: MeterEvidence['runs']): number {
  const end = Math.max(...runs.map((run) => run.end));
  return end - Math.min(...runs.filter(({ begin }) => begin > end - 720).map(({ begin }) => begin));
}

describe('one cause, one episode', () => {
  const general = episode({});

  it.each(['steady flow', 'off-schedule run', 'zone flow changed'] as const)(
    '%s says more of the same water than unexplained use',
    (kind) => {
      const sure = episode({ kind, litres: 1200, openedLocalDay: 100, says: { code: 'x', details: { ratio: 1.5 } } });
      expect(settleHourly([general, sure])).toEqual([sure]);
      // Told later it becomes that: the time of the first is not lost.
      const later = { ...sure, openedLocalDay: 102 };
      expect(settleHourly([general, later])).toEqual([general, later]);
      expect(settleEpisodes([general, later])).toMatchObject([{ kind, openedLocalDay: 100, earlier: [{ kind: 'unexplained use' }] }]);
    },
  );

  it('leaves both where meter, time or litres differ, or the other says another thing', () => {
    for (const other of [
      episode({ kind: 'steady flow', meterId: 'other' }),
      episode({ kind: 'steady flow', openedLocalDay: 50, clearedLocalDay: 60 }),
      episode({ kind: 'steady flow', litres: 100 }),
      episode({ kind: 'watered in rain' }),
    ])
      expect(settleHourly([general, other])).toEqual([general, other]);
  });
});

describe('a schedule inferred from usage', () => {
  it.each([1, 2, 3])('finds start, minutes and an interval of %i days within a step', (everyDays) => {
    for (const seed of [4001, 4002, 4003]) {
      const { evidence } = simulatedMeter({
        seed,
        firstDay: FIRST_DAY,
        days: 50,
        everyDays,
        startMinute: 120,
        missingShare: 0,
        shiftMinutes: 0,
        sensor: false,
        pauses: false,
      });
      const [program, ...others] = evidence.usage ? inferSchedule(evidence.usage, evidence) : [];
      const minutes = lastMinutes(evidence.runs);
      expect(others).toEqual([]);
      expect(program?.days).toMatchObject({ everyDays });
      expect(program?.starts).toHaveLength(1);
      expect(Math.abs((program?.starts[0]?.clockMinute as number) - 120)).toBeLessThanOrEqual(15);
      expect(Math.abs((program?.starts[0]?.minutes as number) - minutes)).toBeLessThanOrEqual(15);
      expect(program?.confidence).toBeGreaterThan(0.9);
    }
  });

  it('finds weekdays', () => {
    const { evidence } = simulatedMeter({
      seed: 4010,
      firstDay: FIRST_DAY,
      days: 42,
      zones: 1,
      habits: false,
      missingShare: 0,
      sensor: true,
    });
    const litres = new Float64Array(evidence.usage?.litres.length ?? 0);
    // Monday, Wednesday and Friday at 03:00 for an hour; 1970-01-01 was a Thursday.
    for (let day = 0; day < 42; day++) if ([0, 2, 4].includes((FIRST_DAY + day + 3) % 7)) litres.fill(150, day * 96 + 12, day * 96 + 16);
    const usage = { firstMinute: evidence.midnights[0] as number, stepMinutes: 15, litres, resolutionLitres: 1 };
    expect(inferSchedule(usage, evidence)).toEqual([
      { program: 'A', days: { weekdays: [0, 2, 4] }, starts: [{ clockMinute: 180, minutes: 60 }], confidence: 1 },
    ]);
  });

  it('infers nothing from hoses and crews, nor from less than two weeks', () => {
    const { evidence } = simulatedMeter({ seed: 4020, firstDay: FIRST_DAY, days: 60, zones: 4, everyDays: 1000 });
    expect(evidence.usage && inferSchedule(evidence.usage, evidence)).toEqual([]);
    const short = simulatedMeter({ seed: 4001, firstDay: FIRST_DAY, days: 13, everyDays: 1, pauses: false, sensor: false }).evidence;
    expect(short.usage && inferSchedule(short.usage, short)).toEqual([]);
  });
});

describe('steps of a coarse register', () => {
  it('come regularly of a flow that never stops, and by chance of people', () => {
    const random = randomFrom(5);
    let regular = 0;
    for (let trial = 0; trial < 200; trial++) {
      const perHour = 1 + 4 * random();
      const phase = random();
      const steady = Array.from({ length: 18 }, (_, hour) => Math.floor(phase + (hour + 1) * perHour) - Math.floor(phase + hour * perHour));
      const byChance = Array.from({ length: 18 }, () =>
        Array.from({ length: 40 }, () => (random() < perHour / 40 ? 1 : 0)).reduce<number>((sum, one) => sum + one, 0),
      );
      expect(comeRegularly(steady)).toBe(true);
      if (comeRegularly(byChance)) regular += 1;
    }
    // Nearer to steady than to chance, by luck: not more often than one in six of eighteen hours each.
    expect(regular).toBeLessThan(34);
  });
});
