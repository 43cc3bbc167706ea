import { usualRatioOf } from '@rillbook/metering/detection/monthly/habit/usual-ratio.js';
import { habitOnRecord } from '@rillbook/metering/detection/monthly/habit/meter-habit.js';
import { innovationOf, taughtBy } from '@rillbook/metering/detection/monthly/habit/teach-habit.js';
import type { IntervalVolumes } from '@rillbook/metering/detection/monthly/interval-volumes.js';
import { expect, it } from 'vitest';

const [ALL, OWN] = [0.2, 0.05];
const habit = habitOnRecord(
  ['front', 'back'].map((zoneId) => ({ zoneId, flowRelativeSd: OWN })),
  ALL,
);

/** A month that a zone watered alone or both alike, read to the litre: without scatter it says all of its ratio. */
function month(shares: Readonly<Record<string, number>>, metered: number): IntervalVolumes {
  const mix = new Map(Object.entries(shares));
  const none = { startVariance: 0, endVariance: 0, ownVariance: 1e-6, programmedSquares: 0, needed: null };
  return { fromLocalDay: 20_000, toLocalDay: 20_030, days: 30, metered, programmed: 10_000, mix, ...none };
}

it('what one zone teaches says of another what flows on record are off by together', () => {
  const after = taughtBy(habit, month({ front: 1 }, 11_000));
  expect(usualRatioOf(after, month({ front: 1 }, 0)).ratio).toBeCloseTo(1.1, 6);
  // Two normal quantities with the variance c² + d² and the covariance c²: the mean of the second given the first is c² / (c² + d²) of it, and its
  // variance c² + d² − c⁴ / (c² + d²) (any textbook of multivariate normal distributions).
  const told = ALL ** 2 / (ALL ** 2 + OWN ** 2);
  const other = usualRatioOf(after, month({ back: 1 }, 0));
  expect(other.ratio).toBeCloseTo(1 + 0.1 * told, 6);
  const wandered = 0.005 ** 2 * other.ratio ** 2;
  expect((other.relativeSd * other.ratio) ** 2).toBeCloseTo(ALL ** 2 + OWN ** 2 - ALL ** 4 / (ALL ** 2 + OWN ** 2) + wandered, 6);
});

it('a month of another mix of zones takes nothing from what was learnt of the usual one', () => {
  const taught = [1, 2, 3, 4].reduce((so) => taughtBy(so, month({ front: 0.5, back: 0.5 }, 11_000)), habit);
  const winter = taughtBy(taught, month({ back: 1 }, 11_000));
  const sure = innovationOf(taught, month({ front: 0.5, back: 0.5 }, 11_000)).sd;
  expect(innovationOf(taught, month({ back: 1 }, 11_000)).sd).toBeGreaterThan(5 * sure);
  expect(innovationOf(winter, month({ front: 0.5, back: 0.5 }, 11_000)).sd).toBeLessThan(1.5 * sure);
});
