import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { replayController, replayInParts } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program, SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { anyTimer, left, program, replayOf, stationRun } from './a-replay.js';

const DAYS = 24;

const programNamed = (name: string): fc.Arbitrary<Program> =>
  fc
    .record({
      days: fc.constantFrom<Program['days']>(
        { kind: 'daily' },
        { kind: 'daily' },
        { kind: 'odd' },
        { kind: 'every', everyDays: 5, from: '2026-06-03' },
      ),
      starts: fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 3 }),
      // Up to sixteen hours a start: a queue may go on over days.
      stations: fc.tuple(fc.oneof(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 300, max: 900 })), fc.integer({ min: 0, max: 90 })),
    })
    .map(({ days, starts, stations }) =>
      program({ name, days, starts, stations: stations.map((minutes, at) => stationRun(at + 1, minutes, at + 1, 15)) }),
    );

const facts: fc.Arbitrary<readonly SettingsFact[]> = fc
  .array(
    fc.record({
      day: fc.integer({ min: 1, max: DAYS }),
      state: fc.constantFrom('on' as const, 'on' as const, 'off' as const, 'unknown' as const),
    }),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .chain((changes) =>
    fc
      .array(fc.tuple(programNamed('A'), programNamed('B')), { minLength: changes.length, maxLength: changes.length })
      .map((programs) =>
        changes.map(({ day, state }, at) =>
          left(programs[at] ?? [], { effectiveAt: `2026-06-${String(day).padStart(2, '0')}T09:30`, state }),
        ),
      ),
  );

const told = ({ unknown, stations }: ControllerReplay) => ({
  unknown,
  stations: [...stations]
    .map(([station, { minutes, runs, totalMinutes, totalRuns, programs }]) => ({
      station,
      minutes,
      runs,
      totalMinutes,
      totalRuns,
      programs,
    }))
    .filter(({ programs, totalRuns }) => programs.length > 0 || totalRuns > 0)
    .sort((a, b) => a.station - b.station),
});

it('a part of a replay is what it is alone, whatever queues before it, and the whole is what it is without parts', () => {
  let queued = 0;
  fc.assert(
    fc.property(
      facts,
      fc.constantFrom(1, 2),
      fc.uniqueArray(fc.integer({ min: 0, max: DAYS }), { minLength: 2, maxLength: 5 }),
      (of, runsAtOnce, cuts) => {
        const input = replayOf(of, { days: DAYS, traits: { ...anyTimer, runsAtOnce } });
        const ends = [...cuts].sort((a, b) => a - b);
        const parts = ends.slice(1).map((end, at) => ({ from: ends[at]!, days: end - ends[at]! }));
        const found = replayInParts(input, parts);
        expect(told(found.whole)).toEqual(told(replayController(input)));
        parts.forEach(({ from, days }, at) => {
          const alone = replayController({ ...input, firstDay: input.firstDay + from, days });
          expect(told(found.parts[at]!)).toEqual(told(alone));
          const within = told(found.whole).stations.map(({ minutes }) => minutes.slice(from, from + days).join());
          if (
            told(alone).stations.some(
              ({ minutes }) => minutes.some((each) => each !== null && each > 0) && !within.includes(minutes.join()),
            )
          )
            queued += 1;
        });
      },
    ),
    { numRuns: 600 },
  );
  // Some queues reach over so many days that a part alone does not see their beginning: otherwise nothing was tried.
  expect(queued).toBeGreaterThan(0);
});
