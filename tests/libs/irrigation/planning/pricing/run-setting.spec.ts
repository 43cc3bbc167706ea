import { openHours } from '@rillbook/irrigation/planning/layout/water-window.js';
import type { ZoneIntake } from '@rillbook/irrigation/planning/plan-input.js';
import { planFrame, preparedZone } from '@rillbook/irrigation/planning/pricing/prepared-zone.js';
import { pressesBetween, runSetting, stationNow, stepsAt } from '@rillbook/irrigation/planning/pricing/run-setting.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aController, zoneInInches } from '../a-controller.js';

/** Ten minutes at a time, and ten of soak after them: 1 mm a minute on soil that takes half of it and holds 5 mm. */
const slow: ZoneIntake = {
  precipitationRate: millimetresPerHour(60),
  intakeRate: millimetresPerHour(30),
  surfaceAccumulation: millimetres(5),
};
const run = (minutes: number, cycles = 1, soakMinutes = 0): StationRun => ({ station: 1, minutes, cycles, soakMinutes });

function settings(traits: Partial<ControllerTraits> = {}, intake: ZoneIntake | null = null) {
  const zone = zoneInInches(1, 0.2, 1, { intake });
  const input = aController([zone]);
  const frame = planFrame({ ...input, traits: { ...input.traits, ...traits } }, 31, openHours(input.window, [], [zone]));
  const prepared = preparedZone(zone, [], frame, null);
  return {
    frame,
    of: (steps: number, percent: number, found: StationRun | null = null) => runSetting(prepared, frame, steps, percent, found),
  };
}

describe('a station as it is set', () => {
  it('takes the fewest minutes that the timer rounds to what shall run', () => {
    expect(settings().of(7, 100).run).toEqual(run(7));
    // At half 13 minutes are 6.5, which it rounds up; 12 are 6.
    expect(settings().of(7, 50).run).toEqual(run(13));
    expect(settings({ minuteStep: 5 }).of(3, 100).run).toEqual(run(15));
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 5, max: 100 }),
        fc.constantFrom(0.5, 1, 5),
        (steps, percent, minuteStep) => {
          const { frame, of } = settings({ minuteStep, maxMinutes: null });
          const { minutes } = of(steps, percent).run;
          expect(stepsAt(minutes, percent, frame)).toBe(steps);
          expect(stepsAt(minutes - minuteStep, percent, frame)).toBeLessThan(steps);
        },
      ),
    );
  });

  it('stays as it was found where that runs the same, but not above what the timer holds', () => {
    expect(settings().of(7, 50, run(14))).toEqual({ run: run(14), presses: 0 });
    expect(settings().of(7, 50, run(15))).toEqual({ run: run(13), presses: 1 });
    expect(settings({ maxMinutes: 60 }).of(60, 100, run(60)).presses).toBe(0);
    expect(settings({ maxMinutes: 60 }).of(60, 100, run(90))).toEqual({ run: run(60), presses: 1 });
  });

  it('is divided where the soil asks for it, and stays divided as it was found where that does', () => {
    expect(settings({}, slow).of(20, 100)).toEqual({ run: run(20, 2, 10), presses: 3 });
    expect(settings({}, slow).of(10, 100).run).toEqual(run(10));
    expect(settings({}, slow).of(20, 100, run(20, 4, 5))).toEqual({ run: run(20, 4, 5), presses: 0 });
    // Four of five minutes soak five; three are too few.
    expect(settings({}, slow).of(20, 100, run(20, 4, 4)).run).toEqual(run(20, 2, 10));
    // Longer than it was found, in cycles that are then too long.
    expect(settings({}, slow).of(30, 100, run(20, 2, 20)).run).toEqual(run(30, 3, 10));
    // What soaks between one cycle means nothing and stays.
    expect(settings({}, slow).of(8, 100, run(8, 1, 7))).toEqual({ run: run(8, 1, 7), presses: 0 });
  });

  it('is one cycle on a timer that cannot pause', () => {
    expect(settings({ cycleSoak: false }, slow).of(10, 100, run(10, 2, 15)).run).toEqual(run(10, 1, 15));
    expect(settings({ cycleSoak: null }, slow).of(10, 100).run).toEqual(run(10));
  });
});

it.each<[number, StationRun | null, StationRun]>([
  [0, run(10), run(10)],
  [1, run(10), run(12)],
  [1, null, run(10)],
  [3, null, run(10, 2, 30)],
  [2, run(10), run(10, 2, 0)],
  [1, run(10, 2, 30), run(10, 2, 20)],
  [1, run(10, 2, 30), run(10, 3, 30)],
  [1, run(10, 2, 30), run(10, 1, 0)],
  [0, run(10, 1, 30), run(10, 1, 0)],
])('%i presses from %j to %j', (presses, found, wanted) => {
  expect(pressesBetween(found, wanted)).toBe(presses);
});

it('a station is what its lines are together; one at no minutes is not there', () => {
  const program = {
    name: 'A',
    days: { kind: 'daily' as const },
    starts: [60],
    adjustPercent: 100,
    stations: [run(10, 2, 5), { ...run(3), station: 2 }, run(4), run(0), { ...run(0), station: 3 }],
  };
  expect(stationNow(program, 1)).toEqual(run(14, 2, 5));
  expect(stationNow(program, 3)).toBeNull();
  expect(stationNow(undefined, 1)).toBeNull();
});
