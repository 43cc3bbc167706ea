import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const traits = {
  stations: null,
  programs: null,
  startsPerProgram: null,
  maxMinutes: null,
  minuteStep: null,
  adjustScope: 'program' as const,
  adjustStepPercent: null,
  maxAdjustPercent: null,
  monthlyAdjustPercent: null,
  runsAtOnce: null,
  cycleSoak: null,
  rainSensor: null,
  rainSensorMm: null,
};
const firstDay = dayNumberOfDate('2026-06-01');
const stationRun = (station: number): fc.Arbitrary<StationRun> =>
  fc.record({
    station: fc.constant(station),
    minutes: fc.double({ min: 0, max: 40, noNaN: true }),
    cycles: fc.integer({ min: 1, max: 5 }),
    soakMinutes: fc.integer({ min: 0, max: 60 }),
  });
const someProgram = (name: string): fc.Arbitrary<Program> =>
  fc.record({
    name: fc.constant(name),
    days: fc.constantFrom<Program['days']>({ kind: 'daily' }, { kind: 'odd' }, { kind: 'every', everyDays: 3, from: '2026-05-02' }),
    starts: fc.array(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 2 }),
    adjustPercent: fc.integer({ min: 0, max: 200 }),
    stations: fc.tuple(stationRun(1), stationRun(2)),
  });
const replay = (programs: readonly Program[]) =>
  replayController({
    firstDay: firstDay - 3,
    days: 40,
    facts: [
      { effectiveAt: '2026-06-01T00:00', record: 'left', state: 'on', programs },
      { effectiveAt: '2026-06-30T00:00', record: 'left', state: 'on', programs: [] },
    ],
    pauses: [],
    traits,
    clockChanges: [],
  });
const total = (programs: readonly Program[], station: number) =>
  (replay(programs).stations.get(station)?.minutes ?? []).reduce<number>((sum, minutes) => sum + (minutes ?? 0), 0);

describe('the replay conserves minutes', () => {
  it('whatever the cycles, soaks, queues and midnights: starts x minutes x percent', () => {
    fc.assert(
      fc.property(fc.tuple(someProgram('A'), someProgram('B')), (programs) => {
        for (const station of [1, 2]) {
          const expected = programs.reduce((sum, { days, starts, adjustPercent, stations }) => {
            const dates = Array.from({ length: 29 }, (_, day) => day).filter(
              (day) => days.kind === 'daily' || (days.kind === 'odd' ? day % 2 === 0 : (day + 30) % 3 === 0),
            );
            return sum + (dates.length * new Set(starts).size * (stations[station - 1]?.minutes ?? 0) * adjustPercent) / 100;
          }, 0);
          expect(total(programs, station)).toBeCloseTo(expected, 6);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('more percent is never less water', () => {
    fc.assert(
      fc.property(someProgram('A'), fc.integer({ min: 0, max: 100 }), (each, more) => {
        const longer = { ...each, adjustPercent: each.adjustPercent + more };
        expect(total([longer], 1)).toBeGreaterThanOrEqual(total([each], 1) - 1e-6);
      }),
      { numRuns: 100 },
    );
  });
});
