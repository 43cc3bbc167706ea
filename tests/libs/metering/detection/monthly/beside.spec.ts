import { withBills } from '@rillbook/metering/detection/monthly/beside/bills-between.js';
import { NeedHabit } from '@rillbook/metering/detection/monthly/beside/need-habit.js';
import { describe, expect, it } from 'vitest';
import { anEpisode, SOME_DAY } from '../episodes/an-episode.js';

const habitOf = (...ratios: number[]) => {
  const habit = new NeedHabit();
  ratios.forEach((ratio) => {
    habit.learn(ratio);
  });
  return habit;
};

describe("a property's own ratio of metered to need", () => {
  it('is no habit from three intervals', () => {
    expect(habitOf(0, 0, 0).beyond(2)).toEqual({ score: Number.NEGATIVE_INFINITY, sd: Number.POSITIVE_INFINITY });
  });

  it('is never surer than 0.15, and as sure as its own scatter beyond that, by hand', () => {
    // Four alike: sd = 0.15 · √(1 + 1/4).
    expect(habitOf(0.1, 0.1, 0.1, 0.1).beyond(0.6).sd).toBeCloseTo(0.15 * Math.sqrt(1.25), 12);
    // 0, 0.4, 0, 0.4: mean 0.2, variance 4 · 0.04 / 3.
    const { score, sd } = habitOf(0, 0.4, 0, 0.4).beyond(0.8);
    expect(sd).toBeCloseTo(Math.sqrt(0.16 / 3) * Math.sqrt(1.25), 12);
    expect(score).toBeCloseTo(0.6 / sd, 12);
  });

  it('forgets what is older than twelve intervals', () => {
    const habit = habitOf(5, ...Array<number>(12).fill(0));
    expect(habit.beyond(0.15 * Math.sqrt(13 / 12)).score).toBeCloseTo(1, 12);
  });
});

describe('a bill that comes before the next reading', () => {
  const told = { ...anEpisode({}), says: { code: 'unexplained use', details: { usualRatio: 1 } } };
  const readings = [30, 60, 90].map((day) => ({
    ...{ fromLocalDay: SOME_DAY + day - 30, toLocalDay: SOME_DAY + day, litres: 1, sdLitres: 0 },
    source: 'readings' as const,
  }));

  it('tells what the reading shows later: one episode, with the time of the bill', () => {
    const read = { ...told, openedLocalDay: SOME_DAY + 20 };
    expect(withBills([read], [told], readings)).toEqual([told]);
  });

  it('tells nothing that is open already, and nothing of flows on record', () => {
    expect(withBills([told], [{ ...told, openedLocalDay: SOME_DAY + 5 }], readings)).toEqual([told]);
    expect(withBills([], [{ ...told, says: { code: 'unexplained use', details: { usualRatio: null } } }], readings)).toEqual([]);
  });

  it('ends with the second reading that does not show it', () => {
    expect(withBills([], [told], readings)).toEqual([{ ...told, clearedLocalDay: SOME_DAY + 60 }]);
    expect(withBills([], [told], readings.slice(0, 1))).toEqual([{ ...told, clearedLocalDay: null }]);
  });
});
