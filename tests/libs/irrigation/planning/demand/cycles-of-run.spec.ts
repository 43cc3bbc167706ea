import {
  cyclesOfRun,
  longestCycle,
  longestRunWithin,
  shortestSoak,
  soakAfter,
} from '@rillbook/irrigation/planning/demand/cycles-of-run.js';
import { describe, expect, it } from 'vitest';
import { intakeInInches } from '../a-controller.js';

// Clay that takes 0.1 in/h and holds 0.2 in, watered at 1.6 in/h: 1.5 in/h stay on the ground, so that 8 minutes fill it.
const clay = intakeInInches(1.6, 0.1, 0.2);
const sand = intakeInInches(1, 1.5, 0.2);

describe('cycles on clay', () => {
  it('are 8 minutes at most, and soak until all has gone in: 15 minutes for each', () => {
    expect([longestCycle(clay, 1), longestCycle(clay, 5), longestCycle(clay, 10)]).toEqual([8, 5, 0]);
    expect([soakAfter(clay, 8), soakAfter(clay, 5)]).toEqual([120, 75]);
    expect([8, 9, 16, 17].map((minutes) => cyclesOfRun(clay, minutes, 1))).toEqual([
      { cycles: 1, longest: 8, soakMinutes: 0 },
      { cycles: 2, longest: 5, soakMinutes: 75 },
      { cycles: 2, longest: 8, soakMinutes: 120 },
      { cycles: 3, longest: 6, soakMinutes: 90 },
    ]);
    expect(cyclesOfRun(sand, 90, 1)).toEqual({ cycles: 1, longest: 90, soakMinutes: 0 });
  });

  it("may begin again while water still stands that the next finds room beside: (k t PR' - ASA) / IR", () => {
    expect(shortestSoak(clay, 10, { cycles: 2, longest: 5 })).toBe(30);
    // Of three cycles of 6, 6 and 5 the last asks for (17 * 1.5 - 12) / 2 / 0.1 = 67.5, the second for (12 * 1.5 - 12) / 0.1 = 60.
    expect(shortestSoak(clay, 17, { cycles: 3, longest: 6 })).toBe(68);
    // Of 8, 8 and 1 the second asks for more than the last.
    expect(shortestSoak(clay, 17, { cycles: 3, longest: 8 })).toBe(120);
    expect(shortestSoak(clay, 8, { cycles: 2, longest: 4 })).toBe(0);
    expect([shortestSoak(sand, 90, { cycles: 3, longest: 30 }), shortestSoak(null, 90, { cycles: 3, longest: 30 })]).toEqual([0, 0]);
    expect(shortestSoak(clay, 8, { cycles: 1, longest: 8 })).toBe(0);
  });
});

describe('the longest run within some hours', () => {
  it('is what goes in and what still stands at the end: 10 minutes in 40', () => {
    expect([39, 40].map((hours) => longestRunWithin(clay, 1, hours, 9))).toEqual([9, 10]);
  });

  it('is less where pauses of whole minutes make it too long: 17 minutes take 153 and not 152', () => {
    expect([152, 153].map((hours) => longestRunWithin(clay, 1, hours, 9))).toEqual([16, 17]);
  });

  it('is bound by the cycles of the timer, its step, and the hours where the soil takes all', () => {
    expect(longestRunWithin(clay, 1, 600, 2)).toBe(16);
    expect(longestRunWithin(clay, 1, 600, 1)).toBe(8);
    expect(longestRunWithin(clay, 5, 40, 9)).toBe(10);
    expect(longestRunWithin(clay, 10, 600, 9)).toBe(0);
    expect([longestRunWithin(sand, 5, 43, 1), longestRunWithin(null, 5, 43, 1), longestRunWithin(clay, 1, 7, 1)]).toEqual([40, 40, 7]);
  });
});
