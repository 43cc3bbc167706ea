import { percentVariants } from '@rillbook/irrigation/planning/offers/percent-variants.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { aController, zoneInInches } from '../a-controller.js';

const program = (name: string, adjustPercent: number): Program => ({
  name,
  days: { kind: 'daily' },
  starts: [60],
  adjustPercent,
  stations: [{ station: 1, minutes: 10, cycles: 1, soakMinutes: 0 }],
});

/** Each variant's percents for its first program, as set, in force and in presses, and the presses of the variant. */
function variants(present: readonly Program[] | null, traits: Partial<ControllerTraits>) {
  const input = aController([zoneInInches(1, 0.1, 1)], { present });
  return percentVariants({ ...input, traits: { ...input.traits, ...traits } }).map(({ percentsOf, presses }) => ({
    percents: percentsOf(present?.[0]).map((each) => [each.percent, each.inForce, each.presses]),
    presses,
  }));
}

describe('percents to plan with', () => {
  it('of a program are 100 and its own, a press where it changes', () => {
    expect(variants([program('A', 80)], {})).toEqual([
      {
        percents: [
          [100, 100, 1],
          [80, 80, 0],
        ],
        presses: 0,
      },
    ]);
    expect(variants(null, {})).toEqual([{ percents: [[100, 100, 0]], presses: 0 }]);
  });

  it('of a timer with one for all are one at a time, its press counted once; what programs do not share is not one of them', () => {
    const all = { adjustScope: 'controller' as const };
    const hundred = { percents: [[100, 100, 0]] };
    expect(variants([program('A', 80), program('B', 80)], all)).toEqual([
      { ...hundred, presses: 1 },
      { percents: [[80, 80, 0]], presses: 0 },
    ]);
    expect(variants([program('A', 80), program('B', 90)], all)).toEqual([{ ...hundred, presses: 1 }]);
    expect(variants(null, all)).toEqual([{ ...hundred, presses: 0 }]);
  });

  it('keep every run countable: never above 100 % in force, in steps of the timer', () => {
    const july = Array.from({ length: 12 }, (_, month) => (month === 6 ? 150 : 100));
    // 65 % of 150 % is 97.5 %; 70 % would be 105.
    expect(variants(null, { monthlyAdjustPercent: july })).toEqual([{ percents: [[65, 97.5, 1]], presses: 0 }]);
    expect(variants([program('A', 120)], {})).toEqual([{ percents: [[100, 100, 1]], presses: 0 }]);
  });

  it('are those that the timer has, and water', () => {
    expect(variants(null, { maxAdjustPercent: 90, adjustStepPercent: 20 })).toEqual([{ percents: [[80, 80, 1]], presses: 0 }]);
    expect(variants([program('A', 95)], { maxAdjustPercent: 90 })).toEqual([{ percents: [[90, 90, 1]], presses: 0 }]);
    expect(variants([program('A', 0)], {})).toEqual([{ percents: [[100, 100, 1]], presses: 0 }]);
    const none = new Array<number>(12).fill(0);
    expect(variants([program('A', 50)], { monthlyAdjustPercent: none })).toEqual([{ percents: [], presses: 0 }]);
  });
});
