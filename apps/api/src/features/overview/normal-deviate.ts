import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';

/** The standard normal deviate below which a share lies, by halving: 1.28 for 0.9. */
export function normalDeviate(share: number): number {
  let [low, high] = [0, 8];
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (probabilityAboveZero(middle, 1) < share) low = middle;
    else high = middle;
  }
  return low;
}
