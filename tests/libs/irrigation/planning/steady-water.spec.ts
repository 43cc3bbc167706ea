import { runOffMinutes } from '@rillbook/irrigation/planning/demand/standing-water.js';
import { steadyWater } from '@rillbook/irrigation/planning/demand/steady-water.kernel.js';
import { cycleLimit } from '@rillbook/irrigation/hardware/run-time/cycle-limit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intakeInInches } from './a-controller.js';

const rounds = fc.array(fc.record({ gap: fc.integer({ min: 1, max: 7 }), water: fc.double({ min: 0, max: 60, noNaN: true }) }), {
  minLength: 1,
  maxLength: 7,
});

describe('steady water', () => {
  it('is what a root zone comes to after very many rounds', () => {
    fc.assert(
      fc.property(
        rounds,
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        fc.double({ min: 1, max: 12, noNaN: true }),
        (steps, need, days) => {
          const storage = need * days;
          const written = new Float64Array(2);
          steadyWater(
            steps.map(({ gap }) => gap),
            steps.map(({ water }) => water),
            need,
            storage,
            written,
          );
          // The plain way: day by day, until unmet and lost of a round no longer change. From the end to which it drifts, however slowly.
          const drift = need * steps.reduce((sum, { gap }) => sum + gap, 0) - steps.reduce((sum, { water }) => sum + water, 0);
          let [depletion, unmet, lost] = [drift > 0 ? storage : 0, 0, 0];
          for (let round = 0; round < 50; round += 1) {
            [unmet, lost] = [0, 0];
            for (const { gap, water } of steps) {
              depletion -= water;
              lost += Math.max(0, -depletion);
              depletion = Math.max(0, depletion);
              for (let day = 0; day < gap; day += 1) {
                depletion += need;
                unmet += Math.max(0, depletion - storage);
                depletion = Math.min(depletion, storage);
              }
            }
          }
          expect(written[0]).toBeCloseTo(unmet, 4);
          expect(written[1]).toBeCloseTo(lost, 4);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('standing water', () => {
  it('begins to run off where the cycle limit ends', () => {
    const intake = intakeInInches(1.6, 0.1, 0.2);
    const limit = cycleLimit(intake.surfaceAccumulation, intake.precipitationRate, intake.intakeRate) as number;
    expect(runOffMinutes([{ begin: 0, end: limit }], intake)).toBeCloseTo(0, 9);
    expect(runOffMinutes([{ begin: 0, end: limit + 4 }], intake)).toBeCloseTo((4 * 1.5) / 1.6, 9);
  });

  it('counts what still stands when the next cycle comes too soon', () => {
    const intake = intakeInInches(1.6, 0.1, 0.2);
    const twice = (soak: number) =>
      runOffMinutes(
        [
          { begin: 0, end: 8 },
          { begin: 8 + soak, end: 16 + soak },
        ],
        intake,
      );
    expect(twice(120)).toBeCloseTo(0, 9);
    expect(twice(60)).toBeCloseTo((60 * 0.1) / 1.6, 9);
  });
});
